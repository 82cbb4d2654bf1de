/**
 * How far a person is on each edge: folded from the list of rounds, which is all that is kept. Reviews are scheduled
 * by a model of forgetting (ts-fsrs, without its random spread, so that the same list always gives the same days).
 */
import { type Card, createEmptyCard, fsrs, type Grade, Rating } from 'ts-fsrs';
import type { CauseId } from '../../physics/types';
import type { PickGrade } from './round';

export const STAGES = ['contrast', 'completion', 'solo', 'mixed'] as const;
export type Stage = (typeof STAGES)[number];
export type RoundWay = Stage | 'quarrel';

/** One round that was played to its end. */
export interface RoundDone {
  readonly kind: 'round';
  /** milliseconds since 1970 */
  readonly at: number;
  readonly edge: string;
  readonly way: RoundWay;
  /** the side that was in the machine; null for a contrast that was read */
  readonly truth: CauseId | null;
  /** how telling the chosen reading was; null where none had to be chosen */
  readonly pick: PickGrade | null;
  readonly right: boolean;
  readonly hint: boolean;
}

/** What helps in a round. Each step takes one thing away. */
export interface Supports {
  /** what a reading is laid beside */
  readonly beside: 'twin' | 'plate' | 'nothing';
  readonly sums: 'given' | 'own';
  /** causes to choose from; null = all that the work order names */
  readonly causes: 3 | 6 | null;
  /** only a few places are offered, or every one */
  readonly places: 'few' | 'all';
}

/** One support fades a step, the strongest last. */
export const SUPPORT_STEPS: readonly Supports[] = [
  { beside: 'twin', sums: 'given', causes: 3, places: 'few' },
  { beside: 'plate', sums: 'given', causes: 3, places: 'few' },
  { beside: 'plate', sums: 'given', causes: 6, places: 'few' },
  { beside: 'plate', sums: 'given', causes: 6, places: 'all' },
  { beside: 'plate', sums: 'own', causes: 6, places: 'all' },
  { beside: 'nothing', sums: 'own', causes: 6, places: 'all' },
  { beside: 'nothing', sums: 'own', causes: null, places: 'all' },
];

/** Misses one after the other before a support comes back. */
const MISSES = 2;

export interface Progress {
  readonly edge: string;
  readonly stage: Stage;
  /** step of `SUPPORT_STEPS` */
  readonly level: number;
  readonly misses: number;
  /** sides of the pair that were told in this stage */
  readonly sides: readonly CauseId[];
  /** the side that the last round had; the next one takes the other */
  readonly lastTruth: CauseId | null;
  /** rounds so far, and how many of them were told */
  readonly rounds: number;
  readonly told: number;
  /** milliseconds since 1970; null before the completion of both sides */
  readonly due: number | null;
  readonly card: Card | null;
}

const scheduler = fsrs({ enable_fuzz: false, enable_short_term: false });

export function newProgress(edge: string): Progress {
  return {
    edge,
    stage: 'contrast',
    level: 0,
    misses: 0,
    sides: [],
    lastTruth: null,
    rounds: 0,
    told: 0,
    due: null,
    card: null,
  };
}

/** A round is told if the cause was, by a reading that says something, without a hint. */
export function isTold({ right, pick, hint }: RoundDone): boolean {
  return right && pick !== 'nothing' && !hint;
}

/** What the schedule hears of a review: a hint or a miss is forgotten, a reading that only helps is hard. */
export function ratingOf(done: RoundDone): Grade {
  if (!isTold(done)) return Rating.Again;
  return done.pick === 'helps' ? Rating.Hard : Rating.Good;
}

/** The progress after one more round of its edge. */
export function afterRound(before: Progress, done: RoundDone): Progress {
  if (done.way === 'contrast') return before.stage === 'contrast' ? { ...before, stage: 'completion' } : before;
  const told = isTold(done);
  const counted = {
    ...before,
    lastTruth: done.truth,
    rounds: before.rounds + 1,
    told: before.told + Number(told),
  };
  if (done.way === 'quarrel') return before.card ? scheduled(counted, before.card, done) : counted;
  const faded = withSupports(counted, told, done.way !== 'completion');
  if (!told || done.truth === null || done.way !== before.stage) return faded;
  const sides = [...new Set([...before.sides, done.truth])];
  if (sides.length < 2) return { ...faded, sides };
  const next = STAGES[STAGES.indexOf(before.stage) + 1];
  if (!next) return { ...faded, sides };
  const moved = { ...faded, stage: next, sides: [] };
  return before.stage === 'completion' ? scheduled(moved, createEmptyCard(new Date(done.at)), done) : moved;
}

/** A support goes with each round told alone, and comes back after two misses. */
function withSupports(one: Progress, told: boolean, alone: boolean): Progress {
  if (told) return { ...one, misses: 0, level: alone ? Math.min(one.level + 1, SUPPORT_STEPS.length - 1) : one.level };
  const misses = one.misses + 1;
  return misses < MISSES ? { ...one, misses } : { ...one, misses: 0, level: Math.max(0, one.level - 1) };
}

function scheduled(one: Progress, card: Card, done: RoundDone): Progress {
  const next = scheduler.next(card, new Date(done.at), ratingOf(done)).card;
  return { ...one, card: next, due: next.due.getTime() };
}

/** The state of every edge that was touched. */
export function progressOf(rounds: readonly RoundDone[]): ReadonlyMap<string, Progress> {
  const found = new Map<string, Progress>();
  for (const done of rounds) found.set(done.edge, afterRound(found.get(done.edge) ?? newProgress(done.edge), done));
  return found;
}

/** Edges whose review is due, the longest overdue first. */
export function dueAt(progress: ReadonlyMap<string, Progress>, now: number): Progress[] {
  return [...progress.values()].filter(({ due }) => due !== null && due <= now).sort((a, b) => a.due! - b.due!);
}

/** The side that a next round should have: both sides together, then by turns. */
export function nextTruth({ lastTruth, sides }: Progress, causes: readonly [CauseId, CauseId], even: boolean): CauseId {
  const open = causes.filter((cause) => !sides.includes(cause));
  if (open.length === 1) return open[0]!;
  // Strict turns would give the answer away.
  const other = causes.find((cause) => cause !== lastTruth)!;
  return lastTruth === null ? causes[even ? 0 : 1] : even ? other : lastTruth;
}
