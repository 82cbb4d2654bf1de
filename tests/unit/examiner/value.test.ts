import { describe, expect, it } from 'vitest';
import { drawNuisance } from '../../../src/attempt/seeds';
import { priorOf } from '../../../src/examiner/belief';
import { computeDifferentialFrom } from '../../../src/examiner/differential';
import { informationOfMeasured, informationOfTable } from '../../../src/examiner/information';
import { entropyBits } from '../../../src/examiner/numeric';
import { greedyPathOn } from '../../../src/examiner/path';
import { readerOf } from '../../../src/examiner/readings';
import { twinsOf } from '../../../src/examiner/twins';
import { standpoint, valueAll } from '../../../src/examiner/value';
import { stream } from '../../../src/instruments/streams';
import { benchFor, INPUT, SYNTHETIC, TALLY } from './synthetic';

const differential = computeDifferentialFrom(INPUT, SYNTHETIC);
const bench = benchFor(differential);

describe('expected gain of a reading', () => {
  it('is one bit for a reading that parts two equal causes, none for one that does not', () => {
    const apart = [
      { cause: 0, weight: 0.5, mean: 0, sd: 1 },
      { cause: 1, weight: 0.5, mean: 40, sd: 1 },
    ];
    expect(informationOfMeasured(apart, [0, 0])).toBeCloseTo(1, 6);
    const same = [
      { cause: 0, weight: 0.5, mean: 0, sd: 1 },
      { cause: 1, weight: 0.5, mean: 0, sd: 1 },
    ];
    expect(informationOfMeasured(same, [0, 0])).toBeCloseTo(0, 9);
  });

  it('agrees with a fine quadrature of two overlapping Gaussians within 0.005 bit', () => {
    const outcomes = [
      { cause: 0, weight: 0.3, mean: 0, sd: 1 },
      { cause: 1, weight: 0.7, mean: 1.7, sd: 1.4 },
    ];
    let sum = 0;
    const step = 0.001;
    for (let x = -12; x < 16; x += step) {
      const p = outcomes.map(
        ({ weight, mean, sd }) => (weight * Math.exp(-0.5 * ((x - mean) / sd) ** 2)) / (sd * Math.sqrt(2 * Math.PI)),
      );
      p.forEach((each, i) => {
        if (each > 0) sum += step * each * Math.log2(each / (outcomes[i].weight * (p[0] + p[1])));
      });
    }
    expect(informationOfMeasured(outcomes, [0, 0])).toBeGreaterThan(sum - 0.005);
    expect(informationOfMeasured(outcomes, [0, 0])).toBeLessThan(sum + 0.005);
  });

  it('of a table is the mutual information', () => {
    expect(
      informationOfTable([
        [0.25, 0.25],
        [0.25, 0.25],
      ]),
    ).toBeCloseTo(0, 12);
    expect(
      informationOfTable([
        [0.5, 0],
        [0, 0.5],
      ]),
    ).toBeCloseTo(1, 12);
  });

  it('never exceeds what is still open, and gauges carry the price of proving the air', () => {
    const point = standpoint(differential, TALLY, []);
    const open = entropyBits(Object.values(priorOf(differential, TALLY)) as number[]);
    for (const each of valueAll(point, bench)) {
      expect(each.bits, each.id).toBeLessThanOrEqual(open);
      if (each.instrument.endsWith('gauge')) {
        expect(each.first.length).toBeGreaterThan(0);
        expect(each.cost).toBeGreaterThan(each.minutes);
      }
    }
  });
});

describe('greedy best path', () => {
  it('finds the cause on nine of ten machines off the grid, gauges never before the air is proved', () => {
    const faults: Record<string, number>[] = [
      { undercharge: 0.21 },
      { 'drier-restriction': 0.41 },
      { 'condenser-dirty': 0.33 },
      { 'filter-dirty': 0.37 },
    ];
    let found = 0;
    for (let i = 0; i < 40; i++) {
      const fault = faults[i % faults.length];
      const nuisance = drawNuisance(stream(`path/${i}`));
      const read = readerOf(SYNTHETIC.snapshots({ ...INPUT, faults: fault, nuisance }, differential.states));
      const path = greedyPathOn(differential, TALLY, bench, read);
      const belief = path.steps.at(-1)!.posterior;
      if (belief[Object.keys(fault)[0] as keyof typeof belief]! >= 0.8) found += 1;
      const channels = path.steps.map(({ candidate }) => candidate.channel);
      const gauge = path.steps.findIndex(({ candidate }) => candidate.instrument.endsWith('gauge'));
      if (gauge >= 0) expect(channels.slice(0, gauge)).toEqual(expect.arrayContaining(['look:filterDust']));
    }
    expect(found).toBeGreaterThanOrEqual(36);
  });

  it('calls causes twins only where every allowed reading leaves them within 3 to 1', () => {
    const reader = (faults: Record<string, number>) =>
      readerOf(SYNTHETIC.snapshots({ ...INPUT, faults }, differential.states));
    expect(twinsOf(differential, bench, reader({ 'filter-dirty': 0.4 }), ['filter-dirty'])).toEqual(['filter-dirty']);
    // A fault far too small to see reads like no fault.
    expect(twinsOf(differential, bench, reader({ overcharge: 0.001 }), ['overcharge'])).toContain('no-fault');
  });
});
