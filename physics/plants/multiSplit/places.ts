import { linkOf, unitPlaces } from '../networkPlaces';
import type { Place } from '../types';
import { MODULE_AT, STOREYS } from './drawing';
import { MULTI_SPLIT_UNITS } from './machine';

const { x, y } = MODULE_AT;
const LIQUID_Y = y + 3.22;

/**
 * Outdoors along the refrigerant from the compressor, then unit by unit, then the air and the electrics outdoors. The low
 * side is read between reversing valve and compressor, where it stays low when the rooms are heated.
 * Exposures (share of the way to the surrounding air that a bare clamp is pulled) are from memory, no source.
 */
export const MULTI_SPLIT_PLACES: readonly Place[] = [
  {
    id: 'discharge-pipe',
    kind: 'pipe',
    side: 'outdoor',
    x: x + 2.35,
    y: y + 1.1,
    reads: { temperature: 'dischargeLineTemp' },
    needs: ['panel-open'],
    exposure: 0.06,
  },
  {
    id: 'discharge-port',
    kind: 'port',
    side: 'outdoor',
    x: x + 2.35,
    y: y + 1.72,
    reads: { pressure: 'dischargePressure' },
    needs: ['panel-open', 'cap-off'],
    pressureSide: 'high',
  },
  {
    id: 'outdoor-coil-face',
    kind: 'look',
    side: 'outdoor',
    x: x + 0.41,
    y: y + 1.75,
    reads: { look: 'condenserDirt' },
  },
  {
    id: 'liquid-line',
    kind: 'pipe',
    side: 'outdoor',
    x: x + 2.42,
    y: LIQUID_Y,
    reads: { temperature: 'liquidLineTemp' },
    needs: ['panel-open'],
    exposure: 0.1,
  },
  {
    id: 'liquid-port',
    kind: 'port',
    side: 'outdoor',
    x: x + 3.05,
    y: LIQUID_Y,
    reads: { pressure: 'liquidPressure' },
    needs: ['cap-off'],
    pressureSide: 'high',
  },
  {
    id: 'drier-outlet-pipe',
    kind: 'pipe',
    side: 'line',
    x: 4.95,
    y: 6.5,
    reads: { temperature: 'liquidLineTempAfterDrier' },
    exposure: 0.12,
  },
  { id: 'liquid-line-run', kind: 'look', side: 'line', x: 4.95, y: 5.9, reads: { look: 'liquidLineKink' } },
  ...unitPlaces(
    STOREYS,
    MULTI_SPLIT_UNITS.map(({ id }) => id),
  ),
  {
    id: 'suction-line',
    kind: 'pipe',
    side: 'outdoor',
    x: x + 1.4,
    y: y + 1.42,
    reads: { temperature: 'suctionLineTemp' },
    needs: ['panel-open'],
    exposure: 0.1,
  },
  {
    id: 'suction-port',
    kind: 'port',
    side: 'outdoor',
    x: x + 1.4,
    y: y + 2.02,
    reads: { pressure: 'suctionPressure' },
    needs: ['panel-open', 'cap-off'],
    pressureSide: 'low',
  },
  {
    id: 'suction-valve',
    kind: 'look',
    side: 'outdoor',
    x: x + 1.4,
    y: y + 2.62,
    reads: { look: 'suctionValveOpen' },
    needs: ['panel-open', 'cap-off'],
  },
  { id: 'outdoor-air', kind: 'air', side: 'outdoor', x: 0.4, y: 3.4, reads: { temperature: 'outdoorAirTemp' } },
  {
    id: 'condenser-inlet-air',
    kind: 'air',
    side: 'outdoor',
    x: 0.4,
    y: y + 1.75,
    reads: { temperature: 'condenserEnteringAirTemp' },
  },
  {
    id: 'outdoor-fan',
    kind: 'look',
    side: 'outdoor',
    x: x + 1.6,
    y: y + 0.18,
    reads: { look: 'condenserFanSpeed' },
  },
  {
    id: 'condenser-outlet-air',
    kind: 'air',
    side: 'outdoor',
    x: x + 1.6,
    y: y - 0.7,
    reads: { temperature: 'condenserLeavingAirTemp' },
  },
  {
    id: 'supply-terminals',
    kind: 'terminals',
    side: 'outdoor',
    x: x + 3,
    y: y + 0.47,
    reads: { voltage: 'supplyVoltage' },
    needs: ['panel-open'],
  },
  { id: 'supply-lead', kind: 'wire', side: 'outdoor', x: 4.5, y: 3.95, reads: { current: 'compressorCurrent' } },
  {
    id: 'compressor-lead',
    kind: 'wire',
    side: 'outdoor',
    x: 3.72,
    y: 6.7,
    reads: { current: 'compressorCurrent' },
    needs: ['panel-open'],
  },
  {
    id: 'data-link',
    kind: 'panel',
    side: 'outdoor',
    x: 4.95,
    y: 4.76,
    reads: { link: linkOf(MULTI_SPLIT_UNITS.map(({ id }) => id)) },
  },
].map((place, i) => ({ ...(place as Omit<Place, 'order'>), order: i + 1 }));
