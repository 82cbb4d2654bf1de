/** What each scripted trainee earned on a callout, part by part, and what that says of a habit. */
import type { CauseId } from '../../physics/types';
import { type AttemptState, apply, REMEDY_RULES, replay } from '../attempt';
import { grade, remedyFor } from './grade';
import { EXPECTED, HABITS, type HabitId } from './traineeExpectations';
import { type Job, playTrainee } from './trainees';
import type { Differential, Grade, PartName } from './types';

export const PARTS: readonly PartName[] = ['cause', 'belief', 'evidence', 'working', 'repair', 'economy'];
/** Times that a random clicker goes about each callout. */
const CLICKERS = 5;
/** K between the dew and the bubble line from which the wrong one shows. */
const PARTED_LINES = 2;

export interface Row {
  readonly callout: string;
  readonly habit: HabitId;
  readonly total: number;
  /** share of the part's weight; a part that was not measured is missing */
  readonly shares: Readonly<Partial<Record<PartName, number>>>;
}

/** Null where the habit does not show: both saturation lines are one, or what was read anyway proves the cause. */
export function rowOf(habit: HabitId, job: Job): Row | null {
  const state = playTrainee(habit, job);
  if (habit === 'wrong-line' && !linesPart(state)) return null;
  const grades = gradesOf(habit, job, state);
  if (habit === 'unproved' && !lacksProof(grades[0])) return null;
  const shares: Partial<Record<PartName, number>> = {};
  for (const part of PARTS) {
    const share = mean(grades.flatMap((each) => shareOf(each, part)));
    if (!Number.isNaN(share)) shares[part] = share;
  }
  return { callout: job.callout, habit, total: mean(grades.map(({ total }) => total)), shares };
}

function gradesOf(habit: HabitId, job: Job, state: AttemptState): Grade[] {
  if (habit === 'carpet') return everyVerdict(state, job.differential);
  const again = habit === 'random-clicker' ? CLICKERS - 1 : 0;
  const others = Array.from({ length: again }, (_, i) => playTrainee(habit, { ...job, seed: `${job.seed}/${i}` }));
  return [state, ...others].map((each) => grade(each, job.differential));
}

/** Whoever names a cause without thought may hit it by luck: what counts is the mean over all that could be named. */
function everyVerdict(state: AttemptState, differential: Differential): Grade[] {
  const { attempt, site } = state;
  const verdict = attempt.actions.findIndex(({ action }) => action.kind === 'verdict');
  const read = replay({ ...attempt, actions: attempt.actions.slice(0, verdict) }, site.pack);
  const named = Object.keys(site.callout.tally) as CauseId[];
  return named.map((cause) => {
    const rival = named.find((each) => each !== cause)!;
    const said = apply(read, { kind: 'verdict', cause, size: 'clear', rival, cites: [0, 1, 2] });
    const remedy = remedyFor(cause);
    return grade(apply(said, { kind: 'repair', remedy, steps: REMEDY_RULES[remedy].steps, root: null }), differential);
  });
}

function lacksProof({ parts }: Grade): boolean {
  return parts.some(({ reasons }) => reasons.some(({ key }) => key.startsWith('reason.proof.')));
}

function linesPart({ site, notes }: AttemptState): boolean {
  const { saturation, atmosphere } = site;
  return notes.some(({ gauge, value }) => {
    const dew = gauge ? saturation.tDew(value + atmosphere) : null;
    const bubble = gauge ? saturation.tBubble(value + atmosphere) : null;
    return dew !== null && bubble !== null && dew - bubble > PARTED_LINES;
  });
}

function shareOf({ parts }: Grade, part: PartName): number[] {
  const { points, weight } = parts.find((each) => each.part === part)!;
  return points === null || weight === 0 ? [] : [points / weight];
}

export const mean = (values: readonly number[]): number =>
  values.length === 0 ? Number.NaN : values.reduce((sum, value) => sum + value, 0) / values.length;

/** Mean total and mean share of each part over the callouts on which the habit shows. */
export function meansOf(rows: readonly Row[], habit: HabitId) {
  const own = rows.filter((row) => row.habit === habit);
  const share = (part: PartName) => mean(own.flatMap(({ shares }) => shares[part] ?? []));
  return { count: own.length, total: mean(own.map(({ total }) => total)), share };
}

/** Share of each part that a habit costs against the same work without it, mean over callouts; null without such work. */
export function costOf(rows: readonly Row[], habit: HabitId): Readonly<Record<PartName, number>> | null {
  const { against } = EXPECTED[habit];
  if (against === null) return null;
  const costs = (part: PartName): number[] =>
    rows
      .filter((row) => row.habit === habit)
      .flatMap(({ callout, shares }) => {
        const without = rows.find((row) => row.habit === against && row.callout === callout)?.shares;
        const share = shares[part];
        // A part that was measured for the habit alone was whole without it.
        return without && share !== undefined ? [(without[part] ?? 1) - share] : [];
      });
  return Object.fromEntries(PARTS.map((part) => [part, mean(costs(part))])) as Record<PartName, number>;
}

/** Times more that a habit costs in its own part than in the worst of the others. */
export function apartness(cost: Readonly<Record<PartName, number>>, own: PartName): number {
  const others = PARTS.filter((part) => part !== own).map((part) => cost[part]);
  const worst = Math.max(...others.filter((each) => !Number.isNaN(each)), 0);
  return worst <= 1e-9 ? Number.POSITIVE_INFINITY : cost[own] / worst;
}

export const isHabit = (word: string): word is HabitId => (HABITS as readonly string[]).includes(word);
