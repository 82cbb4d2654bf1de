/**
 * Every shipped callout can be told: greedy best readings on machines of its kind off the examiner's grid, with all
 * families of the plant and no fault as rivals, reach belief 0.8 in the truth on nine of ten (one more may miss, since few
 * are asked here; `npm run prove -- --machines 200` asks more). With every reading taken from some other callout's machine
 * they do not. Told = believed, and the readings lie where that cause puts them:
 * belief alone only says which of all causes is the least bad.
 */
import { describe, expect, it } from 'vitest';
import { plantDescription } from '../../physics';
import { isTold, offGrid, type Subject, subjectOf, tellOne, tellShuffled, unlike } from '../../src/packs/prove';
import { differentialFor, isFirst, type ShippedCallout, shippedCallouts } from '../support/differentials';

const MACHINES = 8;
/** of other machines than splits, and of those with many units, which take longer */
const FEWER = 4;
const FEW = 2;
/** of the packs that came later, of one circuit and of many units */
const LATER = [2, 1] as const;

function machinesOf(shipped: ShippedCallout): number {
  const { plant } = shipped.callout;
  const many = plantDescription(plant).units !== undefined;
  if (!isFirst(shipped)) return many ? LATER[1] : LATER[0];
  if (many) return FEW;
  return plant.endsWith('-split') ? MACHINES : FEWER;
}
const SHUFFLED = 2;

const cases = shippedCallouts().map((shipped) => ({
  subject: subjectOf(shipped.callout, differentialFor(shipped)),
  count: machinesOf(shipped),
}));
const shelf = cases.map(({ subject }) => subject);
const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
const minutesAt = (minutes: readonly number[], share: number) =>
  [...minutes].sort((a, b) => a - b)[Math.floor(share * minutes.length)];

describe.each(cases.map((each) => [each.subject.callout.id, each] as const))('%s', (_id, { subject, count }) => {
  it(`is told on nine of ten of ${count} machines, within half its time`, { timeout: 300_000 }, () => {
    const trials = Array.from({ length: count }, (_, i) => tellOne(subject, offGrid(subject, i)));
    const hits = trials.filter(isTold).length;
    const told = hits / count;
    const missed = trials.filter((trial) => !isTold(trial)).map(({ leading }) => leading);
    const minutes = trials.map((trial) => trial.minutes);
    const { id, budget } = subject.callout;
    const ninth = minutesAt(minutes, 0.9);
    console.log(
      `${id}: told ${percent(told)}, half within ${minutesAt(minutes, 0.5).toFixed(0)} min, nine of ten ${ninth.toFixed(0)}`,
    );
    expect(hits, `missed for ${missed.join(', ')}`).toBeGreaterThanOrEqual(0.9 * count - 1);
    expect(ninth).toBeLessThanOrEqual(budget / 2);
  });
});

it('no cause is told from readings shuffled between callouts', { timeout: 300_000 }, () => {
  const some = shelf.filter((_, i) => i % 2 === 0);
  const machines = new Map<Subject, ReturnType<typeof offGrid>[]>(
    some.map((subject) => [subject, Array.from({ length: SHUFFLED }, (_, i) => offGrid(subject, i))]),
  );
  const shares = some.map((subject) => {
    const others = unlike(subject, some);
    const trials = Array.from({ length: SHUFFLED }, (_, i) =>
      tellShuffled(
        subject,
        others.map((other) => machines.get(other)![i]),
        `${subject.callout.id}/${i}`,
      ),
    );
    const told = trials.filter(isTold).length / SHUFFLED;
    console.log(`${subject.callout.id}: told from shuffled readings ${percent(told)}`);
    return told;
  });
  const all = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  console.log(`told from shuffled readings: ${percent(all)}`);
  expect(all).toBeLessThanOrEqual(0.05);
});
