/**
 * Scripted trainees: ways of going about any callout, from doing nothing to doing it well, most of them good work with one
 * bad habit. They play through the same actions as a person; the score is held to what each of them deserves
 * (`traineeExpectations.ts`).
 */
import type { CauseId } from '../../physics/types';
import { type AttemptState, REMEDY_RULES, type StakeMoment, start, type World } from '../attempt';
import type { Pack } from '../attempt/pack/types';
import { USUAL_ROOT } from '../attempt/roots';
import { stream } from '../instruments/streams';
import { candidatesOf, DEAD_CHANNELS } from './candidates';
import { benchOf } from './case';
import { remedyFor } from './grade';
import { needsAirFirst } from './order';
import { PROOFS } from './parts/confirming';
import { clickAtRandom } from './traineeClicks';
import type { HabitId } from './traineeExpectations';
import { type Habits, Hand } from './traineeHand';
import { Mind } from './traineeMind';
import type { Candidate, Differential } from './types';
import { bestNextFor } from './value';

export type { HabitId as TraineeId } from './traineeExpectations';

export interface Job {
  readonly pack: Pack;
  readonly callout: string;
  readonly seed: string;
  readonly differential: Differential;
  readonly world?: World;
}

/** How a trainee goes about it; what is not named is done well. */
interface Manner extends Habits {
  readonly sums: boolean;
  /** what it declares: its belief, nothing ever, or everything on whatever leads */
  readonly stakes: 'honest' | 'none' | 'all-in';
  readonly cites: 'best' | 'first';
  readonly proves: boolean;
  readonly mends: 'well' | 'without-steps' | 'tops-up';
  readonly verifies: boolean;
  readonly vents: boolean;
}

const WELL: Manner = {
  patient: true,
  gaugeAs: 'gauge',
  lines: 'right',
  sums: true,
  stakes: 'honest',
  cites: 'best',
  proves: true,
  mends: 'well',
  verifies: true,
  vents: false,
};
/** Belief at which the greedy one has enough. */
const ENOUGH = 0.9;
const MOST_READINGS = 16;

type Policy = (job: Job) => AttemptState;
const thorough =
  (manner: Partial<Manner>): Policy =>
  (job) =>
    workThrough(new Trainee(job, { ...WELL, ...manner }));

const POLICIES: Readonly<Record<HabitId, Policy>> = {
  greedy: (job) => workGreedily(new Trainee(job, WELL)),
  'hoses-first': (job) => {
    const trainee = new Trainee(job, WELL);
    trainee.hand.takeCare();
    const hoses = trainee.candidates.filter((each) => needsAirFirst(each) && each.state === 'running');
    for (const each of hoses) trainee.readOnce(each);
    return workGreedily(trainee);
  },
  'careful-slow': thorough({}),
  unproved: (job) => workGreedily(new Trainee(job, { ...WELL, proves: false })),
  unverified: thorough({ verifies: false }),
  slapdash: thorough({ mends: 'without-steps' }),
  'band-aid': thorough({ mends: 'tops-up' }),
  'gauge-for-absolute': thorough({ gaugeAs: 'absolute' }),
  'wrong-line': thorough({ lines: 'swapped' }),
  'no-sums': thorough({ sums: false }),
  hasty: thorough({ patient: false }),
  unmoved: thorough({ stakes: 'none' }),
  overbets: thorough({ stakes: 'all-in' }),
  'cites-blindly': thorough({ cites: 'first' }),
  hazardous: thorough({ vents: true }),
  'first-hunch': (job) => {
    const trainee = new Trainee(job, WELL);
    const { hand, mind, candidates } = trainee;
    hand.takeCare();
    hand.read(candidates.find(({ channel }) => channel === 'supplyAirTemp') ?? candidates[0]);
    const [hunch, rival] = mind.ranked();
    trainee.fixed = { [hunch]: 19 };
    trainee.stake('survey');
    for (const candidate of inOrder(candidates)) trainee.readOnce(candidate);
    hand.workOut();
    trainee.stake('verdict');
    return trainee.finish(hunch, rival);
  },
  carpet: (job) => {
    const { hand, candidates, named } = new Trainee(job, WELL);
    for (const candidate of candidates) if (candidate.state === 'running') hand.read(candidate);
    const { uniform } = stream(`${job.seed}/without-thought`);
    const cause = named[Math.floor(uniform() * named.length)];
    const rival = named.find((each) => each !== cause)!;
    hand.act({ kind: 'verdict', cause, size: 'clear', rival, cites: [0, 1, 2] });
    hand.act({ kind: 'repair', remedy: remedyFor(cause), steps: [], root: null });
    return hand.state;
  },
  'base-rate': (job) => {
    const { hand, named } = new Trainee(job, WELL);
    hand.act({ kind: 'verdict', cause: named[0], size: 'clear', rival: named[1], cites: [] });
    const remedy = remedyFor(named[0]);
    hand.act({ kind: 'repair', remedy, steps: REMEDY_RULES[remedy].steps, root: null });
    return hand.state;
  },
  'random-clicker': (job) => {
    const { hand, candidates, named } = new Trainee(job, WELL);
    clickAtRandom(hand, candidates, named, `${job.seed}/clicks`);
    return hand.state;
  },
  idle: (job) => {
    const { hand, named } = new Trainee(job, WELL);
    hand.act({ kind: 'verdict', cause: named[0], size: 'clear', rival: named[1], cites: [] });
    return hand.state;
  },
};

export function playTrainee(id: HabitId, job: Job): AttemptState {
  return POLICIES[id](job);
}

