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
import { describeBench } from '../../src/bench/describe';
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

/** By how much (natural logarithm) everything read without hoses speaks for the true cause, against each other one. */
function margins(machine: Machine, key: string, rivals: readonly string[]): [string, number][] {
  const { conditions, refrigerant, plant } = machine.setup;
  const cause = key.split(':')[0];
  const families = REAL_WORLD.families.filter(({ id }) => [cause, ...rivals].includes(id));
  const source = { ...sourceOf(REAL_WORLD), families };
  // a machine with many units takes a second a draw
  const draws = machine.plant.units ? 4 : 10;
  const differential = computeDifferentialFrom({ plant, refrigerant, conditions }, source, undefined, { draws });
  const states = statesOf(machine.plant);
  const toolbag: readonly InstrumentId[] = ['clamp-ammeter', 'multimeter', 'data-link'];
  const { charge } = machine.plant.nameplate(refrigerant);
  const read = readerOf(source.snapshots(machine.setup, states));
  const readings = everyReading({ plant: machine.plant, toolbag, charge, states }, read);
  const likelihoods = [...causeLogLikelihoods(differential, readings)];
  const own = likelihoods.find(([each]) => each === cause)![1];
  return likelihoods.flatMap(([each, value]) => (each === cause ? [] : [[each, own - value]]));
}

/** Plant, the fault that holds it, and its nearest rivals. */
const HELD: readonly (readonly [PlantId, string, readonly string[]])[] = [
  ['orifice-split', 'drain-blocked', ['capacitor-weak', 'undercharge']],
  ['inverter-split', 'drain-blocked', ['supply-voltage-low', 'undercharge']],
  ['inverter-split', 'thermistor-open:suctionLine', ['thermistor-shorted', 'thermistor-drift', 'drain-blocked']],
  ['inverter-split', 'thermistor-shorted:evaporatorCoil', ['thermistor-open', 'thermistor-drift', 'drain-blocked']],
  ['thermostatic-heat-pump', 'drain-blocked', ['capacitor-weak', 'undercharge']],
  ['multi-split', 'phase-lost', ['supply-voltage-low']],
  ['heat-recovery', 'phase-lost', []],
];

describe.each(HELD)('%s with %s', (plant, key, rivals) => {
  const severity = key.startsWith('thermistor') ? 0.998 : 0.95;
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

  test('stops a machine that runs, which then comes to rest', () => {
    const sound = machineOf(plant, {});
    const broken = sound.repaired(sound.start('settled'), { [key]: severity });
    const first = broken.machine.snapshot(broken.machine.step(broken.state, sound.defaultControls, 1));
    expect(isHeld(first.controller)).toBe(true);
    const { probes, balance } = broken.machine.snapshot(later(broken.machine, broken.state, 3600));
    // shut valves of many units keep the sides apart for hours
    const near = broken.machine.plant.units ? 0.8 : 0.99;
    expect(probes.suctionPressure.value / probes.dischargePressure.value).toBeGreaterThan(near);
    expect(probes.suctionPressure.value / probes.dischargePressure.value).toBeLessThan(1.01);
    expect(balance.mass).toBeLessThan(1e-6);
  });

  test('is told from the sound machine and its rivals by eye, ammeter, meter and data link', {
    timeout: 60_000,
  }, () => {
    for (const [cause, margin] of margins(machine, key, rivals)) expect(margin, cause).toBeGreaterThan(5);
  });
});

test('a pan that the float does not reach yet changes nothing but what is seen', () => {
  const { looks: wet, ...rest } = machineOf('orifice-split', { 'drain-blocked': 0.6 }).steady();
  const { looks: dry, ...sound } = machineOf('orifice-split', {}).steady();
  expect(rest).toEqual(sound);
  expect({ ...wet, condensatePan: 0 }).toEqual(dry);
  expect(wet.condensatePan).toBe(0.6);
});

