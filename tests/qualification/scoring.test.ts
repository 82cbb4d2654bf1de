/**
 * The score against what twenty habits should earn (docs/scoring-expectations.md), and against changes that should not
 * move it: on two callouts here, on all of them with `npm run trainees` and `npm run fairness`.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import type { AttemptState } from '../../src/attempt';
import type { Differential } from '../../src/examiner';
import { APART, EXPECTED, HABITS, type HabitId, NULLS, ORDERS } from '../../src/examiner/traineeExpectations';
import { apartness, costOf, meansOf, type PARTS, type Row, rowOf } from '../../src/examiner/traineeRows';
import { playTrainee } from '../../src/examiner/trainees';
import { nudges, otherUnits, renamed, reordered, splits } from '../../src/packs/fairness/changes';
import { differentialFor, shippedCallouts } from '../support/differentials';

/** An orifice split with too much charge, a cold room of a blend whose two lines part. */
const CALLOUTS = ['theatre-wardrobe', 'cheese-cellar'];
/** Most that a changed reading, or a span told in two steps, may move the total, points. */
const MOST_NUDGE = 8;
const MOST_SPLIT = 1;
const NUDGES = 10;

const rows: Row[] = [];
const attempts: { readonly what: string; readonly state: AttemptState; readonly differential: Differential }[] = [];

beforeAll(() => {
  for (const shipped of shippedCallouts().filter(({ callout }) => CALLOUTS.includes(callout.id))) {
    const { pack, callout } = shipped;
    const job = { pack, callout: callout.id, seed: 'trainee', differential: differentialFor(shipped) };
    for (const habit of HABITS) rows.push(...[rowOf(habit, job) ?? []].flat());
    const state = playTrainee('greedy', job);
    attempts.push({ what: callout.id, state, differential: job.differential });
  }
}, 900_000);

const totals = (habit: HabitId) => rows.filter((row) => row.habit === habit).map(({ total }) => total);
/** Whoever leaves out every step weighs nothing either, which is what proves a charge: there Cause falls too. */
const ALSO_UNPROVED: HabitId = 'slapdash';
const ofOnePart = HABITS.filter((habit) => {
  const { own, against } = EXPECTED[habit];
  return against !== null && own !== null && own !== 'care' && habit !== ALSO_UNPROVED;
});

describe('habits', () => {
  it('were all played', () => {
    for (const habit of HABITS) if (habit !== 'unproved') expect(totals(habit).length, habit).toBeGreaterThan(0);
  });

  it.each(HABITS.filter((habit) => EXPECTED[habit].most === NULLS))('%s has next to nothing on each', (habit) => {
    for (const total of totals(habit)) expect(total).toBeLessThanOrEqual(NULLS);
  });

  it.each(HABITS.filter((habit) => EXPECTED[habit].least !== undefined))('%s has what good work is worth', (habit) => {
    for (const total of totals(habit)) expect(total).toBeGreaterThanOrEqual(EXPECTED[habit].least!);
  });

  it.each(ofOnePart)('%s costs five times more in its own part than in any other', (habit) => {
    const { own } = EXPECTED[habit];
    const cost = costOf(rows, habit)!;
    if (totals(habit).length === 0) return;
    expect(cost[own as (typeof PARTS)[number]]).toBeGreaterThan(0.1);
    expect(apartness(cost, own as (typeof PARTS)[number])).toBeGreaterThanOrEqual(APART);
  });

  it('a grave act caps the total and shows what it would have been', () => {
    for (const total of totals('hazardous')) expect(total).toBeLessThanOrEqual(EXPECTED.hazardous.most!);
  });

  // On two callouts only the ends of the chains are sure; the command holds all of them over all callouts.
  it.each(ORDERS)('the first of a chain stands well over its last', (...order) => {
    const [best, worst] = [order[0], order[order.length - 1]];
    expect(meansOf(rows, best).total).toBeGreaterThan(meansOf(rows, worst).total + 10);
  });
});

describe('what should not move a grade', () => {
  it.each(CALLOUTS)('one reading changed within its accuracy, on %s', (callout) => {
    const { state, differential } = attemptAt(callout);
    const moved = nudges(state, differential, `test/${callout}`, NUDGES);
    expect(moved.length).toBeGreaterThan(3);
    for (const change of moved) expect(Math.abs(change)).toBeLessThanOrEqual(MOST_NUDGE);
  });

  it.each(CALLOUTS)('one span told in two steps, on %s', (callout) => {
    const { state, differential } = attemptAt(callout);
    for (const change of splits(state, differential, 1)) expect(Math.abs(change)).toBeLessThanOrEqual(MOST_SPLIT);
  });

  it.each(CALLOUTS)('the order and the names of the causes, on %s', (callout) => {
    const { state, differential } = attemptAt(callout);
    expect(Math.abs(reordered(state, differential))).toBeLessThan(1e-9);
    expect(renamed(state, differential)).toBeLessThan(1e-9);
  });

  it.each(CALLOUTS)('the scale that sums are written in, on %s', (callout) => {
    const { state, differential } = attemptAt(callout);
    expect(otherUnits(state, differential)).toBe(0);
  });
});

function attemptAt(callout: string) {
  return attempts.find(({ what }) => what === callout)!;
}
