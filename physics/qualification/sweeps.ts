/**
 * Every fault of a machine from nothing to the end of its range, at the design point: what each reading does, where regimes
 * change, where the machine stops. Nothing is judged here; a person looks at it.
 */
import { type FamilyId, type FaultFamily, isHeld, PhysicsError } from '../index';
import type { Numbers, Swept, SweptFault } from './swept';

export interface SweepPoint {
  readonly severity: number;
  /** null where no steady state exists */
  readonly readings: Numbers | null;
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
  /** the fault's key, with the sensor after a colon and the unit after an @ where it needs them */
  readonly key: string;
  /** the unit that has it, and one that is asked the same and has not */
  readonly unitWith: string | null;
  readonly unitWithout: string | null;
  /** false: it is there or it is not, and the two points are without and with it */
  readonly scaled: boolean;
  readonly unit: FaultFamily['unit'];
  /** the scale of severity; negative throughout for a sensor that reads low */
  readonly slight: number;
  readonly clear: number;
  readonly severe: number;
  readonly max: number;
  readonly points: readonly SweepPoint[];
  readonly corners: readonly Corner[];
}

/** On the whole machine, or on the unit that has the fault: its readings' names then end in `at`. */
const CORNERS = {
  'superheat gone': (r: Numbers) => r.SHout < 0.05,
  'liquid reaches the compressor': (r: Numbers) => r.SHcomp < 0.05,
  'subcooling gone': (r: Numbers) => r.SC < 0.05,
  'gas in the sight glass': (r: Numbers) => r.glass > 0.02,
  'valve fully open': (r: Numbers) => r.opening > 0.999,
  'unit’s superheat gone': (r: Numbers, at: string) => r[`SH${at}`] < 0.05,
  'unit’s valve fully open': (r: Numbers, at: string) => r[`opening${at}`] > 0.999,
  'liquid header full': (r: Numbers) => r.SCheader > 0.05,
  'outdoor side boils': (r: Numbers) => r.boiling > 0,
  'two modules at work': (r: Numbers) => r.atWork === 2,
  'all modules at work': (r: Numbers) => r.atWork === 3,
  'wet gas to cool the discharge': (r: Numbers) => r.boiling > 0 && r.Td > r.wetFrom,
  ice: (r: Numbers) => r.frost > 0,
  'slowed by its controller': (_r: Numbers, _at: string, controller: string) => controller.startsWith('slowed'),
} as const;
export type CornerName = keyof typeof CORNERS;
const CORNER_NAMES = Object.keys(CORNERS) as CornerName[];

interface Solved extends SweepPoint {
  readonly regimes: readonly boolean[];
}

const STOPPED = 'stopped-on-';

function solvedAt(machine: Swept, fault: SweptFault, severity: number): Solved {
  try {
    const snapshot = machine.steady(fault, severity);
    // the circuit has a balance there, but beyond a limit: the machine would not stay to reach it
    if (snapshot.controller.startsWith(STOPPED)) {
      return { severity, readings: null, stop: snapshot.controller.slice(STOPPED.length), regimes: [] };
    }
    if (isHeld(snapshot.controller)) return { severity, readings: null, stop: snapshot.controller, regimes: [] };
    const readings = machine.read(snapshot);
    const at = `@${fault.unit ?? ''}`;
    const regimes = CORNER_NAMES.map((name) => CORNERS[name](readings, at, snapshot.controller));
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

/** Faults that have no size. */
const UNSCALED: readonly FamilyId[] = [
  'changeover-ports-crossed',
  'unit-address-crossed',
  'module-valve-shut',
  'communication-lost',
];

/** @param most steps between no fault and the end of the range; left out = as many as the machine's sheet has */
export function sweeps(machine: Swept, most: number = machine.steps): Sweep[] {
  return machine.faults.flatMap((fault) => {
    const { family } = fault;
    const scaled = !UNSCALED.includes(family.id);
    const steps = scaled ? most : 1;
    return (family.signed ? [1, -1] : [1]).map((sign): Sweep => {
      const points = Array.from({ length: steps + 1 }, (_, i) =>
        solvedAt(machine, fault, (sign * family.max * i) / steps),
      );
      return {
        family: family.id,
        key: fault.key,
        unitWith: fault.unit ?? null,
        unitWithout: fault.sibling ?? null,
        scaled,
        unit: family.unit,
        slight: sign * family.slight,
        clear: sign * family.clear,
        severe: sign * family.severe,
        max: sign * family.max,
        points: points.map(({ severity, readings, stop }) => ({ severity, readings, stop })),
        corners: cornersOf(points),
      };
    });
  });
}

/**
 * Steps of a curve that stand out: where the step of one point is more than three times each neighbour's and more than the
 * instrument's uncertainty (a jump), as severities with the size in the reading's unit.
 */
export function jumps(sweep: Sweep, reading: string, least: number): { severity: number; size: number }[] {
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
