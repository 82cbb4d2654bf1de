/** The proof of packs: what `check` says of a good pack, of spoilt ones, and of rounds drawn from a word. */
import { describe, expect, it } from 'vitest';
import { machineFacts } from '../../src/attempt/pack/facts';
import { checkPack } from '../../src/attempt/pack/load';
import type { Callout, Pack } from '../../src/attempt/pack/types';
import type { Differential } from '../../src/examiner';
import { type PackProof, provePack } from '../../src/packs/proof';
import { proveCallout } from '../../src/packs/proof/callout';
import { open } from '../../src/packs/proof/opened';
import { rankCorrelation } from '../../src/packs/rank';
import { drawRound, NoRound, ordersOf, type RoundRequest } from '../../src/packs/round';
import { Judge, spoil } from '../../src/packs/spoil';
import { WAYS } from '../../src/packs/spoil/ways';
import { differentialFor, shippedCallouts } from '../support/differentials';

const shipped = shippedCallouts().filter(({ pack }) => pack.id === 'old-wharf');
const pack: Pack = shipped[0].pack;
const machine = ({ plant, refrigerant, conditions }: Pick<Callout, 'plant' | 'refrigerant' | 'conditions'>) =>
  JSON.stringify([plant, refrigerant, conditions]);
const known = new Map<string, Differential>();
const differentialOf = (callout: Pick<Callout, 'plant' | 'refrigerant' | 'conditions'>): Differential => {
  const key = machine(callout);
  const own = shipped.find((each) => machine(each.callout) === key)!;
  const found = known.get(key) ?? differentialFor(own);
  known.set(key, found);
  return found;
};
const calloutOf = (id: string) => pack.callouts.find((each) => each.id === id)!;
const proofOf = (callout: Callout) => proveCallout(open(callout, differentialOf(callout)));

describe('the proof of a good pack', { timeout: 120_000 }, () => {
  const proof: PackProof = provePack(pack, differentialOf);

  it('refuses nothing and names for each callout path, rival and difficulty', () => {
    expect(proof.findings.filter(({ weight }) => weight === 'refused')).toEqual([]);
    for (const { opened, telling } of proof.callouts) {
      const { path, difficulty } = telling!;
      expect(path.reached, opened.callout.id).toBe(true);
      expect(opened.callout.tally[difficulty.rival!]).toBeGreaterThan(0);
      expect(difficulty.minutes).toBeLessThanOrEqual(opened.callout.budget);
      expect(difficulty.telling).toBeGreaterThanOrEqual(0);
      expect(difficulty.telling).toBeLessThan(1);
    }
  });

  it('finds a cause that is seen at a glance easier than one that only its volts tell', () => {
    const level = (id: string) =>
      proof.callouts.find(({ opened }) => opened.callout.id === id)!.telling!.difficulty.level;
    expect(level('sail-loft')).toBeLessThan(level('boatyard-canteen'));
  });
});

describe('a callout', { timeout: 120_000 }, () => {
  it('whose bag cannot tell it is refused, and the message names the instrument that would', () => {
    const { findings } = proofOf({ ...calloutOf('boatyard-canteen'), toolbag: ['hand', 'air-probe'] });
    const said = findings.filter(({ weight }) => weight === 'refused');
    expect(said.length).toBeGreaterThan(0);
    expect(said.map(({ mend }) => mend).join(' ')).toMatch(/put [a-z-]+ into the bag/);
  });

  it('may leave two causes untold where it says so', () => {
    const bare: Callout = { ...calloutOf('boatyard-canteen'), toolbag: ['hand'] };
    const twins = proofOf(bare).findings.filter(({ rule }) => rule === 'told-apart');
    expect(twins.length).toBeGreaterThan(0);
    const rival = twins[0].why.match(/from (\S+) by three|^(\S+), which/);
    const pair = ['capacitor-weak', rival![1] ?? rival![2]] as NonNullable<Callout['deliberatePair']>;
    const marked = proofOf({ ...bare, deliberatePair: pair }).findings.filter(({ rule }) => rule === 'told-apart');
    expect(marked.length).toBe(twins.length - 1);
  });

  it('with less time than its shortest path is told how much it needs', () => {
    const [finding] = proofOf({ ...calloutOf('boatyard-canteen'), budget: 5 }).findings;
    expect(finding).toMatchObject({ callout: 'boatyard-canteen', rule: 'budget', weight: 'refused' });
    expect(finding.mend).toMatch(/at least \d+ minutes/);
  });
});

