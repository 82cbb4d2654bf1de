import type { Place } from '../../types';

/**
 * Where a person can measure or look on the heat pump, in the order in which the keyboard walks them: along the refrigerant
 * as it runs in cooling, then along the air, then the electrics. A place keeps its id and its spot in both modes; what it
 * reads follows the refrigerant: the vapour line is suction in cooling and discharge in heating, and the drier is passed the
 * other way. Exposures (share of the way to the surrounding air that a bare clamp is pulled) are from memory, no source.
 */
type Spot = Omit<Place, 'reads'>;

const port = (
  id: string,
  x: number,
  y: number,
  order: number,
  pressureSide: 'high' | 'low',
  side: Place['side'] = 'outdoor',
): Spot => ({ id, kind: 'port', side, x, y, order, needs: ['cap-off'], pressureSide });
const pipe = (id: string, side: Place['side'], x: number, y: number, order: number, exposure: number): Spot => ({
  id,
  kind: 'pipe',
  side,
  x,
  y,
  order,
  exposure,
});
const inside = (spot: Spot): Spot => ({ ...spot, needs: ['panel-open'] });

const DISCHARGE = inside(pipe('discharge-pipe', 'outdoor', 1.85, 4.7, 1, 0.06));
const COIL_FACE: Place = {
  id: 'outdoor-coil-face',
  kind: 'look',
  side: 'outdoor',
  x: 1,
  y: 4.25,
  order: 2,
  reads: { look: 'condenserDirt' },
};
const COIL_ICE: Place = {
  id: 'outdoor-coil-ice',
  kind: 'look',
  side: 'outdoor',
  x: 1,
  y: 4.87,
  order: 3,
  reads: { look: 'outdoorIce' },
};
const COIL_SENSOR: Place = {
  id: 'outdoor-coil-sensor',
  kind: 'look',
  side: 'outdoor',
  x: 1.42,
  y: 5.46,
  order: 4,
  reads: { look: 'outdoorSensorContact' },
  needs: ['panel-open'],
};
const LIQUID_LINE = pipe('liquid-line', 'line', 4.2, 5.64, 6, 0.1);
const DRIER_PIPE = pipe('drier-outlet-pipe', 'line', 4.4, 4.75, 7, 0.1);
const INDOOR_FACE: Place = {
  id: 'indoor-coil-face',
  kind: 'look',
  side: 'indoor',
  x: 6.42,
  y: 3.66,
  order: 9,
  reads: { look: 'evaporatorFrost' },
  needs: ['panel-open'],
};
const VAPOUR_LINE = pipe('vapour-line', 'line', 3.98, 3.55, 12, 0.12);
const SUCTION_PIPE = inside(pipe('compressor-suction', 'outdoor', 2.5, 5.45, 16, 0.08));
const COMMON_PORT = inside(port('common-suction-port', 2.42, 4.78, 15, 'low'));

const OUTLET_AIR: Spot = { id: 'condenser-outlet-air', kind: 'air', side: 'outdoor', x: 1.95, y: 2.5, order: 20 };

/** Air and electrics, alike in both modes. */
const REST: readonly Place[] = [
  {
    id: 'outdoor-air',
    kind: 'air',
    side: 'outdoor',
    x: 0.35,
    y: 2.6,
    order: 17,
    reads: { temperature: 'outdoorAirTemp' },
  },
  {
    id: 'outdoor-fan',
    kind: 'look',
    side: 'outdoor',
    x: 1.95,
    y: 3.12,
    order: 19,
    reads: { look: 'condenserFanSpeed' },
  },
  {
    id: 'return-air',
    kind: 'air',
    side: 'indoor',
    x: 8.05,
    y: 5.3,
    order: 21,
    reads: { temperature: 'returnAirTemp', wetBulb: 'returnAirWetBulb' },
  },
  { id: 'filter-face', kind: 'look', side: 'indoor', x: 6.6, y: 4.96, order: 22, reads: { look: 'filterDust' } },
  {
    id: 'filter-drop',
    kind: 'duct',
    side: 'indoor',
    x: 5.85,
    y: 4.4,
    order: 23,
    reads: { differentialPressure: 'filterPressureDrop' },
  },
  { id: 'indoor-fan', kind: 'look', side: 'indoor', x: 6.4, y: 2.86, order: 24, reads: { look: 'evaporatorFanSpeed' } },
  {
    id: 'supply-air',
    kind: 'air',
    side: 'indoor',
    x: 9,
    y: 3.2,
    order: 25,
    reads: { temperature: 'supplyAirTemp', wetBulb: 'supplyAirWetBulb' },
  },
  {
    id: 'supply-terminals',
    kind: 'terminals',
    side: 'outdoor',
    x: 2.97,
    y: 3.28,
    order: 26,
    reads: { voltage: 'supplyVoltage' },
    needs: ['panel-open'],
  },
  {
    id: 'run-capacitor',
    kind: 'terminals',
    side: 'outdoor',
    x: 2.97,
    y: 3.88,
    order: 27,
    reads: { capacitance: 'compressorCapacitance' },
    needs: ['panel-open', 'isolated'],
  },
  {
    id: 'compressor-lead',
    kind: 'wire',
    side: 'outdoor',
    x: 2.36,
    y: 3.7,
    order: 28,
    reads: { current: 'compressorCurrent' },
    needs: ['panel-open'],
  },
];

