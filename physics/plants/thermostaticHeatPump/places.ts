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
  order: 11,
  reads: { look: 'evaporatorFrost' },
  needs: ['panel-open'],
};
const LINE_RUN: Place = {
  id: 'liquid-line-run',
  kind: 'look',
  side: 'line',
  x: 4.4,
  y: 3.57,
  order: 9,
  reads: { look: 'liquidLineKink' },
};
const INDOOR_FINS: Place = {
  id: 'indoor-coil-fins',
  kind: 'look',
  side: 'indoor',
  x: 7.16,
  y: 3.66,
  order: 12,
  reads: { look: 'evaporatorDirt' },
  needs: ['panel-open'],
};
const VAPOUR_STEM: Place = {
  id: 'vapour-valve',
  kind: 'look',
  side: 'outdoor',
  x: 3.3,
  y: 5.06,
  order: 17,
  reads: { look: 'suctionValveOpen' },
  needs: ['cap-off'],
};
const VAPOUR_LINE = pipe('vapour-line', 'line', 3.98, 3, 15, 0.12);
const SUCTION_PIPE = inside(pipe('compressor-suction', 'outdoor', 2.5, 5.45, 20, 0.08));
const COMMON_PORT = inside(port('common-suction-port', 2.42, 4.78, 19, 'low'));

const OUTLET_AIR: Spot = { id: 'condenser-outlet-air', kind: 'air', side: 'outdoor', x: 1.95, y: 2.5, order: 24 };
const INLET_AIR: Spot = { id: 'condenser-inlet-air', kind: 'air', side: 'outdoor', x: 0.34, y: 4.25, order: 22 };

/** In heating it is dry. */
const CONDENSATE_PAN: Place = {
  id: 'condensate-pan',
  kind: 'look',
  side: 'indoor',
  x: 6.55,
  y: 4.36,
  order: 38,
  reads: { look: 'condensatePan' },
  needs: ['panel-open'],
};

/** Air and electrics, alike in both modes. */
const REST: readonly Place[] = [
  {
    id: 'outdoor-air',
    kind: 'air',
    side: 'outdoor',
    x: 0.35,
    y: 2.6,
    order: 21,
    reads: { temperature: 'outdoorAirTemp' },
  },
  {
    id: 'outdoor-fan',
    kind: 'look',
    side: 'outdoor',
    x: 1.95,
    y: 3.12,
    order: 23,
    reads: { look: 'condenserFanSpeed' },
  },
  {
    id: 'return-air',
    kind: 'air',
    side: 'indoor',
    x: 8.05,
    y: 5.3,
    order: 25,
    reads: { temperature: 'returnAirTemp', wetBulb: 'returnAirWetBulb' },
  },
  { id: 'filter-face', kind: 'look', side: 'indoor', x: 6.6, y: 5.06, order: 26, reads: { look: 'filterDust' } },
  {
    id: 'filter-drop',
    kind: 'duct',
    side: 'indoor',
    x: 5.85,
    y: 4.4,
    order: 27,
    reads: { differentialPressure: 'filterPressureDrop' },
  },
  {
    id: 'coil-drop',
    kind: 'duct',
    side: 'indoor',
    x: 7.3,
    y: 4.4,
    order: 28,
    reads: { differentialPressure: 'coilPressureDrop' },
  },
  {
    id: 'supply-duct',
    kind: 'duct',
    side: 'indoor',
    x: 7.4,
    y: 1.72,
    order: 29,
    reads: { differentialPressure: 'supplyDuctPressure' },
  },
  { id: 'indoor-fan', kind: 'look', side: 'indoor', x: 6.4, y: 2.86, order: 30, reads: { look: 'evaporatorFanSpeed' } },
  {
    id: 'supply-air',
    kind: 'air',
    side: 'indoor',
    x: 9,
    y: 3.2,
    order: 31,
    reads: { temperature: 'supplyAirTemp', wetBulb: 'supplyAirWetBulb' },
  },
  {
    id: 'thermostat-air',
    kind: 'air',
    side: 'indoor',
    x: 9.97,
    y: 4.2,
    order: 32,
    reads: { temperature: 'thermostatAirTemp' },
  },
  {
    id: 'supply-terminals',
    kind: 'terminals',
    side: 'outdoor',
    x: 2.97,
    y: 3.28,
    order: 33,
    reads: { voltage: 'supplyVoltage' },
    needs: ['panel-open'],
  },
  {
    id: 'contactor',
    kind: 'terminals',
    side: 'outdoor',
    x: 3.54,
    y: 3.58,
    order: 34,
    reads: { voltage: 'contactorDrop' },
    needs: ['panel-open'],
  },
  {
    id: 'run-capacitor',
    kind: 'terminals',
    side: 'outdoor',
    x: 2.97,
    y: 3.88,
    order: 35,
    reads: { capacitance: 'compressorCapacitance' },
    needs: ['panel-open', 'isolated'],
  },
  {
    id: 'fan-capacitor',
    kind: 'terminals',
    side: 'outdoor',
    x: 2.97,
    y: 2.7,
    order: 36,
    reads: { capacitance: 'fanCapacitance' },
    needs: ['panel-open', 'isolated'],
  },
  {
    id: 'compressor-lead',
    kind: 'wire',
    side: 'outdoor',
    x: 2.36,
    y: 3.7,
    order: 37,
    reads: { current: 'compressorCurrent' },
    needs: ['panel-open'],
  },
  {
    id: 'display',
    kind: 'look',
    side: 'indoor',
    x: 9.97,
    y: 3.45,
    order: 39,
    reads: { look: 'display' },
  },
];

