import { describe, expect, test } from 'vitest';
import { replay, start } from '../../../src/attempt';
import { machineFacts } from '../../../src/attempt/pack/facts';
import { checkPack } from '../../../src/attempt/pack/load';
import type { Pack } from '../../../src/attempt/pack/types';
import { differentialInput, keyOfDifferential } from '../../../src/examiner';
import { bagChoices, closedBag, jobId, jobPack } from '../../../src/practice/jobs';
import { beliefFrom, bestThree, makeRadio } from '../../../src/practice/radio';
import { shippedCallouts } from '../../support/differentials';
import { settingAt } from '../../support/practice';

const shelf: Pack[] = [...new Map(shippedCallouts().map(({ pack }) => [pack.id, pack])).values()];
const home = shelf.find(({ id }) => id === 'old-wharf')!.callouts.find(({ id }) => id === 'sail-loft')!;
const BAG = ['pipe-clamp', 'air-probe', 'low-gauge'] as const;

describe('a job drawn on the spot', () => {
  const id = jobId('old-wharf', 'sail-loft', BAG, 'k3f9');
  const pack = jobPack('short-bag', id, shelf)!;

  test('is a pack like any other, whose differential is that of its place', () => {
    expect(checkPack(pack, machineFacts)).toEqual({ ok: true, pack });
    const [callout] = pack.callouts;
    expect(callout!.toolbag).toEqual(expect.arrayContaining(['eyes', 'hand', ...BAG]));
    expect(callout!.toolbag).toHaveLength(5);
    expect(keyOfDifferential(differentialInput(callout!))).toBe(keyOfDifferential(differentialInput(home)));
  });

  test('is the same job wherever its id is read, and another for another seed', () => {
    const again = jobPack('short-bag', id, [...shelf])!;
    expect(again).toEqual(pack);
    const others = ['a1', 'a2', 'a3', 'a4', 'a5', 'a6'].map(
      (seed) => jobPack('short-bag', jobId('old-wharf', 'sail-loft', BAG, seed), shelf)!.callouts[0]!.faults,
    );
    expect(new Set(others.map((faults) => JSON.stringify(faults))).size).toBeGreaterThan(3);
  });

  test('an attempt at it can be run again from its record', () => {
    const state = start(pack, id, 'seed');
    expect(replay(state.attempt, pack).site.callout.faults).toEqual(pack.callouts[0]!.faults);
  });

  test('its cause is drawn from the tally: a hundred draws lie within four standard deviations of it', () => {
    const count = 100;
    const drawn = Array.from({ length: count }, (_, i) => {
      const one = jobPack('closed-circuit', jobId('old-wharf', 'sail-loft', closedBag(home), `d${i}`), shelf)!;
      return Object.keys(one.callouts[0]!.faults)[0] ?? 'no-fault';
    });
    for (const [cause, of100] of Object.entries(home.tally)) {
      const share = of100 / 100;
      const found = drawn.filter((each) => each === cause).length;
      expect(Math.abs(found - count * share), cause).toBeLessThan(4 * Math.sqrt(count * share * (1 - share)) + 1);
    }
  });

  test('no id but one of a known place with an allowed bag is a job', () => {
    expect(jobPack('short-bag', jobId('old-wharf', 'nowhere', BAG, 'x'), shelf)).toBeNull();
    expect(jobPack('short-bag', jobId('old-wharf', 'sail-loft', ['pipe-clamp'], 'x'), shelf)).toBeNull();
    expect(jobPack('closed-circuit', jobId('old-wharf', 'sail-loft', BAG, 'x'), shelf)).toBeNull();
    expect(jobPack('short-bag', 'sail-loft', shelf)).toBeNull();
  });

  test('on a closed circuit nothing takes a pressure', () => {
    for (const { callout } of shippedCallouts()) {
      expect(closedBag(callout).some((each) => /gauge|manometer|link/.test(each))).toBe(false);
      expect(bagChoices(callout).length).toBeGreaterThan(3);
    }
  });
});

describe('on the radio', () => {
  const radio = makeRadio(settingAt('old-wharf', 'fish-hall-office'), 'wave');

  test('the notebook holds what the sums are made of, looks and the current', () => {
    const channels = radio.notebook.map(({ compared }) => compared.inputs[0]!.channel);
    expect(channels).toEqual(
      expect.arrayContaining([
        'suctionPressure',
        'suctionLineTemp',
        'liquidPressure',
        'liquidLineTemp',
        'compressorCurrent',
      ]),
    );
    expect(channels.filter((channel) => channel.startsWith('look:'))).toHaveLength(4);
  });

  test('nothing told is the tally; the best three are at least as good as any twenty others', () => {
    const before = beliefFrom(radio, [])[radio.truth]!;
    expect(before).toBeCloseTo(radio.setting.callout.tally[radio.truth]! / 100, 2);
    const search = bestThree(radio, 1e9);
    const best = search.next();
    if (!best.done) throw new Error('the search did not end');
    for (let i = 0; i + 2 < radio.notebook.length; i++) {
      const three = [0, 1, 2].map((k) => radio.notebook[(i + k * 3) % radio.notebook.length]!);
      if (new Set(three).size === 3)
        expect(beliefFrom(radio, three)[radio.truth]!).toBeLessThanOrEqual(best.value.belief);
    }
    expect(best.value.belief).toBeGreaterThan(before);
  });
});