/** Three callouts are enough to be spoilt in every way, and take less time than six. */
const three: Pack = {
  ...pack,
  callouts: pack.callouts.slice(0, 3).map(({ lookAlike: _gone, ...callout }) => callout),
};

it('every way of spoiling a pack is refused with place, reason and mend; no harmless change is', {
  timeout: 300_000,
}, () => {
  const judge = new Judge(differentialOf);
  const judged = spoil([three], WAYS.length, 'test').map((each) => judge.judge(each));
  const through = judged.filter(({ way, refused, wellSaid }) => way.bad && !(refused && wellSaid));
  const bad = judged.filter(({ way }) => way.bad);
  expect(bad.length).toBeGreaterThanOrEqual(30);
  expect(through.length / bad.length, through.map(({ way }) => way.name).join(', ')).toBeLessThanOrEqual(0.05);
  const wronged = judged.filter(({ way, refused }) => !way.bad && refused);
  expect(wronged.map(({ way, said }) => `${way.name}: ${said}`)).toEqual([]);
});

describe('a round', { timeout: 300_000 }, () => {
  const shelf = { orders: ordersOf(pack.callouts), differentialOf };
  const request: RoundRequest = {
    count: 3,
    causes: ['undercharge', 'filter-dirty', 'condenser-dirty', 'no-fault'],
    plants: ['orifice-split'],
    levels: [0, 99],
    word: 'friday',
  };

  it('is the same for the same word, holds only what was asked for, and is in order', () => {
    const round = drawRound(request, shelf);
    expect(drawRound(request, shelf).pack).toEqual(round.pack);
    expect(checkPack(round.pack, machineFacts).ok).toBe(true);
    expect(round.proof.holds).toBe(true);
    for (const { plant, tally, faults } of round.pack.callouts) {
      expect(plant).toBe('orifice-split');
      expect(Object.keys(tally).every((cause) => request.causes.some((each) => each === cause))).toBe(true);
      expect(Object.values(tally).reduce((sum, count) => sum + count, 0)).toBe(100);
      const [cause = 'no-fault'] = Object.keys(faults);
      expect(tally[cause as keyof typeof tally]).toBeGreaterThan(0);
    }
  });

  it('keeps to the difficulty that was asked for', () => {
    const { proof } = drawRound({ ...request, count: 2, levels: [0, 6.5] }, shelf);
    for (const { telling } of proof.callouts) expect(telling!.difficulty.level).toBeLessThanOrEqual(6.5);
  });

  it('that cannot be drawn says what stood in the way', () => {
    expect(() => drawRound({ ...request, causes: ['solenoid-stuck-open'] }, shelf)).toThrow(NoRound);
    expect(() => drawRound({ ...request, levels: [40, 50] }, shelf)).toThrow(/0 of 3 callouts/);
  });
});

it('ranks are compared as Spearman does, ties at their mean', () => {
  expect(rankCorrelation([1, 2, 3, 4], [10, 20, 30, 40])).toBeCloseTo(1, 12);
  expect(rankCorrelation([1, 2, 3, 4], [4, 3, 2, 1])).toBeCloseTo(-1, 12);
  // worked by hand: ranks 1, 2.5, 2.5, 4 and 1, 2, 3, 4
  expect(rankCorrelation([5, 7, 7, 9], [1, 2, 3, 4])).toBeCloseTo(4.5 / Math.sqrt(4.5 * 5), 12);
});
