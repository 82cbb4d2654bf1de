/** What grows with each fault: the reading that tells, which way it goes, and the corners on its way. */
import {
  INVERTER_FIXED,
  INVERTER_FREE,
  ORIFICES,
  type Reading,
  type Readings,
  VARIANTS,
  type Variant,
} from './machines';

export interface Corner {
  readonly name: string;
  readonly there: (readings: Readings) => boolean;
  /** severities between which it must appear */
  readonly from: number;
  readonly to: number;
}

export interface Growth {
  /** the fault's key, a target after a colon where it needs one */
  readonly key: string;
  readonly machines: readonly Variant[];
  readonly telling: Reading;
  readonly sign: 1 | -1;
  readonly corners: readonly Corner[];
  /** first and last severity, where they are not zero and the family's own */
  readonly from?: number;
  readonly to?: number;
  /** why this fault may jump: it makes the machine's controller lose its signal */
  readonly jumps?: string;
}

export const superheatGone = (from: number, to: number): Corner => ({
  name: 'superheat gone',
  there: (r) => r.SHout < 0.05,
  from,
  to,
});
const subcoolingGone = (from: number, to: number): Corner => ({
  name: 'subcooling gone',
  there: (r) => r.SC < 0.05,
  from,
  to,
});
export const gasInGlass = (from: number, to: number): Corner => ({
  name: 'gas in the sight glass',
  there: (r) => r.glass > 0.02,
  from,
  to,
});
export const valveOpen = (from: number, to: number): Corner => ({
  name: 'valve at its stop',
  there: (r) => r.opening > 0.999,
  from,
  to,
});
const ice = (from: number, to: number): Corner => ({ name: 'ice', there: (r) => r.frost > 0, from, to });

const cold = (reading: Reading, from: number, to: number): Corner => ({
  name: 'cold behind it',
  there: (r) => r[reading] > 1,
  from,
  to,
});

const INVERTERS = [INVERTER_FREE, INVERTER_FIXED];
const FIXED = [INVERTER_FIXED];
const FREE = [INVERTER_FREE];

