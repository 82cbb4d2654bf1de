/** A heat pump whose reversing valve shifts: nothing is lost, the coils change roles with their ice, and the picture follows. */
import { describe, expect, test } from 'vitest';
import { createMachine, type Machine, type MachineState, plantDescription } from '../../physics';
import type { CircuitState } from '../../physics/solve/state';
import { reachesOf, segmentsOf } from '../../src/bench/model/reaches';

const HEATING = plantDescription('thermostatic-heat-pump', 'heating');

function winter(faults: Record<string, number> = {}): Machine {
  const conditions = { ...HEATING.designConditions, outdoor: 275.15 };
  return createMachine({ plant: HEATING.id, refrigerant: 'R-410A', conditions, faults });
}

/** Steps until the controller says so, at most `limit` seconds. */
function until(machine: Machine, from: MachineState, word: string, limit: number): MachineState {
  let state = from;
  for (let t = 0; t < limit; t += 5) {
    state = machine.step(state, machine.defaultControls, 5);
    if (machine.snapshot(state).controller === word) return state;
  }
  throw new Error(`never "${word}" within ${limit} s`);
}

describe('a defrost', () => {
  const machine = winter();
  const before = until(machine, machine.start('settled'), 'defrosting', 4000);

  test('the shift keeps every gram, the ice stays on the outdoor coil, and both fans stand', () => {
    const { charge, massHigh, condenserIce = [], frost, direction } = before as CircuitState;
    expect(direction).toBe('cooling');
    expect(massHigh).toBeGreaterThan(0);
    expect(massHigh).toBeLessThan(charge);
    const sum = (kg: readonly number[]) => kg.reduce((a, b) => a + b, 0);
    expect(sum(condenserIce)).toBeGreaterThan(1);
    expect(sum(frost)).toBe(0);
    const { balance, looks, turnedOver } = machine.snapshot(before);
    expect(balance.mass).toBeLessThan(1e-9);
    expect(looks.condenserFanSpeed).toBe(0);
    expect(looks.outdoorIce).toBeGreaterThan(0.2);
    expect(turnedOver).toBe(true);
  });

  test('the picture of the outdoor coil goes on showing the outdoor coil', () => {
    const snapshot = machine.snapshot(before);
    const coil = reachesOf(HEATING.drawing).find(({ id }) => id === 'outdoor-coil');
    if (!coil) throw new Error('no outdoor coil is drawn');
    const shown = segmentsOf(coil, snapshot);
    expect(shown).toEqual([...snapshot.condenser].reverse());
    expect(shown.some(({ frost }) => frost > 0.05)).toBe(true);
  });

  test('ends with a clear coil and heats again', () => {
    const after = until(machine, before, 'heating', 900);
    const { looks, turnedOver } = machine.snapshot(after);
    expect(looks.outdoorIce).toBeLessThan(0.01);
    expect(turnedOver).toBeUndefined();
  });
});

test('a machine in the other mode than it was called to is solved at the same weather', () => {
  const machine = winter();
  const heated = machine.steady();
  const cooled = machine.steady({ mode: 'cooling' });
  expect(heated.probes.supplyAirTemp.value).toBeGreaterThan(heated.probes.returnAirTemp.value);
  expect(cooled.probes.supplyAirTemp.value).toBeLessThan(cooled.probes.returnAirTemp.value);
});

test('what sits at one metering station is felt in one mode only', () => {
  const sound = winter();
  const ill = winter({ 'check-valve-leaking': 1.6 });
  const heat = (machine: Machine, mode: 'cooling' | 'heating') =>
    machine.steady({ mode }).probes.dischargeLineTemp.value;
  expect(heat(ill, 'heating')).toBeLessThan(heat(sound, 'heating') - 2);
  expect(heat(ill, 'cooling')).toBe(heat(sound, 'cooling'));
});
