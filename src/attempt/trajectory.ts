/**
 * The machine at any second, as a pure function of how it was found and what acted on it. Steps lie on a fixed grid
 * after each event, so that it does not matter in which portions time was advanced or asked for.
 */
import { PhysicsError } from '../../physics/errors';
import type { Controls, Faults, Machine, MachineState, Snapshot } from '../../physics/types';

/** Something that acted on the machine. `t` is the simulated second, whole. */
export type MachineEvent =
  | { readonly t: number; readonly kind: 'controls'; readonly controls: Controls }
  | { readonly t: number; readonly kind: 'faults'; readonly faults: Faults }
  /** work begins on it: it is held as it is until the next event (the room is kept meanwhile, the clock runs) */
  | { readonly t: number; readonly kind: 'held' };

/** The machine at one second. */
export interface Moment {
  readonly machine: Machine;
  readonly state: MachineState;
  readonly controls: Controls;
  /** code of the physics error that ended the run before this second; the state is the last one that could be computed */
  readonly stuck: string | null;
}

/** Grid after an event: the first rows are the quick part of a transient. */
const GRID = [
  { until: 120, dt: 1 },
  { until: 600, dt: 2 },
] as const;
const SLOW_DT = 5;

/** Number of the last grid point at or before `elapsed` seconds after an event. */
export function gridIndex(elapsed: number): number {
  let index = 0;
  let from = 0;
  for (const { until, dt } of GRID) {
    if (elapsed <= until) return index + Math.floor((elapsed - from) / dt);
    index += (until - from) / dt;
    from = until;
  }
  return index + Math.floor((elapsed - from) / SLOW_DT);
}

/** Seconds after the event of grid point `index`. */
export function gridTime(index: number): number {
  let first = 0;
  let from = 0;
  for (const { until, dt } of GRID) {
    const count = (until - from) / dt;
    if (index <= first + count) return from + (index - first) * dt;
    first += count;
    from = until;
  }
  return from + (index - first) * SLOW_DT;
}

/** One stretch between two events. */
interface Segment {
  readonly event: MachineEvent | null;
  readonly before: Segment | null;
  readonly t0: number;
  readonly machine: Machine;
  readonly controls: Controls;
  readonly states: MachineState[];
  readonly snapshots: (Snapshot | undefined)[];
  /** no later grid point differs (the machine stands still, or cannot be computed on) */
  ended: boolean;
  stuck: string | null;
}

export class Trajectory {
  private readonly segments: Segment[];

  constructor(machine: Machine) {
    const controls = machine.defaultControls;
    const beginning = { event: null, before: null, t0: 0, machine, controls, stuck: null };
    this.segments = [segmentFrom(beginning, asFound(machine, controls))];
  }

  /** The machine `t` whole seconds after the trainee's arrival, given what acted on it until then. */
  at(events: readonly MachineEvent[], t: number): Moment {
    const segment = this.segmentAt(events, t);
    const state = segment.states[this.reach(segment, t)]!;
    return { machine: segment.machine, state, controls: segment.controls, stuck: segment.stuck };
  }

  /** What the machine shows at that second; the last that could be computed where the physics gives up. */
  snapshot(events: readonly MachineEvent[], t: number): Snapshot {
    const segment = this.segmentAt(events, t);
    const snapshot = this.snapshotOf(segment, this.reach(segment, t));
    return snapshot.time === t ? snapshot : { ...snapshot, time: t };
  }

  private snapshotOf(segment: Segment, index: number): Snapshot {
    const { snapshots, states, machine } = segment;
    const known = snapshots[index];
    if (known) return known;
    try {
      snapshots[index] = machine.snapshot(states[index]!);
    } catch (error) {
      segment.stuck ??= codeOf(error);
      snapshots[index] = this.lastBefore(segment, index, error);
    }
    return snapshots[index];
  }

  private lastBefore(segment: Segment, index: number, error: unknown): Snapshot {
    if (index > 0) return this.snapshotOf(segment, index - 1);
    if (!segment.before) throw error;
    return this.snapshotOf(segment.before, this.reach(segment.before, segment.t0));
  }

  private segmentAt(events: readonly MachineEvent[], t: number): Segment {
    let count = events.length;
    while (count > 0 && events[count - 1]!.t > t) count -= 1;
    for (let i = 0; i < count; i += 1) {
      const known = this.segments[i + 1];
      if (known && sameEvent(known.event, events[i]!)) continue;
      this.segments.length = i + 1;
      this.segments.push(this.following(this.segments[i]!, events[i]!));
    }
    return this.segments[count]!;
  }

  private following(before: Segment, event: MachineEvent): Segment {
    const { machine, controls, stuck } = before;
    const next = { event, before, t0: event.t, machine, controls, stuck };
    const state = this.endOf(before, event.t);
    if (stuck) return segmentFrom(next, state);
    switch (event.kind) {
      case 'controls':
        return segmentFrom({ ...next, controls: event.controls }, state);
      case 'held':
        return { ...segmentFrom(next, state), ended: true };
      case 'faults':
        try {
          const repaired = machine.repaired(state, event.faults);
          return segmentFrom({ ...next, machine: repaired.machine }, repaired.state);
        } catch (error) {
          return segmentFrom({ ...next, stuck: codeOf(error) }, state);
        }
    }
  }

  /** State exactly at `t`: from the last grid point one shorter step, so that a change acts at its own second. */
  private endOf(segment: Segment, t: number): MachineState {
    const index = this.reach(segment, t);
    const state = segment.states[index]!;
    const rest = t - segment.t0 - gridTime(index);
    if (segment.ended || rest === 0) return at(state, t);
    try {
      return segment.machine.step(state, segment.controls, rest);
    } catch (error) {
      this.stop(segment, codeOf(error));
      return at(state, t);
    }
  }

  /** Computes the stretch up to `t`; the number of the state that holds there. */
  private reach(segment: Segment, t: number): number {
    const wanted = gridIndex(t - segment.t0);
    const { states, machine, controls, t0 } = segment;
    while (!segment.ended && states.length <= wanted) {
      const last = states.length - 1;
      const state = states[last]!;
      // A state tells only of the step behind it: right after a change it may look settled under what was before.
      if (last > 0 && machine.settled(state)) {
        segment.ended = true;
        break;
      }
      const dt = gridTime(last + 1) - gridTime(last);
      try {
        states.push(at(machine.step(state, controls, dt), t0 + gridTime(last + 1)));
      } catch (error) {
        this.stop(segment, codeOf(error));
      }
    }
    return Math.min(wanted, states.length - 1);
  }

  private stop(segment: Segment, code: string): void {
    segment.ended = true;
    segment.stuck = code;
  }
}

/** Running for hours where it can; else just switched on after standing (it trips while the trainee looks). */
function asFound(machine: Machine, controls: Controls): MachineState {
  try {
    return at(machine.start('settled', controls), 0);
  } catch (error) {
    codeOf(error);
    return at(machine.start('standing', controls), 0);
  }
}

type Beginning = Pick<Segment, 'event' | 'before' | 't0' | 'machine' | 'controls' | 'stuck'>;

function segmentFrom(beginning: Beginning, state: MachineState): Segment {
  return { ...beginning, states: [at(state, beginning.t0)], snapshots: [], ended: beginning.stuck !== null };
}

function at(state: MachineState, time: number): MachineState {
  return state.time === time ? state : { ...state, time };
}

/** The code of a physics error; anything else is a mistake of the program and goes on up. */
function codeOf(error: unknown): string {
  if (error instanceof PhysicsError) return error.code;
  throw error;
}

function sameEvent(a: MachineEvent | null, b: MachineEvent): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b);
}
