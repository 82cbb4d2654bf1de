/**
 * Scripted trainees: eight ways of going about any callout, from doing nothing to doing it well. They play through the
 * same actions as a person; the tests hold the score to what each of them deserves.
 */
import type { CauseId } from '../../physics/types';
import { type AttemptState, REMEDY_RULES, type StakeMoment, start, type World } from '../attempt';
import type { Pack } from '../attempt/pack/types';
import { stream } from '../instruments/streams';
import { candidatesOf, DEAD_CHANNELS } from './candidates';
import { benchOf } from './case';
import { remedyFor } from './grade';
import { PROOFS } from './parts/confirming';
import { type Habits, Hand } from './traineeHand';
import { Mind } from './traineeMind';
import type { Candidate, Differential } from './types';
import { bestNextFor } from './value';

export const TRAINEES = [
  'idle',
  'base-rate',
  'carpet',
  'careful-slow',
  'greedy',
  'gauge-for-absolute',
  'hasty',
  'first-hunch',
] as const;
export type TraineeId = (typeof TRAINEES)[number];

export interface Job {
  readonly pack: Pack;
  readonly callout: string;
  readonly seed: string;
  readonly differential: Differential;
  readonly world?: World;
}

const CAREFUL: Habits = { patient: true, gaugeAs: 'gauge' };
/** Belief at which the greedy one has enough. */
const ENOUGH = 0.9;
const MOST_READINGS = 16;

const POLICIES: Readonly<Record<TraineeId, (job: Job) => AttemptState>> = {
  idle: (job) => {
    const { hand, first, second } = arrive(job, CAREFUL);
    hand.act({ kind: 'verdict', cause: first, size: 'clear', rival: second, cites: [] });
    return hand.state;
  },
  'base-rate': (job) => {
    const { hand, first, second } = arrive(job, CAREFUL);
    hand.act({ kind: 'verdict', cause: first, size: 'clear', rival: second, cites: [] });
    const remedy = remedyFor(first);
    hand.act({ kind: 'repair', remedy, steps: REMEDY_RULES[remedy].steps, root: null });
    return hand.state;
  },
  carpet: (job) => {
    const { hand, candidates, named } = arrive(job, CAREFUL);
    for (const candidate of candidates) if (candidate.state === 'running') hand.read(candidate);
    const { uniform } = stream(`${job.seed}/without-thought`);
    const cause = named[Math.floor(uniform() * named.length)];
    const rival = named.find((each) => each !== cause)!;
    hand.act({ kind: 'verdict', cause, size: 'clear', rival, cites: [0, 1, 2] });
    const remedy = remedyFor(cause);
    hand.act({ kind: 'repair', remedy, steps: [], root: null });
    return hand.state;
  },
  'careful-slow': (job) => workThrough(job, CAREFUL),
  'gauge-for-absolute': (job) => workThrough(job, { patient: true, gaugeAs: 'absolute' }),
  hasty: (job) => workThrough(job, { patient: false, gaugeAs: 'gauge' }),
  greedy: (job) => {
    const { hand, mind, candidates } = arrive(job, CAREFUL);
    hand.takeCare();
    survey(hand, mind, candidates);
    for (const each of mind.readingsForSums()) readOnce(hand, mind, each);
    const { tally } = hand.state.site.callout;
    while (mind.sureness() < ENOUGH && hand.state.notes.length < candidates.length + MOST_READINGS) {
      const next = bestNextFor(job.differential, tally, benchOf(hand.state), mind.observations());
      if (!next || !readOnce(hand, mind, next)) break;
    }
    return conclude(hand, mind, candidates);
  },
  'first-hunch': (job) => {
    const { hand, mind, candidates } = arrive(job, CAREFUL);
    hand.takeCare();
    hand.read(candidates.find(({ channel }) => channel === 'supplyAirTemp') ?? candidates[0]);
    const [hunch, rival] = mind.ranked();
    const chips = { [hunch]: 19 };
    hand.try({ kind: 'stake', moment: 'survey', chips });
    for (const candidate of inOrder(candidates)) readOnce(hand, mind, candidate, chips);
    hand.workOut();
    hand.try({ kind: 'stake', moment: 'verdict', chips });
    hand.act({ kind: 'verdict', cause: hunch, size: mind.size(hunch), rival, cites: mind.cites(hunch, rival) });
    hand.mend(hunch, candidates);
    return hand.state;
  },
};