export const HEAT_PUMP_COOLING_PLACES: readonly Place[] = [
  { ...DISCHARGE, reads: { temperature: 'dischargeLineTemp' } },
  COIL_FACE,
  { ...port('liquid-port', 3.62, 5.64, 5, 'high'), reads: { pressure: 'liquidPressure' } },
  { ...LIQUID_LINE, reads: { temperature: 'liquidLineTemp' } },
  { ...DRIER_PIPE, reads: { temperature: 'liquidLineTempAfterDrier' } },
  { ...port('drier-outlet-port', 4.4, 4.15, 8, 'high', 'line'), reads: { pressure: 'liquidPressureAfterDrier' } },
  LINE_RUN,
  { ...pipe('metering-inlet', 'indoor', 5, 3.88, 10, 0.1), reads: { temperature: 'meteringInletTemp' } },
  INDOOR_FACE,
  INDOOR_FINS,
  { id: 'valve-bulb', kind: 'look', side: 'indoor', x: 5.7, y: 3.42, order: 13, reads: { look: 'bulbContact' } },
  {
    ...pipe('evaporator-outlet', 'indoor', 5.1, 2.7, 14, 0.08),
    reads: { temperature: 'evaporatorOutletTemp' },
  },
  { ...VAPOUR_LINE, reads: { temperature: 'suctionLineTemp' } },
  { ...port('vapour-port', 3.62, 4.5, 16, 'low'), reads: { pressure: 'suctionPressure' } },
  VAPOUR_STEM,
  {
    ...inside(pipe('reversing-valve-inlet', 'outdoor', 3, 4.5, 18, 0.08)),
    reads: { temperature: 'reversingValveSuctionInTemp' },
  },
  { ...COMMON_PORT, reads: { pressure: 'compressorSuctionPressure' } },
  { ...SUCTION_PIPE, reads: { temperature: 'compressorSuctionTemp' } },
  { ...INLET_AIR, reads: { temperature: 'condenserEnteringAirTemp' } },
  { ...OUTLET_AIR, reads: { temperature: 'condenserLeavingAirTemp' } },
  ...REST,
  CONDENSATE_PAN,
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
  LINE_RUN,
  INDOOR_FACE,
  INDOOR_FINS,
  {
    id: 'outdoor-valve-bulb',
    kind: 'look',
    side: 'outdoor',
    x: 1.36,
    y: 3.48,
    order: 13,
    reads: { look: 'bulbContact' },
  },
  { ...VAPOUR_LINE, reads: { temperature: 'vapourLineTemp' } },
  { ...port('vapour-port', 3.62, 4.5, 16, 'high'), reads: { pressure: 'vapourLinePressure' } },
  VAPOUR_STEM,
  {
    ...inside(pipe('coil-vapour-pipe', 'outdoor', 1.58, 4.06, 18, 0.08)),
    reads: { temperature: 'reversingValveSuctionInTemp' },
  },
  { ...COMMON_PORT, reads: { pressure: 'suctionPressure' } },
  { ...SUCTION_PIPE, reads: { temperature: 'suctionLineTemp' } },
  { ...INLET_AIR, reads: { temperature: 'outdoorEnteringAirTemp' } },
  { ...OUTLET_AIR, reads: { temperature: 'outdoorLeavingAirTemp' } },
  ...REST,
];