/** Where the corners lie: judged (common practice, no source), wide on purpose; that they exist is the point. */
export const GROWTHS: readonly Growth[] = [
  {
    key: 'undercharge',
    machines: ORIFICES,
    telling: 'SH',
    sign: 1,
    corners: [subcoolingGone(0.1, 0.25), gasInGlass(0.1, 0.3)],
  },
  {
    key: 'undercharge',
    machines: INVERTERS,
    telling: 'opening',
    sign: 1,
    corners: [subcoolingGone(0.05, 0.2), gasInGlass(0.05, 0.25), valveOpen(0.25, 0.56)],
    to: 0.56,
  },
  {
    key: 'line-charge-not-added',
    machines: ORIFICES,
    telling: 'SH',
    sign: 1,
    corners: [subcoolingGone(6, 11.9)],
  },
  { key: 'lines-too-long', machines: ORIFICES, telling: 'planned', sign: -1, corners: [] },
  { key: 'lines-too-long', machines: ORIFICES, telling: 'ps', sign: -1, corners: [] },
  { key: 'thermostat-misplaced', machines: ORIFICES, telling: 'thermostatOver', sign: 1, corners: [] },
  { key: 'overcharge', machines: VARIANTS, telling: 'SC', sign: 1, corners: [] },
  { key: 'overcharge', machines: ORIFICES, telling: 'pd', sign: 1, corners: [superheatGone(0.03, 0.2)] },
  { key: 'non-condensable', machines: VARIANTS, telling: 'standing', sign: 1, corners: [] },
  { key: 'non-condensable', machines: FIXED, telling: 'SC', sign: 1, corners: [] },
  {
    key: 'drier-restriction',
    machines: VARIANTS,
    telling: 'drierDrop',
    sign: 1,
    corners: [gasInGlass(0.1, 0.8)],
    to: 0.95,
  },
  {
    key: 'drier-restriction',
    machines: INVERTERS,
    telling: 'opening',
    sign: 1,
    corners: [valveOpen(0.3, 0.9)],
    to: 0.95,
  },
  {
    key: 'liquid-line-kink',
    machines: ORIFICES,
    telling: 'kinkFall',
    sign: 1,
    corners: [cold('kinkFall', 0.2, 0.9)],
    to: 0.95,
  },
  { key: 'liquid-line-kink', machines: ORIFICES, telling: 'SH', sign: 1, corners: [], to: 0.95 },
  {
    key: 'liquid-line-heated',
    machines: ORIFICES,
    telling: 'kinkFall',
    sign: -1,
    corners: [],
    // beyond it the liquid flashes and its temperature is that of its bubbles
    to: 6,
  },
  { key: 'liquid-line-heated', machines: ORIFICES, telling: 'SH', sign: 1, corners: [] },
  { key: 'suction-line-uninsulated', machines: ORIFICES, telling: 'suctionWarming', sign: 1, corners: [] },
  { key: 'suction-line-uninsulated', machines: ORIFICES, telling: 'Td', sign: 1, corners: [] },
  { key: 'service-valve-throttled', machines: [...ORIFICES, INVERTER_FIXED], telling: 'ps', sign: 1, corners: [] },
  { key: 'service-valve-throttled', machines: VARIANTS, telling: 'stem', sign: -1, corners: [] },
  {
    key: 'service-valve-throttled',
    machines: ORIFICES,
    telling: 'capacity',
    sign: -1,
    corners: [superheatGone(0.05, 0.35)],
  },
  { key: 'condenser-dirty', machines: [...ORIFICES, INVERTER_FIXED], telling: 'Tc', sign: 1, corners: [] },
  { key: 'condenser-dirty', machines: ORIFICES, telling: 'rise', sign: 1, corners: [superheatGone(0.2, 0.6)] },
  { key: 'condenser-fan-slow', machines: [...ORIFICES, INVERTER_FIXED], telling: 'Tc', sign: 1, corners: [] },
  { key: 'condenser-fan-slow', machines: FREE, telling: 'rise', sign: 1, corners: [] },
  { key: 'air-recirculation', machines: VARIANTS, telling: 'face', sign: 1, corners: [] },
  { key: 'air-recirculation', machines: VARIANTS, telling: 'Tc', sign: 1, corners: [] },
  { key: 'filter-dirty', machines: VARIANTS, telling: 'drop', sign: 1, corners: [] },
  { key: 'filter-dirty', machines: ORIFICES, telling: 'filterDrop', sign: 1, corners: [superheatGone(0.15, 0.45)] },
  {
    key: 'filter-dirty',
    machines: [...ORIFICES, INVERTER_FIXED],
    telling: 'Te',
    sign: -1,
    corners: [ice(0.4, 0.85)],
    to: 0.85,
  },
  { key: 'evaporator-dirty', machines: VARIANTS, telling: 'coilDrop', sign: 1, corners: [] },
  {
    key: 'evaporator-dirty',
    machines: [...ORIFICES, INVERTER_FIXED],
    telling: 'Te',
    sign: -1,
    corners: [ice(0.35, 0.85)],
    to: 0.85,
  },
  { key: 'evaporator-fan-slow', machines: VARIANTS, telling: 'filterDrop', sign: -1, corners: [] },
  { key: 'evaporator-fan-slow', machines: ORIFICES, telling: 'drop', sign: 1, corners: [superheatGone(0.15, 0.45)] },
  { key: 'compressor-worn', machines: VARIANTS, telling: 'effort', sign: 1, corners: [] },
  { key: 'compressor-worn', machines: [...ORIFICES, INVERTER_FIXED], telling: 'Td', sign: 1, corners: [] },
  { key: 'duct-leak', machines: ORIFICES, telling: 'ductPressure', sign: -1, corners: [] },
  { key: 'return-duct-leak', machines: ORIFICES, telling: 'intakeOver', sign: 1, corners: [] },
  { key: 'return-duct-leak', machines: ORIFICES, telling: 'ps', sign: 1, corners: [] },
  { key: 'fan-capacitor-weak', machines: ORIFICES, telling: 'fanCapacitance', sign: -1, corners: [] },
  { key: 'fan-capacitor-weak', machines: ORIFICES, telling: 'Tc', sign: 1, corners: [superheatGone(0.4, 0.72)] },
  { key: 'supply-voltage-low', machines: VARIANTS, telling: 'voltage', sign: -1, corners: [] },
  { key: 'supply-voltage-low', machines: VARIANTS, telling: 'current', sign: 1, corners: [] },
  { key: 'contactor-burnt', machines: ORIFICES, telling: 'poleDrop', sign: 1, corners: [] },
  { key: 'contactor-burnt', machines: ORIFICES, telling: 'current', sign: 1, corners: [] },
  { key: 'compressor-leak-by', machines: [...ORIFICES, INVERTER_FIXED], telling: 'capacity', sign: -1, corners: [] },
  { key: 'compressor-leak-by', machines: VARIANTS, telling: 'effort', sign: 1, corners: [] },
  { key: 'compressor-leak-by', machines: ORIFICES, telling: 'ps', sign: 1, corners: [superheatGone(0.05, 0.2)] },
  { key: 'orifice-undersize', machines: ORIFICES, telling: 'SH', sign: 1, corners: [] },
  { key: 'orifice-oversize', machines: ORIFICES, telling: 'SC', sign: -1, corners: [superheatGone(0.03, 0.2)] },
  { key: 'metering-valve-stuck-closing', machines: FREE, telling: 'opening', sign: -1, corners: [] },
  {
    // Measured from where the healthy valve stands at free speed: at rated speed that is a little wide, so it starts later.
    key: 'metering-valve-stuck-closing',
    machines: FIXED,
    telling: 'SH',
    sign: 1,
    corners: [ice(0.2, 0.5)],
    from: 0.04,
    to: 0.5,
  },
  {
    key: 'metering-valve-stuck-opening',
    machines: INVERTERS,
    telling: 'SC',
    sign: -1,
    corners: [superheatGone(0.01, 0.2), subcoolingGone(0.2, 0.7)],
    to: 0.6,
  },
  { key: 'capacitor-weak', machines: ORIFICES, telling: 'current', sign: 1, corners: [] },
  {
    key: 'thermistor-out-of-its-pocket:suctionLine',
    machines: INVERTERS,
    telling: 'SH',
    sign: -1,
    corners: [superheatGone(0.12, 0.35), valveOpen(0.15, 0.45)],
    jumps: 'once the coil floods its superheat is zero whatever the valve does: the controller opens it to the stop',
  },
  {
    key: 'thermistor-drift:suctionLine',
    machines: INVERTERS,
    telling: 'SH',
    sign: -1,
    corners: [superheatGone(2.5, 5.5), valveOpen(3, 8)],
    jumps: 'once the coil floods its superheat is zero whatever the valve does: the controller opens it to the stop',
  },
];
