/** Runs the direction tables: every entry as a finding on the change against the healthy machine. */
import { faultFamily, PhysicsError } from '../index';
import { DIRECTION_ROWS, type DirectionRow, type Level, type Sign } from './directionTables';
import { type Finding, finding } from './finding';
import { type Reading, type Readings, steadyReadings, type Variant } from './machines';

/** Entries that no machine may miss. */
export const CARDINAL: readonly Reading[] = ['Te', 'Tc', 'SH', 'SC'];

/** Change is a share of the healthy value instead of a difference. */
export const RELATIVE: readonly Reading[] = ['capacity', 'power', 'current', 'effort', 'speed', 'opening'];

/**
 * Uncertainty of one reading of the change. Pressures: 0.5 % of a digital gauge's span (3.5 and 5.5 MPa) as saturation
 * temperature; superheat and subcooling ±1.2 K (field requirements of a state energy code combined); pipe ±0.7 K; a
 * difference of air ±0.5 K; capacity ±3 %; power meter ±2 %; what the data link shows: its resolution.
 */
export function uncertainty(reading: Reading, variant: Variant): number {
  switch (reading) {
    case 'Te':
    case 'Tc':
      return variant.refrigerant === 'R-22' ? 0.8 : 0.5;
    case 'SH':
    case 'SHout':
    case 'SHcomp':
    case 'SC':
      return 1.2;
    case 'Td':
    case 'valveRise':
    case 'kinkFall':
    case 'suctionWarming':
      return 0.7;
    case 'rise':
    case 'drop':
    case 'face':
    case 'outdoorFall':
      return 0.5;
    case 'TcOverFace':
      return 0.7;
    case 'capacity':
    case 'effort':
      return 0.03;
    default:
      return 0.02;
  }
}

/** What still counts as "does not move" (trade review: superheat 1.5 K, temperatures 0.5…1 K). */
function standsWithin(reading: Reading, variant: Variant): number {
  switch (reading) {
    case 'SH':
    case 'SHout':
    case 'SHcomp':
    case 'SC':
      return 1.5;
    case 'Te':
    case 'Tc':
      return variant.refrigerant === 'R-22' ? 0.8 : 0.5;
    case 'Td':
    case 'TcOverFace':
    case 'valveRise':
      return 1;
    case 'rise':
    case 'drop':
    case 'outdoorFall':
      return 0.5;
    default:
      return 0.03;
  }
}

export function interval(sign: Sign, reading: Reading, variant: Variant): readonly [number, number] {
  const clear = 2 * uncertainty(reading, variant);
  const still = standsWithin(reading, variant);
  switch (sign) {
    case '+':
      return [clear, Number.POSITIVE_INFINITY];
    case '-':
      return [Number.NEGATIVE_INFINITY, -clear];
    case '0':
      return [-still, still];
    case '0/+':
      return [-still, Number.POSITIVE_INFINITY];
    default:
      return [Number.NEGATIVE_INFINITY, still];
  }
}

export function changeOf(reading: Reading, before: Readings, after: Readings): number {
  const difference = after[reading] - before[reading];
  return RELATIVE.includes(reading) ? difference / before[reading] : difference;
}

/** Severity at which the valve is fully open; NaN where it never is. */
function stopOf(row: DirectionRow, variant: Variant): number {
  for (let k = 10; k < 48; k++) {
    const severity = k / 50;
    if (steadyReadings(variant, { faults: { [row.fault]: severity } }).opening > 0.999) return severity;
  }
  return Number.NaN;
}

export function severityOf(row: DirectionRow, level: Level, variant: Variant): number {
  const family = faultFamily(row.fault);
  if (level === 'regulating') return 0.8 * stopOf(row, variant);
  if (level === 'valve-open') return Math.max(stopOf(row, variant) + 0.1, family.severe);
  return family[level];
}

export interface DirectionFinding extends Finding {
  readonly reading: Reading;
  readonly sign: Sign;
  readonly level: Level;
  /** moves the other way by more than counts as standing still */
  readonly contrary: boolean;
}

function entry(
  row: DirectionRow,
  variant: Variant,
  level: Level,
  change: (reading: Reading) => number,
  reading: Reading,
  severity: number,
): DirectionFinding {
  const sign = row.signs[reading] as Sign;
  const ours = change(reading);
  const still = standsWithin(reading, variant);
  return {
    ...finding(
      `directions/${variant.id}/${row.name}/${reading}`,
      row.source,
      `${reading} ${sign} at ${level}, severity ${severity.toFixed(2)}`,
      RELATIVE.includes(reading) ? 'share' : 'K',
      ours,
      ...interval(sign, reading, variant),
    ),
    reading,
    sign,
    level,
    contrary: sign === '0' ? Math.abs(ours) > still : sign.endsWith('+') ? ours < -still : ours > still,
  };
}

/** Where an entry that is too small to read is read once more: a sign must become readable within the fault's range. */
const STRONGER: Readonly<Partial<Record<Level, readonly Level[]>>> = {
  clear: ['severe', 'max'],
  'valve-open': ['severe', 'max'],
};

/**
 * Every entry of the tables. A '+' or '-' that is too small to read at the row's level, yet not contrary, is read once more
 * where the fault is severe and at the end of its range (as far as the machine runs there); `level` tells where it holds.
 */
export function directions(): DirectionFinding[] {
  return DIRECTION_ROWS.flatMap((row) =>
    row.machines.flatMap((variant) => {
      const healthy = steadyReadings(variant);
      const at = (level: Level) => {
        const severity = severityOf(row, level, variant);
        const ill = steadyReadings(variant, { faults: { [row.fault]: severity } });
        return { level, severity, change: (reading: Reading) => changeOf(reading, healthy, ill) };
      };
      const first = at(row.level);
      const stronger = (STRONGER[row.level] ?? []).flatMap((level) => {
        try {
          return [at(level)];
        } catch (error) {
          if (error instanceof PhysicsError && error.code === 'protection') return [];
          throw error;
        }
      });
      return Object.keys(row.signs).map((name) => {
        const reading = name as Reading;
        const one = entry(row, variant, row.level, first.change, reading, first.severity);
        const signed = one.sign === '+' || one.sign === '-';
        if (one.holds || one.contrary || !signed) return one;
        const others = stronger.map((s) => entry(row, variant, s.level, s.change, reading, s.severity));
        return others.find((other) => other.holds) ?? one;
      });
    }),
  );
}
