/**
 * The score against people whose worth is known beforehand: eight scripted trainees on every callout on a split. Who does
 * nothing, guesses by base rate or reads without thought earns next to nothing; who works carefully passes whatever
 * the time; each slip costs mainly where it belongs.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import type { CauseId } from '../../physics/types';
import { type AttemptState, apply, REMEDY_RULES, replay } from '../../src/attempt';
import { type Differential, type Grade, grade, type PartName, remedyFor } from '../../src/examiner';
import { playTrainee, type TraineeId } from '../../src/examiner/trainees';
import { differentialFor, type ShippedCallout, splitCallouts } from '../support/differentials';

/** These on every split; all of them on fewer in scoring.test.ts, and on everything with `npm run trainees`. */
const TRAINEES = [
  'idle',
  'base-rate',
  'carpet',
  'careful-slow',
  'greedy',
  'gauge-for-absolute',
  'hasty',
  'first-hunch',
] as const satisfies readonly TraineeId[];
const PARTS: readonly PartName[] = ['cause', 'belief', 'evidence', 'working', 'repair', 'economy'];
/** Where each one's habit has to cost most. */
const OWN_PART: Readonly<Partial<Record<TraineeId, PartName>>> = {
  'careful-slow': 'economy',
  'gauge-for-absolute': 'working',
  hasty: 'working',
  'first-hunch': 'belief',
};

interface Row {
  readonly callout: string;
  readonly trainee: TraineeId;
  readonly total: number;
  readonly parts: Readonly<Partial<Record<PartName, number>>>;
}

/** They earn next to nothing: below 20 on each callout. */
const NOTHING = ['idle', 'base-rate', 'carpet'] as const satisfies readonly TraineeId[];
const BETWEEN = ['gauge-for-absolute', 'hasty', 'first-hunch'] as const satisfies readonly TraineeId[];

const rows: Row[] = [];

beforeAll(() => {
  // Every second callout: `npm run trainees` plays them all.
  for (const shipped of splitCallouts().filter((_, i) => i % 2 === 0)) {
    const differential = differentialFor(shipped);
    for (const trainee of TRAINEES) rows.push(rowOf(shipped, trainee, differential));
  }
  console.log(table());
}, 900_000);

function rowOf(shipped: ShippedCallout, trainee: TraineeId, differential: Differential): Row {
  const { pack, callout } = shipped;
  const state = playTrainee(trainee, { pack, callout: callout.id, seed: `trainee/${trainee}`, differential });
  const grades = trainee === 'carpet' ? everyVerdict(state, differential) : [grade(state, differential)];
  const parts = Object.fromEntries(PARTS.map((part) => [part, mean(grades.flatMap((each) => shareOf(each, part)))]));
  return { callout: callout.id, trainee, total: mean(grades.map(({ total }) => total)), parts };
}

/** Whoever names a cause without thought may hit it by luck: what counts is the mean over all that could be named. */
function everyVerdict(state: AttemptState, differential: Differential): Grade[] {
  const { attempt, site } = state;
  const reading = attempt.actions.slice(
    0,
    attempt.actions.findIndex(({ action }) => action.kind === 'verdict'),
  );
  const read = replay({ ...attempt, actions: reading }, site.pack);
  const named = Object.keys(site.callout.tally) as CauseId[];
  return named.map((cause) => {
    const rival = named.find((each) => each !== cause)!;
    const said = apply(read, { kind: 'verdict', cause, size: 'clear', rival, cites: [0, 1, 2] });
    const remedy = remedyFor(cause);
    return grade(apply(said, { kind: 'repair', remedy, steps: REMEDY_RULES[remedy].steps, root: null }), differential);
  });
}

/** Share of a part's weight; nothing where it was not measured. */
function shareOf({ parts }: Grade, part: PartName): number[] {
  const { points, weight } = parts.find((each) => each.part === part)!;
  return points === null || weight === 0 ? [] : [points / weight];
}