describe('a plug of the inverter split', () => {
  const sound = machineOf('inverter-split', {});
  const atRest = (faults: Faults) => {
    const machine = machineOf('inverter-split', faults);
    return machine.snapshot(machine.start('standing'));
  };

  test('shows the ohms that belong to the air around, cut or bridged what no sensor has', () => {
    const { probes } = sound.snapshot(sound.start('standing'));
    // 10 kΩ at 25 °C, B 3,950 K: 35 °C and 27 °C around
    expect(probes.suctionSensorResistance.value).toBeCloseTo(1e4 * Math.exp(3950 * (1 / 308.15 - 1 / 298.15)), 0);
    expect(probes.coilSensorResistance.value).toBeCloseTo(1e4 * Math.exp(3950 * (1 / 300.15 - 1 / 298.15)), 0);
    expect(atRest({ 'thermistor-open:suctionLine': 1 }).probes.suctionSensorResistance.value).toBe(1e6);
    expect(atRest({ 'thermistor-shorted:suctionLine': 1 }).probes.suctionSensorResistance.value).toBeCloseTo(1, 2);
    expect(atRest({ 'thermistor-drift:suctionLine': 3 }).probes.suctionSensorResistance.value).toBeLessThan(
      probes.suctionSensorResistance.value,
    );
  });

  test('a poor contact shifts what the controller reads, and it still runs: colder by series, warmer by a bridge', () => {
    const poor = machineOf('inverter-split', { 'thermistor-open:suctionLine': 0.3 }).steady();
    expect(poor.controller).toMatch(/^cooling/);
    expect(poor.sensors.suctionLine).toBeLessThan(poor.probes.suctionLineTemp.value - 1);
    const wet = machineOf('inverter-split', { 'thermistor-shorted:suctionLine': 0.3 }).steady();
    expect(wet.sensors.suctionLine).toBeGreaterThan(wet.probes.suctionLineTemp.value + 0.5);
    // the controller trusts it: superheat moves the other way
    expect(poor.probes.superheat.value).toBeGreaterThan(sound.steady().probes.superheat.value + 1);
    expect(wet.probes.superheat.value).toBeLessThan(sound.steady().probes.superheat.value - 0.3);
    expect(poor.balance.energy).toBeLessThan(1e-3);
    expect(poor.balance.mass).toBeLessThan(1e-9);
  });

  test('a coil without contact is a stuck valve to the machine, and tells itself by its ohms alone', () => {
    for (const [severity, twin] of [
      [0.4, 'metering-valve-stuck-opening'],
      [-0.4, 'metering-valve-stuck-closing'],
    ] as const) {
      const { probes, ...rest } = machineOf('inverter-split', { 'metering-valve-coil-unplugged': severity }).steady();
      const stuck = machineOf('inverter-split', { [twin]: Math.abs(severity) }).steady();
      expect(probes.valveCoilResistance.value).toBe(1e6);
      expect(stuck.probes.valveCoilResistance.value).toBeLessThan(100);
      expect({ ...probes, valveCoilResistance: null }).toEqual({ ...stuck.probes, valveCoilResistance: null });
      expect(rest.balance.energy).toBeLessThan(1e-3);
      const driven = machineOf('inverter-split', { 'metering-valve-coil-unplugged': severity });
      expect(driven.steady({ valveHold: 0.1 }).probes.valveOpening.value).toBe(probes.valveOpening.value);
    }
  });

  test('the ohms of the coil are evidence to the examiner', { timeout: 60_000 }, () => {
    const key = 'metering-valve-coil-unplugged';
    const rivals = ['metering-valve-stuck-opening', 'metering-valve-stuck-closing', 'thermistor-drift'];
    for (const [cause, margin] of margins(machineOf('inverter-split', { [key]: 0.3 }), key, rivals)) {
      expect(margin, cause).toBeGreaterThan(5);
    }
  });
});

describe('a phase that is missing', () => {
  test('leaves two low voltages: 400 V between phases, 231 V against the missing one', () => {
    const volts = (lost: number) =>
      machineOf('multi-split', { 'phase-lost': lost }).steady().probes.supplyVoltage.value;
    expect(volts(1)).toBeCloseTo(400 / Math.sqrt(3), 6);
    expect(volts(0.6)).toBeGreaterThan(volts(0.9));
  });

  test('a slight unbalance keeps nobody from running', () => {
    const { controller, probes } = machineOf('multi-split', { 'phase-lost': 0.1 }).steady();
    expect(controller).toMatch(/^cooling/);
    expect(probes.supplyVoltage.value).toBeLessThan(400);
  });

  test('keeps the indoor units off too, and nothing is said to move', () => {
    const machine = machineOf('multi-split', { 'phase-lost': 1 });
    const snapshot = machine.steady();
    const { units = [], looks } = snapshot;
    expect(units.every(({ state, fan }) => state === 'machine-stopped' && fan === 0)).toBe(true);
    expect(looks['evaporatorFanSpeed@unit1']).toBe(0);
    const keys = describeBench(machine.plant.drawing, snapshot, true).map(({ key }) => key);
    expect(keys).toContain('bench.says.branchIdle');
    expect(keys).not.toContain('bench.says.branchCoil');
  });
});