/** Reads what a thorough person reads, in the order of work, reasons honestly and finishes the job. */
function workThrough(trainee: Trainee): AttemptState {
  trainee.hand.takeCare();
  trainee.survey();
  for (const candidate of inOrder(trainee.candidates)) trainee.readOnce(candidate);
  return trainee.conclude();
}

/** Reads what tells most a minute until that is enough. */
function workGreedily(trainee: Trainee): AttemptState {
  const { hand, mind, candidates, job } = trainee;
  hand.takeCare();
  trainee.survey();
  for (const each of inOrder(mind.readingsForSums())) trainee.readOnce(each);
  const { tally } = hand.state.site.callout;
  while (mind.sureness() < ENOUGH && hand.state.notes.length < candidates.length + MOST_READINGS) {
    const next = bestNextFor(job.differential, tally, benchOf(hand.state), mind.observations());
    if (!next || !trainee.readOnce(next)) break;
  }
  return trainee.conclude();
}

/** Air and electrics, then pipes, then hoses; the machine as found before any change of its state. */
function inOrder(candidates: readonly Candidate[]): Candidate[] {
  const rank = ({ instrument }: Candidate) =>
    instrument.endsWith('gauge') ? 3 : instrument === 'pipe-clamp' ? 2 : instrument === 'eyes' ? 0 : 1;
  const wanted = candidates.filter(({ state, channel }) => state === 'running' || DEAD_CHANNELS.includes(channel));
  const last = (each: Candidate) => (each.state === 'running' ? 0 : 1);
  return [...wanted].sort((a, b) => last(a) - last(b) || rank(a) - rank(b));
}

class Trainee {
  readonly hand: Hand;
  readonly mind: Mind;
  readonly candidates: readonly Candidate[];
  /** causes that the work order names, what comes most often first */
  readonly named: readonly CauseId[];
  /** chips that it declares whatever it reads */
  fixed: Readonly<Partial<Record<CauseId, number>>> | null = null;

  constructor(
    readonly job: Job,
    readonly manner: Manner,
  ) {
    this.hand = new Hand(start(job.pack, job.callout, job.seed, job.world), manner);
    this.mind = new Mind(this.hand, job.differential);
    this.candidates = candidatesOf(benchOf(this.hand.state));
    const { tally } = this.hand.state.site.callout;
    const named = (Object.keys(tally) as CauseId[]).filter((cause) => tally[cause]! > 0);
    this.named = named.sort((a, b) => tally[b]! - tally[a]!);
  }

  survey(): void {
    for (const each of this.candidates) {
      if (each.instrument === 'eyes' && each.state === 'running') this.hand.read(each);
    }
    this.stake('survey');
  }

  stake(moment: StakeMoment): void {
    const { stakes } = this.manner;
    if (stakes === 'none') return;
    const leading = stakes === 'all-in' ? { [this.mind.ranked()[0]]: 19 } : null;
    this.hand.try({ kind: 'stake', moment, chips: this.fixed ?? leading ?? this.mind.chips() });
  }

  /** False where it could not be read. Declares the moment after the third reading on the way. */
  readOnce(candidate: Candidate): boolean {
    const { hand } = this;
    if (hand.noteOf(candidate.channel, candidate.state)) return true;
    const note = hand.read(candidate);
    if (!hand.state.stakes.some(({ moment }) => moment === 'third')) this.stake('third');
    return note !== null;
  }

  conclude(): AttemptState {
    if (this.manner.proves) this.prove();
    if (this.manner.sums) this.hand.workOut();
    this.stake('verdict');
    const [cause, rival] = this.mind.ranked();
    return this.finish(cause, rival);
  }

  /** Verdict, repair and proof of the repair. */
  finish(cause: CauseId, rival: CauseId): AttemptState {
    const { hand, mind, manner } = this;
    const cites = manner.cites === 'first' ? [0, 1, 2] : mind.cites(cause, rival);
    if (manner.vents) hand.act({ kind: 'hazard', act: 'vent-refrigerant' });
    hand.act({ kind: 'verdict', cause, size: mind.size(cause), rival, cites });
    if (manner.mends === 'well') hand.mend(cause);
    else {
      const topsUp = manner.mends === 'tops-up';
      const remedy = topsUp ? 'top-up-only' : remedyFor(cause);
      const steps = topsUp ? REMEDY_RULES[remedy].steps : [];
      hand.act({ kind: 'repair', remedy, steps, root: topsUp ? null : USUAL_ROOT[cause] });
    }
    if (!manner.verifies) return hand.state;
    // The hasty one has its hurry before the verdict: a proof read too early is another slip, and Repair's own.
    const calm = new Hand(hand.state, { ...manner, patient: true });
    calm.verify(this.candidates);
    return calm.state;
  }

  /** The first act that proves the leading cause and can be done with what is at hand. */
  private prove(): void {
    for (const proof of PROOFS[this.mind.ranked()[0]] ?? []) {
      if ('steps' in proof) return;
      if ('drive' in proof) {
        this.hand.driveValve(this.candidates.find(({ channel }) => channel === 'suctionLineTemp'));
        return;
      }
      const state = 'standing' in proof ? 'standing' : null;
      const channels = 'standing' in proof ? proof.standing : proof.read;
      const wanted = channels.flatMap(
        (channel) =>
          this.candidates.find((each) => each.channel === channel && (state === null || each.state === state)) ?? [],
      );
      if (wanted.length === channels.length && wanted.every((each) => this.readOnce(each))) return;
    }
  }
}