const mean = (values: readonly number[]): number =>
  values.length === 0 ? Number.NaN : values.reduce((sum, value) => sum + value, 0) / values.length;
const of = (trainee: TraineeId) => rows.filter((row) => row.trainee === trainee);
const rowAt = (trainee: TraineeId, callout: string) => of(trainee).find((row) => row.callout === callout)!;
const meanTotal = (trainee: TraineeId) => mean(of(trainee).map(({ total }) => total));
const meanShare = (trainee: TraineeId, part: PartName) =>
  mean(of(trainee).flatMap(({ parts }) => (Number.isNaN(parts[part] ?? Number.NaN) ? [] : [parts[part]!])));

function table(): string {
  const callouts = [...new Set(rows.map(({ callout }) => callout))];
  const line = (name: string, cells: readonly (string | number)[]) =>
    name.padEnd(22) + cells.map((cell) => String(cell).padStart(20)).join('');
  const whole = (value: number) => (Number.isNaN(value) ? '–' : value.toFixed(0));
  return [
    line('points', TRAINEES),
    ...callouts.map((callout) =>
      line(
        callout,
        TRAINEES.map((trainee) => whole(rowAt(trainee, callout).total)),
      ),
    ),
    line(
      'mean',
      TRAINEES.map((trainee) => whole(meanTotal(trainee))),
    ),
    ...PARTS.map((part) =>
      line(
        `${part} %`,
        TRAINEES.map((trainee) => whole(100 * meanShare(trainee, part))),
      ),
    ),
  ].join('\n');
}

describe('scripted trainees on every callout on a split', () => {
  it.each(NOTHING)('%s stays below 20 on each', (trainee) => {
    for (const { callout, total } of of(trainee)) expect(total, callout).toBeLessThan(20);
  });

  it('careful and slow has at least 70 on each', () => {
    for (const { callout, total } of of('careful-slow')) expect(total, callout).toBeGreaterThanOrEqual(70);
  });

  it('greedy has at least 90 on each', () => {
    for (const { callout, total } of of('greedy')) expect(total, callout).toBeGreaterThanOrEqual(90);
  });

  it.each(BETWEEN)(
    '%s lies between on each: over those who do not work, well under the careful and the greedy',
    (trainee) => {
      for (const { callout, total } of of(trainee)) {
        for (const each of NOTHING) expect(total, callout).toBeGreaterThan(rowAt(each, callout).total + 2);
        expect(total, callout).toBeLessThan(90);
        expect(total, callout).toBeLessThan(rowAt('careful-slow', callout).total - 5);
      }
    },
  );

  it.each(Object.entries(OWN_PART) as [TraineeId, PartName][])('%s loses most in %s', (trainee, own) => {
    const lost = (part: PartName) => meanShare('greedy', part) - meanShare(trainee, part);
    for (const part of PARTS) if (part !== own) expect(lost(own), `${own} against ${part}`).toBeGreaterThan(lost(part));
  });

  // The careful one does all that these do, without the habit: what they lose against it, the habit costs.
  it.each(BETWEEN)('%s loses no part more than its own on any callout', (trainee) => {
    for (const { callout, parts } of of(trainee)) {
      const careful = rowAt('careful-slow', callout).parts;
      const lost = (part: PartName) => {
        const share = parts[part] ?? Number.NaN;
        // A part that was measured for the habit alone was whole without it.
        const whole = Number.isNaN(careful[part] ?? Number.NaN) ? 1 : careful[part]!;
        return Number.isNaN(share) || whole === 0 ? 0 : (whole - share) / whole;
      };
      const own = OWN_PART[trainee]!;
      expect(lost(own), callout).toBeGreaterThan(0.25);
      for (const part of PARTS) expect(lost(part), `${callout}: ${part}`).toBeLessThanOrEqual(lost(own) + 1e-9);
    }
  });
});