export function playTrainee(id: TraineeId, job: Job): AttemptState {
  return POLICIES[id](job);
}

function arrive(job: Job, habits: Habits) {
  const hand = new Hand(start(job.pack, job.callout, job.seed, job.world), habits);
  const mind = new Mind(hand, job.differential);
  const candidates = candidatesOf(benchOf(hand.state));
  const { tally } = hand.state.site.callout;
  const named = (Object.keys(tally) as CauseId[]).filter((cause) => tally[cause]! > 0);
  const [first, second] = [...named].sort((a, b) => tally[b]! - tally[a]!);
  return { hand, mind, candidates, named, first, second };
}

/** Reads what a thorough person reads, in the order of work, reasons honestly and finishes the job. */
function workThrough(job: Job, habits: Habits): AttemptState {
  const { hand, mind, candidates } = arrive(job, habits);
  hand.takeCare();
  survey(hand, mind, candidates);
  for (const candidate of inOrder(candidates)) readOnce(hand, mind, candidate);
  return conclude(hand, mind, candidates);
}

function survey(hand: Hand, mind: Mind, candidates: readonly Candidate[]): void {
  for (const each of candidates) if (each.instrument === 'eyes' && each.state === 'running') hand.read(each);
  hand.try({ kind: 'stake', moment: 'survey', chips: mind.chips() });
}

/** Air and electrics, then pipes, then hoses; the machine as found before any change of its state. */
function inOrder(candidates: readonly Candidate[]): Candidate[] {
  const rank = ({ instrument }: Candidate) =>
    instrument.endsWith('gauge') ? 3 : instrument === 'pipe-clamp' ? 2 : instrument === 'eyes' ? 0 : 1;
  const wanted = candidates.filter(({ state, channel }) => state === 'running' || DEAD_CHANNELS.includes(channel));
  const last = (each: Candidate) => (each.state === 'running' ? 0 : 1);
  return [...wanted].sort((a, b) => last(a) - last(b) || rank(a) - rank(b));
}

/** False where it could not be read. Declares the moment after the third reading on the way. */
function readOnce(hand: Hand, mind: Mind, candidate: Candidate, chips?: Partial<Record<CauseId, number>>): boolean {
  if (hand.noteOf(candidate.channel, candidate.state)) return true;
  const note = hand.read(candidate);
  if (!hand.state.stakes.some(({ moment }) => moment === 'third')) {
    hand.try({ kind: 'stake', moment: 'third' satisfies StakeMoment, chips: chips ?? mind.chips() });
  }
  return note !== null;
}

function conclude(hand: Hand, mind: Mind, candidates: readonly Candidate[]): AttemptState {
  prove(hand, mind, candidates);
  hand.workOut();
  hand.try({ kind: 'stake', moment: 'verdict', chips: mind.chips() });
  const [cause, rival] = mind.ranked();
  hand.act({ kind: 'verdict', cause, size: mind.size(cause), rival, cites: mind.cites(cause, rival) });
  hand.mend(cause, candidates);
  return hand.state;
}

/** The first act that proves the leading cause and can be done with what is at hand. */
function prove(hand: Hand, mind: Mind, candidates: readonly Candidate[]): void {
  for (const proof of PROOFS[mind.ranked()[0]] ?? []) {
    if ('steps' in proof) return;
    if ('drive' in proof) {
      hand.driveValve(candidates.find(({ channel }) => channel === 'suctionLineTemp'));
      return;
    }
    const state = 'standing' in proof ? 'standing' : null;
    const channels = 'standing' in proof ? proof.standing : proof.read;
    const wanted = channels.flatMap(
      (channel) =>
        candidates.find((each) => each.channel === channel && (state === null || each.state === state)) ?? [],
    );
    if (wanted.length === channels.length && wanted.every((each) => readOnce(hand, mind, each))) return;
  }
}
