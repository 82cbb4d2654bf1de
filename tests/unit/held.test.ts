/** A machine that is switched on and stands: found so, kept so, told by what is read on it, and mended. */
import { describe, expect, test } from 'vitest';
import {
  createMachine,
  type Faults,
  isHeld,
  type Machine,
  type MachineState,
  type PlantId,
  plantDescription,
} from '../../physics';
import { REAL_WORLD } from '../../src/attempt';
import { causeLogLikelihoods } from '../../src/examiner/belief';
import { computeDifferentialFrom } from '../../src/examiner/differential';
import { readerOf } from '../../src/examiner/readings';
import { sourceOf, statesOf } from '../../src/examiner/source';
import { everyReading } from '../../src/examiner/twins';
import type { InstrumentId } from '../../src/instruments/types';

function machineOf(plant: PlantId, faults: Faults): Machine {
  const { id, refrigerants, designConditions } = plantDescription(plant, 'cooling');
  return createMachine({ plant: id, refrigerant: refrigerants[0], conditions: designConditions, faults });
}

function later(machine: Machine, from: MachineState, seconds: number): MachineState {
  let state = from;
  for (let t = 0; t < seconds; t += 30) state = machine.step(state, machine.defaultControls, 30);
  return state;
}

/** Plant, the fault that holds it, and its nearest rivals. */
const HELD: readonly (readonly [PlantId, string, readonly string[]])[] = [
  ['orifice-split', 'drain-blocked', ['capacitor-weak', 'undercharge']],
  ['inverter-split', 'drain-blocked', ['supply-voltage-low', 'undercharge']],
  ['thermostatic-heat-pump', 'drain-blocked', ['capacitor-weak', 'undercharge']],
];

describe.each(HELD)('%s with %s', (plant, key, rivals) => {
  const severity = 0.95;
  const machine = machineOf(plant, { [key]: severity });
  const found = machine.start('settled');

  test('stands in equal pressure with no current, and says that it is held', () => {
    const { probes, controller, regime, balance } = machine.steady();
    expect(regime).toBe('still');
    expect(isHeld(controller)).toBe(true);
    expect(probes.compressorCurrent.value).toBe(0);
    expect(probes.totalPower.value).toBe(0);
    expect(probes.suctionPressure.value).toBeCloseTo(probes.dischargePressure.value, 0);
    expect(probes.suctionPressure.value).toBeCloseTo(probes.standingPressure.value, 0);
    expect(balance.mass).toBeLessThan(1e-9);
    expect(machine.snapshot(found).probes).toEqual(machine.steady().probes);
  });

  test('stays so for hours, to the gram', () => {
    expect(machine.settled(found)).toBe(true);
    const after = machine.snapshot(later(machine, found, 7200));
    expect(isHeld(after.controller)).toBe(true);
    expect(after.balance.mass).toBeLessThan(1e-9);
    expect(after.probes.returnAirTemp.value).toBeCloseTo(machine.steady().probes.returnAirTemp.value, 2);
  });

  test('runs again once it is mended, and the room cools', () => {
    const mended = machine.repaired(found, {});
    const after = mended.machine.snapshot(later(mended.machine, mended.state, 1200));
    expect(after.controller).toMatch(/^cooling/);
    expect(after.probes.capacityTotal.value).toBeGreaterThan(1500);
    expect(after.probes.returnAirTemp.value).toBeLessThan(machine.steady().probes.returnAirTemp.value);
  });

  test('stops a machine that runs, which then comes to the same rest', () => {
    const sound = machineOf(plant, {});
    const broken = sound.repaired(sound.start('settled'), { [key]: severity });
    const first = broken.machine.snapshot(broken.machine.step(broken.state, sound.defaultControls, 1));
    expect(isHeld(first.controller)).toBe(true);
    const { probes } = broken.machine.snapshot(later(broken.machine, broken.state, 3600));
    expect(probes.suctionPressure.value / probes.dischargePressure.value).toBeCloseTo(1, 2);
  });

  test('is told from the sound machine and its rivals by eye, ammeter and meter', { timeout: 60_000 }, () => {
    const { conditions, refrigerant } = machine.setup;
    const families = REAL_WORLD.families.filter(({ id }) => [key.split(':')[0], ...rivals].includes(id));
    const source = { ...sourceOf(REAL_WORLD), families };
    const input = { plant, refrigerant, conditions };
    const differential = computeDifferentialFrom(input, source, undefined, { draws: 10 });
    const states = statesOf(machine.plant);
    const toolbag: readonly InstrumentId[] = ['clamp-ammeter', 'multimeter'];
    const { charge } = machine.plant.nameplate(refrigerant);
    const read = readerOf(source.snapshots(machine.setup, states));
    const readings = everyReading({ plant: machine.plant, toolbag, charge, states }, read);
    const likelihoods = causeLogLikelihoods(differential, readings);
    const own = likelihoods.get(families.find(({ id }) => key.startsWith(id))!.id)!;
    for (const [cause, value] of likelihoods) if (!key.startsWith(cause)) expect(own - value, cause).toBeGreaterThan(5);
  });
});

test('a pan that the float does not reach yet changes nothing but what is seen', () => {
  const { looks: wet, ...rest } = machineOf('orifice-split', { 'drain-blocked': 0.6 }).steady();
  const { looks: dry, ...sound } = machineOf('orifice-split', {}).steady();
  expect(rest).toEqual(sound);
  expect({ ...wet, condensatePan: 0 }).toEqual(dry);
  expect(wet.condensatePan).toBe(0.6);
});
