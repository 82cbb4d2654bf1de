/** A machine with many units at low speed for hours: it fetches its oil, shows it, and what is read then proves nothing. */
import { describe, expect, test } from 'vitest';
import { type Controls, createMachine, type Machine, type MachineState, plantDescription } from '../../physics';
import type { NetworkState } from '../../physics/network/state';
import type { Mode } from '../../physics/qualification/networkCourse';
import { operatingState } from '../../src/attempt/operating';
import type { AttemptState } from '../../src/attempt/state';

/** The first `rooms` rooms ask, the others are off. */
function found(plant: 'multi-split' | 'heat-recovery', mode: Mode, rooms: number, outdoor?: number) {
  const description = plantDescription(plant);
  const rated = description.modes[mode] ?? description.designConditions;
  const conditions = { ...rated, outdoor: outdoor ?? rated.outdoor };
  const machine = createMachine({ plant, refrigerant: 'R-410A', conditions, faults: {} });
  const units = Object.fromEntries((description.units ?? []).slice(rooms).map((id) => [id, 'off' as const]));
  const controls: Controls = { ...machine.defaultControls, units, ...(mode === 'heating' && { setPoint: 297.15 }) };
  return { machine, controls, state: machine.start('settled', controls) };
}

function run(machine: Machine, from: MachineState, controls: Controls, seconds: number, dt: number): MachineState {
  let state = from;
  for (let time = 0; time < seconds; time += dt) state = machine.step(state, controls, dt);
  return state;
}

const word = (state: MachineState) => (state as NetworkState).controller;
const HOURS = 14_400;

describe.each([
  ['cooling', 2, undefined],
  ['heating', 1, 280.15],
] as const)('few rooms ask, %s', (mode, rooms, outdoor) => {
  const { machine, controls, state } = found('multi-split', mode, rooms, outdoor);
  const before = run(machine, state, controls, HOURS, 30);
  const during = run(machine, before, controls, 150, 2);

  test('nothing moves for hours, then it fetches its oil: suction down, no superheat', () => {
    expect(word(before)).toBe(mode);
    expect(machine.settled(before)).toBe(false);
    expect(word(during)).toBe('bringing-oil-back');
    const then = machine.snapshot(before).probes;
    const now = machine.snapshot(during).probes;
    expect(now.suctionPressure.value).toBeLessThan(0.95 * then.suctionPressure.value);
    expect(then.superheat.value).toBeGreaterThan(3);
    expect(now.superheat.value).toBeLessThan(1);
    expect(now.compressorSpeed.value).toBeGreaterThan(1.5 * then.compressorSpeed.value);
  });

  test('every unit is open to the suction, and in heating the fans indoors stand', () => {
    const { units = [], looks } = machine.snapshot(during);
    expect(units.every(({ role }) => role === 'evaporator')).toBe(true);
    expect(looks['evaporatorFanSpeed@unit1']).toBe(mode === 'heating' ? 0 : 1);
  });

  test('a reading under it is one of another state, as under a defrost', () => {
    const at = (moment: MachineState) => {
      const acted = {
        repairs: [],
        events: [],
        controls: machine.defaultControls,
        site: { plant: machine.plant, at: () => ({ machine, stuck: null }), snapshot: () => machine.snapshot(moment) },
      };
      return operatingState(acted as unknown as AttemptState, 0, 'suctionPressure');
    };
    expect(at(before)).toBe('running');
    expect(at(during)).toBe('other');
  });

  test('ends, and the machine stands where it stood', () => {
    const after = run(machine, during, controls, 2400, 2) as NetworkState;
    expect(after.trips).toBe(0);
    expect(word(after)).toBe(mode);
    expect(after.slowFor).toBeLessThan(2400);
    const then = machine.snapshot(before).probes;
    const now = machine.snapshot(after).probes;
    expect(now.suctionPressure.value / then.suctionPressure.value).toBeCloseTo(1, 1.3);
    expect(Math.abs(now.superheat.value - then.superheat.value)).toBeLessThan(2);
  });
});

test('two days: it comes back again and again, and no gram is lost', () => {
  const { machine, controls, state } = found('heat-recovery', 'cooling', 2);
  let now = state as NetworkState;
  let sweeps = 0;
  for (let time = 0; time < 2 * 86_400; time += 20) {
    const next = machine.step(now, controls, 20) as NetworkState;
    if (next.sweepingFor !== null && now.sweepingFor === null) sweeps++;
    now = next;
  }
  expect(sweeps).toBeGreaterThanOrEqual(9);
  expect(sweeps).toBeLessThanOrEqual(12);
  expect(now.trips).toBe(0);
  expect(machine.snapshot(now).balance.mass).toBeLessThan(1e-6);
});

test('no sweep at held speed, at the speed of a machine with all its rooms, or where rooms cool and heat at once', () => {
  const all = found('multi-split', 'cooling', 8);
  expect((run(all.machine, all.state, all.controls, 900, 30) as NetworkState).slowFor).toBe(0);
  expect(all.machine.settled(run(all.machine, all.state, all.controls, 900, 30))).toBe(true);
  const both = found('heat-recovery', 'simultaneous', 2);
  expect((both.state as NetworkState).speed).toBeLessThan(0.35);
  expect((run(both.machine, both.state, both.controls, 900, 30) as NetworkState).slowFor).toBe(0);
  const one = found('multi-split', 'cooling', 1);
  const due: NetworkState = { ...(one.state as NetworkState), slowFor: HOURS };
  const held = { ...one.controls, fixedSpeed: true };
  expect((run(one.machine, due, held, 300, 2) as NetworkState).sweepingFor).toBeNull();
});

test('switched off in the middle of it, it is done again later, the right way round', () => {
  const { machine, controls, state } = found('multi-split', 'heating', 1, 280.15);
  const due: NetworkState = { ...(state as NetworkState), slowFor: HOURS };
  const during = run(machine, due, controls, 100, 2) as NetworkState;
  expect(during.turnedFrom).not.toBeNull();
  const off = run(machine, during, { ...controls, running: false }, 60, 2) as NetworkState;
  expect(off.sweepingFor).toBeNull();
  expect(off.outdoors.role).toBe('evaporator');
  const back = run(machine, off, controls, 1000, 2) as NetworkState;
  expect(word(back)).toBe('heating');
  const again = run(machine, back, controls, 900, 2) as NetworkState;
  expect(again.time).toBeGreaterThan(off.time);
  expect(machine.snapshot(again).balance.mass).toBeLessThan(1e-6);
});
