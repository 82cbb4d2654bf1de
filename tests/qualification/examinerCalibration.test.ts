/**
 * The examiner's honesty on the real machines: of what it holds with belief p, a share p is true; on machines that differ
 * from what it thinks it is off by little; and less to go on makes it worse. `npm run calibrate` asks the same of 25,000
 * attempts over all callouts.
 */
import { describe, expect, it } from 'vitest';
import { posterior } from '../../src/examiner';
import { Account, logScore, Paired } from '../../src/packs/calibration/account';
import { type Attempt, drawAttempt, type Strangeness, type Subject } from '../../src/packs/calibration/machines';
import { differentialFor, shippedCallouts } from '../support/differentials';

const all = shippedCallouts();
const subjects = [...new Set(all.map(({ callout }) => callout.plant))].map((plant) => {
  const shipped = all.find(({ callout }) => callout.plant === plant)!;
  return { plant, subject: { callout: shipped.callout, differential: differentialFor(shipped) } };
});
const MACHINES: Readonly<Record<string, number>> = { 'orifice-split': 400, 'inverter-split': 300 };
const FEWER = 100;

function attempts(subject: Subject, world: Strangeness, count: number): Attempt[] {
  return Array.from({ length: count }, (_, i) =>
    drawAttempt(subject, world, `honest/${subject.callout.id}/${i}`),
  ).flatMap((attempt) => attempt ?? []);
}

function believe({ callout, differential }: Subject, readings: Attempt['readings']) {
  return posterior(
    differential,
    callout.tally,
    readings.map(({ observation }) => observation),
  );
}

function accountOf(subject: Subject, drawn: readonly Attempt[]): Account {
  const account = new Account();
  for (const { truth, readings } of drawn) account.add(truth, believe(subject, readings));
  return account;
}

describe.each(subjects.map(({ plant, subject }) => [plant, subject] as const))('%s', (plant, subject) => {
  const drawn = attempts(subject, 'none', MACHINES[plant] ?? FEWER);
  const own = accountOf(subject, drawn);

  it('is not over-sure (false alarm once in ten thousand)', () => {
    expect(own.count).toBeGreaterThan(0.8 * FEWER);
    expect(own.overSure).toBeLessThan(3.72);
  });

  it('knows less without the pipe clamp', () => {
    const change = new Paired();
    for (const { truth, readings } of drawn) {
      const rest = readings.filter(({ candidate }) => candidate.instrument !== 'pipe-clamp');
      if (rest.length === readings.length) continue;
      change.add(logScore(truth, believe(subject, rest)) - logScore(truth, believe(subject, readings)));
    }
    expect(change.mean).toBeLessThan(0);
  });
});

describe.each(subjects.filter(({ plant }) => plant in MACHINES).map(({ plant, subject }) => [plant, subject] as const))(
  '%s with strange coils',
  (plant, subject) => {
    const own = accountOf(subject, attempts(subject, 'none', MACHINES[plant]));

    it.each(['coils', 'correlations'] as const)(
      'is off by at most 7 points (and the noise of the count): %s',
      (world) => {
        const strange = accountOf(subject, attempts(subject, world, MACHINES[plant]));
        for (const { count, believed, true: hits, variance } of strange.bins.filter((bin) => bin.count >= 40)) {
          expect(Math.abs(believed - hits) / count).toBeLessThan(0.07 + (3 * Math.sqrt(variance + 1)) / count);
        }
        expect(own.topOne - strange.topOne).toBeLessThan(0.1);
      },
    );
  },
);
