/** A unit that the outdoor side does not hear: its valve shut, its fan on, no value of it on the link, little voltage on its bus. */
import { describe, expect, test } from 'vitest';
import { type Controls, createMachine, plantDescription } from '../../physics';
import type { NetworkState } from '../../physics/network/state';
import { NetworkBooks } from '../../physics/qualification/networkBooks';
import { REAL_WORLD } from '../../src/attempt';
import { causeLogLikelihoods } from '../../src/examiner/belief';
import { computeDifferentialFrom } from '../../src/examiner/differential';
import { readerOf } from '../../src/examiner/readings';
import { sourceOf, statesOf } from '../../src/examiner/source';
import { everyReading } from '../../src/examiner/twins';
import { type InstrumentId, isUnheard } from '../../src/instruments';

function machineOf(plant: 'multi-split' | 'heat-recovery', faults: Record<string, number>, mode?: 'heating') {
  const description = plantDescription(plant);
  const conditions = (mode && description.modes[mode]) || description.designConditions;
  return createMachine({ plant, refrigerant: 'R-410A', conditions, faults });
}
const KEY = 'communication-lost@unit3';

describe.each(['multi-split', 'heat-recovery'] as const)('%s', (plant) => {
  const sound = machineOf(plant, {}).steady();
  const machine = machineOf(plant, { [KEY]: 0.8 });
  const lost = machine.steady();

  test('severity 0 changes nothing; a little less voltage alone is still heard', () => {
    expect(machineOf(plant, { [KEY]: 0 }).steady()).toEqual(sound);
    const { probes, ...rest } = machineOf(plant, { [KEY]: 0.3 }).steady();
    expect(probes['busVoltage@unit3'].value).toBeLessThan(0.8 * sound.probes['busVoltage@unit3'].value);
    const same = { 'busVoltage@unit3': null };
    expect({ ...probes, ...same }).toEqual({ ...sound.probes, ...same });
    expect(rest).toEqual({ ...rest, units: sound.units, controller: sound.controller });
  });

  test('its room gets air as warm as it is, and the others are served', () => {
    const { probes, units = [], looks } = lost;
    expect(units.map(({ state }) => state)).toEqual(
      units.map(({ id }) => (id === 'unit3' ? 'not-answering' : 'cooling')),
    );
    expect(units.find(({ id }) => id === 'unit3')?.role).toBe('idle');
    expect(looks['evaporatorFanSpeed@unit3']).toBe(1);
    expect(Math.abs(probes['supplyAirTemp@unit3'].value - probes['returnAirTemp@unit3'].value)).toBeLessThan(1.5);
    expect(probes['supplyAirTemp@unit2'].value).toBeLessThan(probes['returnAirTemp@unit2'].value - 8);
    expect(probes['busVoltage@unit3'].value).toBeLessThan(4);
    expect(probes['busVoltage@unit2'].value).toBe(sound.probes['busVoltage@unit2'].value);
    expect(probes.compressorSpeed.value).toBeLessThan(sound.probes.compressorSpeed.value);
    expect(lost.balance.energy).toBeLessThan(1e-3);
    expect(lost.balance.mass).toBeLessThan(1e-6);
  });

  test('the link has no value of it, and of its neighbours it has', () => {
    expect(isUnheard(lost, 'valveOpening@unit3')).toBe(true);
    expect(isUnheard(lost, 'valveOpening@unit2')).toBe(false);
    expect(isUnheard(lost, 'compressorSpeed')).toBe(false);
  });

  test('half an hour later it is as it was; after the repair its room is cooled', () => {
    const { defaultControls } = machine;
    let state = machine.start('settled');
    const books = new NetworkBooks(machine, state);
    for (let time = 0; time < 1800; time += 5) {
      state = machine.step(state, defaultControls, 5);
      books.step(state, 5);
    }
    const { defect, moved, mass } = books.ledger;
    expect(Math.abs(defect) / moved).toBeLessThan(1e-3);
    expect(mass).toBeLessThan(1e-6);
    const later = machine.snapshot(state);
    expect(later.units?.[2]?.state).toBe('not-answering');
    expect(later.probes.suctionPressure.value / lost.probes.suctionPressure.value).toBeCloseTo(1, 3);
    const repaired = machine.repaired(state, {});
    let after = repaired.state;
    for (let time = 0; time < 900; time += 2) after = repaired.machine.step(after, defaultControls, 2);
    const { units, probes } = repaired.machine.snapshot(after);
    expect(units?.[2]?.state).toBe('cooling');
    expect(probes['supplyAirTemp@unit3'].value).toBeLessThan(probes['returnAirTemp@unit3'].value - 5);
  });
});

test('heating: the room that is not heard is not heated', () => {
  const { probes, units } = machineOf('multi-split', { [KEY]: 0.9 }, 'heating').steady();
  expect(units?.[2]?.state).toBe('not-answering');
  expect(probes['supplyAirTemp@unit3'].value).toBeLessThan(probes['supplyAirTemp@unit2'].value - 8);
});

test('where nobody else asks the machine rests, and it does not take that room for one that is switched on', () => {
  const machine = machineOf('multi-split', { [KEY]: 0.9 });
  const units = Object.fromEntries((plantDescription('multi-split').units ?? []).map((id) => [id, 'off' as const]));
  const controls: Controls = { ...machine.defaultControls, units: { ...units, unit3: 'cooling' } };
  let state = machine.start('settled') as NetworkState;
  for (let time = 0; time < 120; time += 2) state = machine.step(state, controls, 2) as NetworkState;
  expect(state.controller).toBe('room-satisfied');
  expect(machine.snapshot(state).looks['evaporatorFanSpeed@unit3']).toBe(1);
});

test('is told from the sound machine and a valve that stays shut by the meter and the link', {
  timeout: 120_000,
}, () => {
  const machine = machineOf('multi-split', { [KEY]: 0.8 });
  const { conditions, refrigerant, plant } = machine.setup;
  const causes = ['communication-lost', 'metering-valve-stuck-closing'];
  const families = REAL_WORLD.families.filter(({ id }) => causes.includes(id));
  const source = { ...sourceOf(REAL_WORLD), families };
  const differential = computeDifferentialFrom({ plant, refrigerant, conditions }, source, undefined, { draws: 3 });
  const states = statesOf(machine.plant);
  const { charge } = machine.plant.nameplate(refrigerant);
  const read = readerOf(source.snapshots(machine.setup, states));
  const toolbag: readonly InstrumentId[] = ['multimeter', 'data-link'];
  const readings = everyReading({ plant: machine.plant, toolbag, charge, states }, read);
  expect(readings.some(({ channel }) => channel === 'busVoltage@unit3')).toBe(true);
  expect(readings.some(({ channel }) => channel === 'valveOpening@unit3')).toBe(false);
  const likelihoods = new Map(causeLogLikelihoods(differential, readings));
  const own = likelihoods.get('communication-lost')!;
  for (const [cause, value] of likelihoods) {
    if (cause !== 'communication-lost') expect(own - value, cause).toBeGreaterThan(5);
  }
});
