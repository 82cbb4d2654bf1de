import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PhysicsError } from '../../physics/errors';
import type { Controls, MachineState } from '../../physics/types';
import { gridIndex, gridTime, type MachineEvent, Trajectory } from '../../src/attempt/trajectory';
import { FakeMachine } from '../support/fake-machine';

const setup = {
  plant: 'orifice-split',
  refrigerant: 'R-410A',
  conditions: { outdoor: 308.15, indoor: 300.15, wetBulb: 292.55, mode: 'cooling', altitude: 0 },
  faults: {},
} as const;

const machine = () => new FakeMachine(setup);
const on = machine().defaultControls;
const off: Controls = { ...on, running: false };
const events: readonly MachineEvent[] = [
  { t: 30, kind: 'controls', controls: off },
  { t: 433, kind: 'faults', faults: { undercharge: 0.2 } },
  { t: 1207, kind: 'controls', controls: on },
];

describe('the grid of steps', () => {
  it('is 1 s for two minutes, 2 s to ten minutes, 5 s after that', () => {
    expect([0, 1, 120, 121, 122, 600, 604, 605].map(gridIndex)).toEqual([0, 1, 120, 120, 121, 360, 360, 361]);
  });

  it('maps numbers to times and back', () => {
    for (let index = 0; index < 2000; index += 1) expect(gridIndex(gridTime(index))).toBe(index);
  });
});

describe('the trajectory', () => {
  it('does not depend on how time was advanced or asked for', () => {
    const forward = new Trajectory(machine());
    const expected = Array.from({ length: 2400 }, (_, t) => forward.snapshot(events, t).probes.suctionPressure.value);
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 2399 }), { minLength: 1, maxLength: 40 }), (times) => {
        const other = new Trajectory(machine());
        for (const t of times) expect(other.snapshot(events, t).probes.suctionPressure.value).toBe(expected[t]);
      }),
      { seed: 7, numRuns: 60 },
    );
  });

  it('knows nothing of events that come later', () => {
    const whole = new Trajectory(machine());
    whole.at(events, 3000);
    const until = new Trajectory(machine());
    for (const t of [0, 29, 200, 432]) {
      expect(whole.at(events, t).state).toEqual(until.at(events.slice(0, 1), t).state);
    }
  });

  it('takes another course where another event is put in its place, and the first again when asked', () => {
    const trajectory = new Trajectory(machine());
    const first = trajectory.at(events, 2000).state;
    const other = [events[0]!, { t: 50, kind: 'controls', controls: on } as const];
    expect(trajectory.at(other, 2000).state).not.toEqual(first);
    expect(trajectory.at(events, 2000).state).toEqual(first);
  });

  it('lets a change act at its own second, also between two grid points', () => {
    const trajectory = new Trajectory(machine());
    const change: MachineEvent = { t: 1000, kind: 'controls', controls: on };
    const list = [{ t: 1, kind: 'controls', controls: off } as const, change];
    const before = trajectory.at(list, 999).state as MachineState & { level: number };
    const at = trajectory.at(list, 1000).state as MachineState & { level: number };
    expect(at.time).toBe(1000);
    expect(at.level).toBeLessThanOrEqual(before.level);
    expect((trajectory.at(list, 1001).state as MachineState & { level: number }).level).toBeGreaterThan(at.level);
  });

  it('stops stepping when nothing moves any more, and the clock runs on', () => {
    const still = machine();
    const trajectory = new Trajectory(still);
    expect(trajectory.snapshot([], 100_000).time).toBe(100_000);
    // One, to see that it does not move.
    expect(still.steps).toBe(1);
  });

  it('keeps the last state and says why where the physics gives up', () => {
    class Breaking extends FakeMachine {
      override step(state: MachineState, controls: Controls, dt: number): MachineState {
        if (state.time >= 80) throw new PhysicsError('table-end', 'beyond the table');
        return super.step(state, controls, dt);
      }
    }
    const trajectory = new Trajectory(new Breaking(setup));
    const moment = trajectory.at(events, 400);
    expect(moment.stuck).toBe('table-end');
    expect(moment.state.time).toBe(80);
    expect(trajectory.at(events, 2000).stuck).toBe('table-end');
  });

  it('begins standing where there is no steady state to be found in', () => {
    class Tripping extends FakeMachine {
      override start(from: 'settled' | 'standing', controls?: Partial<Controls>): MachineState {
        if (from === 'settled') throw new PhysicsError('no-convergence', 'it trips');
        return super.start(from, controls);
      }
    }
    const trajectory = new Trajectory(new Tripping(setup));
    expect(trajectory.snapshot([], 0).regime).toBe('still');
    expect(trajectory.snapshot([], 60).regime).toBe('flow');
  });

  it('does not swallow mistakes of the program', () => {
    class Buggy extends FakeMachine {
      override step(): MachineState {
        throw new TypeError('a mistake');
      }
    }
    expect(() => new Trajectory(new Buggy(setup)).at(events, 400)).toThrow(TypeError);
  });
});
