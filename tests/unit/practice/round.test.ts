import { describe, expect, test } from 'vitest';
import { edgesOf } from '../../../src/practice/edges';
import { twinOf } from '../../../src/practice/machine';
import {
  answersOf,
  beliefAmong,
  gradePick,
  isAnswerRight,
  makeRound,
  type Round,
  shortList,
} from '../../../src/practice/round';
import { settingAt } from '../../support/practice';

const SETTING = settingAt('old-wharf', 'fish-hall-office');
const EDGE = edgesOf(SETTING).find(({ id }) => id.includes('drier-restriction+undercharge'))!;
const rounds = Array.from({ length: 24 }, (_, i) => {
  const truth = EDGE.causes[i % 2 === 0 ? 0 : 1];
  return makeRound(SETTING, EDGE, truth, `round-${i}`);
}).filter((each): each is Round => each !== null);

describe('a round', () => {
  test('can be had for both sides', () => {
    expect(rounds.length).toBe(24);
  });

  test('is the same from the same seed, and another from another', () => {
    const again = makeRound(SETTING, EDGE, EDGE.causes[0], 'round-0')!;
    expect(again.given.map(({ value }) => value)).toEqual(rounds[0]!.given.map(({ value }) => value));
    expect(rounds[2]!.given.map(({ value }) => value)).not.toEqual(rounds[0]!.given.map(({ value }) => value));
  });

  test('what lies on the table does not settle it: the examiner is below nine to one in most rounds', () => {
    const open = rounds.filter((round) => Math.max(...Object.values(beliefAmong(round, EDGE.causes, []))) < 0.9);
    expect(open.length).toBeGreaterThan(rounds.length / 2);
  });

  test('the best reading leads the examiner to what is in the machine', () => {
    const told = rounds.filter((round) => {
      const belief = beliefAmong(round, EDGE.causes, [round.offers[0]!]);
      return belief[round.truth]! > 0.8;
    });
    expect(told.length).toBeGreaterThanOrEqual(0.9 * rounds.length);
  });

  test('no other reading is worth more than the first', () => {
    for (const { offers } of rounds) {
      const most = Math.max(...offers.map(({ bits }) => bits));
      expect(offers[0]!.bits).toBeGreaterThan(most - 0.05);
      for (const { bits, sure } of offers) {
        expect(bits).toBeLessThanOrEqual(1 + 1e-9);
        expect(sure).toBeGreaterThanOrEqual(0.5 - 1e-9);
      }
    }
  });

  test('the best reading settles, one that is worth nothing does not, and a wrong answer after the best is wrong', () => {
    const round = rounds[0]!;
    const [best] = round.offers;
    const mute = round.offers.find(({ bits }) => bits < 0.05)!;
    expect(gradePick(round, best!)).toBe('settles');
    expect(gradePick(round, mute)).toBe('nothing');
    const other = EDGE.causes.find((cause) => cause !== round.truth)!;
    expect(isAnswerRight(round, round.truth, EDGE.causes, [best!])).toBe(true);
    expect(isAnswerRight(round, other, EDGE.causes, [best!])).toBe(false);
  });

  test('the short list holds a settling reading and some that tell nothing, no reading twice', () => {
    for (const round of rounds) {
      const list = shortList(round);
      expect(list).toHaveLength(6);
      const grades = list.map((offer) => gradePick(round, offer));
      expect(grades).toContain('settles');
      expect(grades.filter((grade) => grade === 'nothing').length).toBeGreaterThanOrEqual(2);
      const channels = list.flatMap(({ compared }) => compared.inputs.map(({ channel }) => channel));
      expect(new Set(channels).size).toBe(channels.length);
    }
  });

  test('more causes to choose from always hold both sides', () => {
    const round = rounds[0]!;
    expect(answersOf(round, 3)).toHaveLength(3);
    expect(answersOf(round, 99)).toHaveLength(6);
    for (const count of [2, 3, 6, 99])
      expect(answersOf(round, count)).toEqual(expect.arrayContaining([...EDGE.causes]));
  });

  test('the healthy twin is the machine without fault and without differences of its own', () => {
    const superheat = twinOf(SETTING.callout).running!.probes.superheat.value;
    const round = rounds.find(({ given }) => given.some(({ compared }) => compared.id === 'superheat/running'));
    const shown = round?.given.find(({ compared }) => compared.id === 'superheat/running');
    if (shown) expect(shown.twin).toBeCloseTo(superheat, 1);
    expect(superheat).toBeGreaterThan(2);
  });
});
