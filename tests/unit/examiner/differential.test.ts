import { describe, expect, it } from 'vitest';
import { channelSd } from '../../../src/examiner/belief';
import { decodeDifferential, encodeDifferential } from '../../../src/examiner/compact';
import { computeDifferentialFrom } from '../../../src/examiner/differential';
import { discrepancyOf } from '../../../src/examiner/discrepancy';
import { fitComponents } from '../../../src/examiner/fit';
import { differentialKey } from '../../../src/examiner/key';
import { INPUT, SYNTHETIC } from './synthetic';

const differential = computeDifferentialFrom(INPUT, SYNTHETIC);
const node = (cause: string) => differential.nodes.filter((each) => each.cause === cause);
const channel = (name: string) => differential.channels.indexOf(name as never);

describe('the differential', () => {
  it('expects of the healthy machine what it reads in the middle of its ranges', () => {
    const [component] = node('no-fault')[0].states.running!;
    expect(component.mean[channel('suctionPressure')] / 1e6).toBeCloseTo(1, 2);
    expect(component.mean[channel('superheat')]).toBeCloseTo(7, 0);
  });

  it('spreads as far as the stated differences between machines carry', () => {
    const [component] = node('no-fault')[0].states.running!;
    // 1 SD of charge is 1.5 %: 40 K for the whole charge make 0.6 K.
    const c = channel('superheat');
    const error = discrepancyOf('superheat', 7);
    expect(channelSd(component, c, differential)).toBeCloseTo(Math.sqrt(0.6 * 0.6 + error * error), 1);
  });

  it('covers the whole range of severity: neighbouring cells meet', () => {
    const cells = node('undercharge');
    expect(cells[0].from).toBe(0.08);
    expect(cells.at(-1)!.to).toBe(0.45);
    for (let i = 1; i < cells.length; i++) expect(cells[i].from).toBe(cells[i - 1].to);
    expect(cells.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
  });

  it('is the same after being shipped', () => {
    const shipped = decodeDifferential(JSON.parse(JSON.stringify(encodeDifferential(differential))));
    expect(shipped.nodes.length).toBe(differential.nodes.length);
    differential.nodes.forEach(({ states }, i) => {
      states.running!.forEach(({ mean }, j) => {
        mean.forEach((value, c) => {
          const error = discrepancyOf(differential.channels[c], value);
          expect(Math.abs(shipped.nodes[i].states.running![j].mean[c] - value)).toBeLessThanOrEqual(0.1 * error);
        });
      });
    });
  });

  it('has another key for another weather, another physics, other draws', () => {
    const key = differentialKey(INPUT, SYNTHETIC);
    const cooler = { ...INPUT, conditions: { ...INPUT.conditions, outdoor: 295.15 } };
    expect(differentialKey(cooler, SYNTHETIC)).not.toBe(key);
    expect(differentialKey(INPUT, { ...SYNTHETIC, version: 'other' })).not.toBe(key);
    expect(differentialKey(INPUT, SYNTHETIC, { draws: 8 })).not.toBe(key);
    expect(differential.key).toBe(key);
  });

  it('reports its progress and counts states that a machine does not have', () => {
    const seen: number[] = [];
    const tripping = { ...SYNTHETIC, snapshots: () => ({}) };
    const empty = computeDifferentialFrom(INPUT, tripping, ({ done }) => seen.push(done), { draws: 4 });
    expect(seen.at(-1)).toBe(empty.nodes.length);
    expect(empty.failed).toBe(empty.nodes.length * 4 * empty.states.length);
  });

  it('keeps two regimes apart instead of averaging them', () => {
    const draws = Array.from({ length: 24 }, (_, i) => {
      const score = (2 * (i + 0.5)) / 24 - 1;
      const wet = score > 0.4;
      return { scores: [score * Math.sqrt(3)], values: [wet ? 0 : 8 + score], regime: wet ? 'flooded' : 'dry' };
    });
    const components = fitComponents(draws, 24);
    expect(components.length).toBe(2);
    expect(components.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    expect(components.map(({ mean }) => Math.round(mean[0])).sort()).toEqual([0, 8]);
    expect(Math.max(...components.map(({ unique }) => unique[0]))).toBeLessThan(0.2);
  });
});