export const HEAT_PUMP_COOLING_PLACES: readonly Place[] = [
  { ...DISCHARGE, reads: { temperature: 'dischargeLineTemp' } },
  COIL_FACE,
  { ...port('liquid-port', 3.62, 5.64, 5, 'high'), reads: { pressure: 'liquidPressure' } },
  { ...LIQUID_LINE, reads: { temperature: 'liquidLineTemp' } },
  { ...DRIER_PIPE, reads: { temperature: 'liquidLineTempAfterDrier' } },
  { ...port('drier-outlet-port', 4.4, 4.15, 8, 'high', 'line'), reads: { pressure: 'liquidPressureAfterDrier' } },
  INDOOR_FACE,
  { id: 'valve-bulb', kind: 'look', side: 'indoor', x: 5.6, y: 3.42, order: 10, reads: { look: 'bulbContact' } },
  {
    ...pipe('evaporator-outlet', 'indoor', 5.1, 2.7, 11, 0.08),
    reads: { temperature: 'evaporatorOutletTemp' },
  },
  { ...VAPOUR_LINE, reads: { temperature: 'suctionLineTemp' } },
  { ...port('vapour-port', 3.62, 4.5, 13, 'low'), reads: { pressure: 'suctionPressure' } },
  {
    ...inside(pipe('reversing-valve-inlet', 'outdoor', 3, 4.5, 14, 0.08)),
    reads: { temperature: 'reversingValveSuctionInTemp' },
  },
  { ...COMMON_PORT, reads: { pressure: 'compressorSuctionPressure' } },
  { ...SUCTION_PIPE, reads: { temperature: 'compressorSuctionTemp' } },
  {
    id: 'condenser-inlet-air',
    kind: 'air',
    side: 'outdoor',
    x: 0.34,
    y: 4.25,
    order: 18,
    reads: { temperature: 'condenserEnteringAirTemp' },
  },
  { ...OUTLET_AIR, reads: { temperature: 'condenserLeavingAirTemp' } },
  ...REST,
];

export const HEAT_PUMP_HEATING_PLACES: readonly Place[] = [
  { ...DISCHARGE, reads: { temperature: 'dischargeLineTemp' } },
  COIL_FACE,
  COIL_ICE,
  COIL_SENSOR,
  { ...port('liquid-port', 3.62, 5.64, 5, 'high'), reads: { pressure: 'liquidPressureAfterDrier' } },
  { ...LIQUID_LINE, reads: { temperature: 'liquidLineTempAfterDrier' } },
  { ...DRIER_PIPE, reads: { temperature: 'liquidLineTemp' } },
  { ...port('drier-outlet-port', 4.4, 4.15, 8, 'high', 'line'), reads: { pressure: 'liquidPressure' } },
  INDOOR_FACE,
  {
    id: 'outdoor-valve-bulb',
    kind: 'look',
    side: 'outdoor',
    x: 1.36,
    y: 3.48,
    order: 10,
    reads: { look: 'bulbContact' },
  },
  { ...VAPOUR_LINE, reads: { temperature: 'vapourLineTemp' } },
  { ...port('vapour-port', 3.62, 4.5, 13, 'high'), reads: { pressure: 'vapourLinePressure' } },
  {
    ...inside(pipe('coil-vapour-pipe', 'outdoor', 1.58, 4.06, 14, 0.08)),
    reads: { temperature: 'reversingValveSuctionInTemp' },
  },
  { ...COMMON_PORT, reads: { pressure: 'suctionPressure' } },
  { ...SUCTION_PIPE, reads: { temperature: 'suctionLineTemp' } },
  { ...OUTLET_AIR, reads: { temperature: 'outdoorLeavingAirTemp' } },
  ...REST,
];
