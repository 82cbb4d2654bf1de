/**
 * The one place where quantities change their unit for the eye. Everything below this layer is SI
 * (Pa, K, A, V, F, m³/s, kg, kg/s, W, Hz, m, shares of one).
 *
 * Factors: NIST Special Publication 811 (2008), appendix B.8; exact where that table says so.
 */

export const SYSTEMS = ['si', 'ip'] as const;
/** si = metric as the trade uses it (kPa, °C, m³/h); ip = inch-pound (psi, °F, cfm). */
export type UnitSystem = (typeof SYSTEMS)[number];

/** What kind of thing a number is; a kind and a system together fix the unit. */
export const KINDS = [
  'pressure',
  'pressureGauge',
  'differentialPressure',
  'temperature',
  'difference',
  'current',
  'voltage',
  'capacitance',
  'resistance',
  'flow',
  'massFlow',
  'mass',
  'power',
  'enthalpy',
  'frequency',
  'share',
  'length',
  'minutes',
  'number',
] as const;
export type Kind = (typeof KINDS)[number];

export interface Unit {
  /** key of the unit's written form in the catalogues (`names.unit.…`) */
  readonly symbol: UnitSymbol;
  /** SI value = shown value × factor + offset */
  readonly factor: number;
  readonly offset: number;
  /** digits after the decimal sign when nothing finer or coarser is asked for */
  readonly digits: number;
}

export const UNIT_SYMBOLS = [
  'kPaAbs',
  'kPaGauge',
  'psia',
  'psig',
  'Pa',
  'inH2O',
  'degC',
  'degF',
  'K',
  'degFDiff',
  'A',
  'V',
  'uF',
  'ohm',
  'm3h',
  'cfm',
  'gs',
  'lbh',
  'kg',
  'lb',
  'kW',
  'kBtuh',
  'kJkg',
  'Btulb',
  'Hz',
  'percent',
  'm',
  'ft',
  'min',
  'none',
] as const;
export type UnitSymbol = (typeof UNIT_SYMBOLS)[number];

/** Exact: 0.45359237 kg × 9.80665 m/s² over (0.0254 m)². */
const PSI = 6894.757293168361;
/** Conventional inch of water. */
const INCH_OF_WATER = 249.08891;
const POUND = 0.45359237;
const CUBIC_FOOT = 0.028316846592;
const FOOT = 0.3048;
/** International-table British thermal unit, J. */
const BTU = 1055.05585262;
/** Exact by the definition of the international-table unit: 1 Btu/lb = 2326 J/kg. */
const BTU_PER_POUND = 2326;
const HOUR = 3600;
/** 0 °F in kelvin: 273.15 − 32 / 1.8. */
const ZERO_FAHRENHEIT = 273.15 - 32 / 1.8;

const unit = (symbol: UnitSymbol, factor: number, digits: number, offset = 0): Unit => ({
  symbol,
  factor,
  digits,
  offset,
});
const same = (one: Unit): Record<UnitSystem, Unit> => ({ si: one, ip: one });

export const UNITS: Readonly<Record<Kind, Readonly<Record<UnitSystem, Unit>>>> = {
  pressure: { si: unit('kPaAbs', 1000, 0), ip: unit('psia', PSI, 1) },
  pressureGauge: { si: unit('kPaGauge', 1000, 0), ip: unit('psig', PSI, 1) },
  differentialPressure: { si: unit('Pa', 1, 0), ip: unit('inH2O', INCH_OF_WATER, 2) },
  temperature: { si: unit('degC', 1, 1, 273.15), ip: unit('degF', 1 / 1.8, 1, ZERO_FAHRENHEIT) },
  difference: { si: unit('K', 1, 1), ip: unit('degFDiff', 1 / 1.8, 1) },
  current: same(unit('A', 1, 1)),
  voltage: same(unit('V', 1, 0)),
  capacitance: same(unit('uF', 1e-6, 1)),
  resistance: same(unit('ohm', 1, 1)),
  flow: { si: unit('m3h', 1 / HOUR, 0), ip: unit('cfm', CUBIC_FOOT / 60, 0) },
  massFlow: { si: unit('gs', 1e-3, 1), ip: unit('lbh', POUND / HOUR, 0) },
  mass: { si: unit('kg', 1, 2), ip: unit('lb', POUND, 2) },
  power: { si: unit('kW', 1000, 1), ip: unit('kBtuh', (1000 * BTU) / HOUR, 1) },
  enthalpy: { si: unit('kJkg', 1000, 0), ip: unit('Btulb', BTU_PER_POUND, 0) },
  frequency: same(unit('Hz', 1, 0)),
  share: same(unit('percent', 0.01, 0)),
  length: { si: unit('m', 1, 0), ip: unit('ft', FOOT, 0) },
  minutes: same(unit('min', 60, 0)),
  number: same(unit('none', 1, 0)),
};

/** SI value → the number shown in this system. */
export function toShown(kind: Kind, si: number, system: UnitSystem): number {
  const u = UNITS[kind][system];
  return (si - u.offset) / u.factor;
}

/** The number typed in this system → SI value. */
export function fromShown(kind: Kind, shown: number, system: UnitSystem): number {
  const u = UNITS[kind][system];
  return shown * u.factor + u.offset;
}

/**
 * Digits after the decimal sign that show a display step (SI) without inventing any: a step of 1 kPa is 0.145 psi and
 * needs one digit, a step of 0.1 K is 0.18 °F and needs one as well.
 */
export function digitsForStep(kind: Kind, step: number, system: UnitSystem): number {
  const shown = step / UNITS[kind][system].factor;
  if (!(shown > 0)) return UNITS[kind][system].digits;
  const digits = Math.ceil(-Math.log10(shown) - 1e-9);
  return Math.min(4, Math.max(0, digits));
}

/** Gauge pressure reads zero in the air of the site. Both Pa. */
export const gaugeToAbsolute = (gauge: number, atmosphere: number): number => gauge + atmosphere;
export const absoluteToGauge = (absolute: number, atmosphere: number): number => absolute - atmosphere;
