/**
 * Every fault of a machine from nothing to the end of its range, at the design point: what each reading does, where regimes
 * change, where the machine stops. Nothing is judged here; a person looks at it.
 */
import { type FamilyId, type FaultFamily, familiesOf, PhysicsError } from '../index';
import { RELATIVE, uncertainty } from './directions';
import { type Reading, type Readings, readingsOf, steadySnapshot, type Variant } from './machines';

export interface SweepPoint {
  readonly severity: number;
  /** null where no steady state exists */
  readonly readings: Readings | null;
  /** why there is none: the switch that stops the machine, else the error's code */
  readonly stop: string | null;
}

/** A severity at which the machine begins (or ceases) to work in another way. */
export interface Corner {
  readonly name: CornerName;
  readonly severity: number;
  readonly begins: boolean;
}

export interface Sweep {
  readonly family: FamilyId;
  /** the fault's key, with the sensor after a colon where it needs one */
  readonly key: string;
  readonly unit: FaultFamily['unit'];
  /** the scale of severity; negative throughout for a sensor that reads low */
  readonly slight: number;
  readonly clear: number;
  readonly severe: number;
  readonly max: number;
  readonly points: readonly SweepPoint[];
  readonly corners: readonly Corner[];
}

const CORNERS = {
  'superheat gone': (r: Readings) => r.SHout < 0.05,
  'subcooling gone': (r: Readings) => r.SC < 0.05,
  'gas in the sight glass': (r: Readings) => r.glass > 0.02,
  'valve fully open': (r: Readings) => r.opening > 0.999,
  ice: (r: Readings) => r.frost > 0,
  'slowed by its controller': (_: Readings, controller: string) => controller.startsWith('slowed'),
} as const;
export type CornerName = keyof typeof CORNERS;
const CORNER_NAMES = Object.keys(CORNERS) as CornerName[];

interface Solved extends SweepPoint {
  readonly regimes: readonly boolean[];
}

const STOPPED = 'stopped-on-';

function solvedAt(variant: Variant, key: string, severity: number): Solved {
  try {
    const snapshot = steadySnapshot(variant, { faults: { [key]: severity } });
    // the circuit has a balance there, but beyond a limit: the machine would not stay to reach it
    if (snapshot.controller.startsWith(STOPPED)) {
      return { severity, readings: null, stop: snapshot.controller.slice(STOPPED.length), regimes: [] };
    }
    const readings = readingsOf(snapshot);
    const regimes = CORNER_NAMES.map((name) => CORNERS[name](readings, snapshot.controller));
    return { severity, readings, stop: null, regimes };
  } catch (error) {
    if (!(error instanceof PhysicsError)) throw error;
    return { severity, readings: null, stop: String(error.details.limit ?? error.code), regimes: [] };
  }
}

function cornersOf(points: readonly Solved[]): Corner[] {
  return CORNER_NAMES.flatMap((name, i) =>
    points.slice(1).flatMap((point, k) => {
      const before = points[k];
      if (before.readings === null || point.readings === null || before.regimes[i] === point.regimes[i]) return [];
      return [{ name, severity: point.severity, begins: point.regimes[i] }];
    }),
  );
}

/** @param steps between no fault and the end of the range */
export function sweeps(variant: Variant, steps: number): Sweep[] {
  return familiesOf(variant.plant).flatMap((family) => {
    const keys = family.targets?.map((target) => `${family.id}:${target}`) ?? [family.id];
    return keys.flatMap((key) =>
      (family.signed ? [1, -1] : [1]).map((sign) => {
        const points = Array.from({ length: steps + 1 }, (_, i) =>
          solvedAt(variant, key, (sign * family.max * i) / steps),
        );
        return {
          family: family.id,
          key,
          unit: family.unit,
          slight: sign * family.slight,
          clear: sign * family.clear,
          severe: sign * family.severe,
          max: sign * family.max,
          points: points.map(({ severity, readings, stop }) => ({ severity, readings, stop })),
          corners: cornersOf(points),
        };
      }),
    );
  });
}

/** Half width of what an instrument cannot tell from the healthy machine, in the reading's own unit. */
export function blur(reading: Reading, healthy: Readings, variant: Variant): number {
  switch (reading) {
    // the bounds of lookalikes.ts, which are twice the uncertainty
    case 'standing':
      return 17.5;
    case 'filterDrop':
      return 10;
    case 'drierFall':
      return 0.7;
    case 'SHcomp':
      return uncertainty('SH', variant);
    // flow and COP are read through the capacity
    case 'flow':
    case 'cop':
      return 0.03 * healthy[reading];
    default:
      return uncertainty(reading, variant) * (RELATIVE.includes(reading) ? healthy[reading] : 1);
  }
}

/**
 * Steps of a curve that stand out: where the step of one point is more than three times each neighbour's and more than the
 * instrument's uncertainty (a jump), as severities with the size in the reading's unit.
 */
export function jumps(sweep: Sweep, reading: Reading, least: number): { severity: number; size: number }[] {
  const found: { severity: number; size: number }[] = [];
  const { points } = sweep;
  for (let i = 2; i < points.length - 1; i++) {
    const four = [points[i - 2], points[i - 1], points[i], points[i + 1]].map(({ readings }) => readings?.[reading]);
    const [a, b, c, d] = four;
    if (a === undefined || b === undefined || c === undefined || d === undefined) continue;
    const size = c - b;
    const around = Math.max(Math.abs(b - a), Math.abs(d - c));
    if (Math.abs(size) > 3 * around && Math.abs(size) > least) found.push({ severity: points[i].severity, size });
  }
  return found;
}
