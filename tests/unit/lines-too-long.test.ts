import { describe, expect, test } from 'vitest';
import { createMachine, type Faults } from '../../physics';
import { plantDescription } from '../../physics/plants';
import { REAL_WORLD } from '../../src/attempt/world';
import { causeLogLikelihoods } from '../../src/examiner/belief';
import { computeDifferentialFrom } from '../../src/examiner/differential';
import { readerOf } from '../../src/examiner/readings';
import { sourceOf, statesOf } from '../../src/examiner/source';
import { everyReading } from '../../src/examiner/twins';

const { designConditions: conditions } = plantDescription('orifice-split');
const machine = (faults: Faults = {}) =>
  createMachine({ plant: 'orifice-split', refrigerant: 'R-410A', conditions, faults });
const LONG = { 'lines-too-long': 40 };

describe('lines laid far longer than planned', () => {
  test('suction is low at the service valve and high at the coil; less is cooled, and the gas warms on its way', () => {
    const [sound, long] = [machine().steady(), machine(LONG).steady()];
    const change = (read: (s: typeof sound) => number) => read(long) - read(sound);
    expect(change((s) => s.probes.suctionPressure.value)).toBeLessThan(-8e3);
    expect(change((s) => s.stations['evaporator-out'].pressure)).toBeGreaterThan(8e3);
    expect(change((s) => s.probes.suctionLineTemp.value - s.probes.evaporatorOutletTemp.value)).toBeGreaterThan(1.5);
    expect(change((s) => s.probes.capacityTotal.value) / sound.probes.capacityTotal.value).toBeLessThan(-0.03);
    // it was charged for its length, and no pipe is bent
    expect(long.probes.refrigerantCharge.value).toBeCloseTo(sound.probes.refrigerantCharge.value, 9);
    expect(long.looks.lineCharged).toBe(1);
    expect(long.looks.liquidLineKink).toBe(0);
    expect(sound.looks.linesPlanned).toBe(1);
    expect(long.looks.linesPlanned).toBeLessThan(0.3);
    expect(long.balance.energy).toBeLessThan(1e-3);
    expect(long.balance.mass).toBeLessThan(1e-9);
  });

  test('more metres take more, over the whole range', () => {
    const at = (metres: number) => machine({ 'lines-too-long': metres }).steady().probes;
    const runs = [0, 6, 12, 25, 40, 60].map(at);
    for (const [a, b] of runs.slice(1).map((run, i) => [runs[i], run])) {
      expect(b.suctionPressure.value).toBeLessThan(a.suctionPressure.value);
      expect(b.capacityTotal.value).toBeLessThan(a.capacityTotal.value);
    }
  });

  test('it runs for half an hour and keeps its charge', () => {
    const long = machine(LONG);
    let state = long.start('standing', long.defaultControls);
    for (let t = 0; t < 1800; t += 10) state = long.step(state, long.defaultControls, 10);
    const { probes, balance } = long.snapshot(state);
    expect(balance.mass).toBeLessThan(1e-6);
    expect(probes.suctionPressure.value / long.steady().probes.suctionPressure.value).toBeCloseTo(1, 1);
  });

  test('the examiner tells it from the sound machine and its nearest rivals', () => {
    const toolbag = ['multimeter'] as const;
    const rivals = ['suction-line-uninsulated', 'undercharge', 'orifice-undersize', 'service-valve-throttled'];
    const families = REAL_WORLD.families.filter(({ id }) => ['lines-too-long', ...rivals].includes(id));
    const source = { ...sourceOf(REAL_WORLD), families };
    const long = machine({ 'lines-too-long': 25 });
    const input = { plant: 'orifice-split', refrigerant: 'R-410A', conditions } as const;
    const differential = computeDifferentialFrom(input, source, undefined, { draws: 10 });
    const states = statesOf(long.plant);
    const { charge } = long.plant.nameplate('R-410A');
    const read = readerOf(source.snapshots(long.setup, states));
    const likelihoods = new Map(
      causeLogLikelihoods(differential, everyReading({ plant: long.plant, toolbag, charge, states }, read)),
    );
    const own = likelihoods.get('lines-too-long') ?? Number.NaN;
    for (const rival of [...rivals, 'no-fault'] as const) {
      expect(own - (likelihoods.get(rival as 'no-fault') ?? Number.NaN), rival).toBeGreaterThan(Math.log(10));
    }
  });
});
