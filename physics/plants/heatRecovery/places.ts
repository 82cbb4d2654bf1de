import { linkOf, unitPlaces } from '../networkPlaces';
import type { Place } from '../types';
import { MAINS, MODULES, RISE, STOREYS } from './drawing';
import { HEAT_RECOVERY_UNITS } from './machine';

const UNITS = HEAT_RECOVERY_UNITS.map(({ id }) => id);

/** What each module has of its own: its coil, its liquid pipe, its air. Exposures are from memory, no source. */
function modulePlaces({ id, x, y }: (typeof MODULES)[number]): Omit<Place, 'order'>[] {
  const outdoor = { side: 'outdoor' } as const;
  return [
    {
      id: `outdoor-coil-face@${id}`,
      kind: 'look',
      ...outdoor,
      x: x + 0.41,
      y: y + 1.75,
      reads: { look: `condenserDirt@${id}` },
    },
    {
      id: `module-liquid-pipe@${id}`,
      kind: 'pipe',
      ...outdoor,
      x: x + 0.84,
      y: y + 2.77,
      reads: { temperature: `liquidLineTemp@${id}` },
      needs: ['panel-open'],
      exposure: 0.1,
    },
    {
      id: `condenser-inlet-air@${id}`,
      kind: 'air',
      ...outdoor,
      x: x - 0.4,
      y: y + 1.75,
      reads: { temperature: `condenserEnteringAirTemp@${id}` },
    },
    {
      id: `outdoor-fan@${id}`,
      kind: 'look',
      ...outdoor,
      x: x + 1.6,
      y: y + 0.18,
      reads: { look: `condenserFanSpeed@${id}` },
    },
    {
      id: `condenser-outlet-air@${id}`,
      kind: 'air',
      ...outdoor,
      x: x + 1.6,
      y: y - 0.7,
      reads: { temperature: `condenserLeavingAirTemp@${id}` },
    },
  ];
}

/**
 * Outdoors along the refrigerant from the compressors, then unit by unit, then module by module, then the electrics. All
 * service ports are on the common lines beside the wall: hot gas, liquid, suction.
 */
export const HEAT_RECOVERY_PLACES: readonly Place[] = [
  {
    id: 'discharge-pipe',
    kind: 'pipe',
    side: 'outdoor',
    x: MODULES[0].x + 2.35,
    y: MODULES[0].y + 1.2,
    reads: { temperature: 'dischargeLineTemp' },
    needs: ['panel-open'],
    exposure: 0.06,
  },
  {
    id: 'discharge-port',
    kind: 'port',
    side: 'line',
    x: RISE.hot,
    y: 10.3,
    reads: { pressure: 'dischargePressure' },
    needs: ['cap-off'],
    pressureSide: 'high',
  },
  {
    id: 'liquid-line',
    kind: 'pipe',
    side: 'line',
    x: 13.55,
    y: MAINS.liquid,
    reads: { temperature: 'liquidLineTemp' },
    exposure: 0.12,
  },
  {
    id: 'liquid-port',
    kind: 'port',
    side: 'line',
    x: RISE.liquid,
    y: 10.85,
    reads: { pressure: 'liquidPressure' },
    needs: ['cap-off'],
    pressureSide: 'high',
  },
  {
    id: 'drier-outlet-pipe',
    kind: 'pipe',
    side: 'line',
    x: RISE.liquid,
    y: 9.75,
    reads: { temperature: 'liquidLineTempAfterDrier' },
    exposure: 0.12,
  },
  { id: 'liquid-line-run', kind: 'look', side: 'line', x: RISE.liquid, y: 9.15, reads: { look: 'liquidLineKink' } },
  ...unitPlaces(STOREYS, UNITS),
  {
    id: 'suction-line',
    kind: 'pipe',
    side: 'line',
    x: RISE.suction,
    y: 9.6,
    reads: { temperature: 'suctionLineTemp' },
    exposure: 0.15,
  },
  {
    id: 'suction-port',
    kind: 'port',
    side: 'line',
    x: RISE.suction,
    y: 10.2,
    reads: { pressure: 'suctionPressure' },
    needs: ['cap-off'],
    pressureSide: 'low',
  },
  {
    id: 'suction-valve',
    kind: 'look',
    side: 'line',
    x: RISE.suction,
    y: 10.76,
    reads: { look: 'suctionValveOpen' },
    needs: ['cap-off'],
  },
  {
    id: 'outdoor-air',
    kind: 'air',
    side: 'outdoor',
    x: 0.5,
    y: MODULES[0].y - 0.6,
    reads: { temperature: 'outdoorAirTemp' },
  },
  ...MODULES.flatMap(modulePlaces),
  {
    id: 'supply-terminals',
    kind: 'terminals',
    side: 'line',
    x: 13.07,
    y: 9.3,
    reads: { voltage: 'supplyVoltage' },
    needs: ['panel-open'],
  },
  { id: 'supply-lead', kind: 'wire', side: 'line', x: 14.05, y: 8.4, reads: { current: 'compressorCurrent' } },
  { id: 'data-link', kind: 'panel', side: 'line', x: 13.07, y: 8.51, reads: { link: linkOf(UNITS) } },
].map((place, i) => ({ ...(place as Omit<Place, 'order'>), order: i + 1 }));
