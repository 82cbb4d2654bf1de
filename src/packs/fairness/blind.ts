/**
 * Policies that understand nothing: a fixed list of readings, stakes by the tally or all on one cause, a verdict that
 * looks at no value, citations by position, a remedy by the book. What the best of them earns is what the score gives
 * away; and the best fixed list of readings with the examiner's own reasoning behind it is what routine alone is worth.
 */
import type { CauseId } from '../../../physics/types';
import { type AttemptState, machineNuisance, REMEDY_RULES, start } from '../../attempt';
import type { Callout, Pack } from '../../attempt/pack/types';
import { USUAL_ROOT } from '../../attempt/roots';
import { benchOf, type Differential, grade, posterior, remedyFor } from '../../examiner';
import { candidatesOf } from '../../examiner/candidates';
import { truthsOf } from '../../examiner/case';
import { type Reader, readerOf } from '../../examiner/readings';
import { sourceOf } from '../../examiner/source';
import { Hand } from '../../examiner/traineeHand';
import { Mind } from '../../examiner/traineeMind';
import type { Candidate, Observation } from '../../examiner/types';
import type { Stream } from '../../instruments/streams';

export interface Job {
  readonly pack: Pack;
  readonly callout: Callout;
  readonly differential: Differential;
}

/** What makes up a blind policy; all by position, nothing by value. */
export interface Blind {
  /** ids of candidates, read in this order where the callout has them */
  readonly readings: readonly string[];
  readonly safety: boolean;
  /** which cause by frequency in the tally, 0 = the most frequent one */
  readonly names: number;
  readonly rival: number;
  /** chips on the cause that it will name, at each moment; 0 = no stake */
  readonly chips: number;
  /** places of the cited notes among all, counted from the first */
  readonly cites: readonly number[];
  readonly verifies: boolean;
  readonly steps: boolean;
}

const CAREFUL = { patient: true, gaugeAs: 'gauge' } as const;
const MOST_READINGS = 8;

export function totalOf(blind: Blind, job: Job): number {
  return grade(play(blind, job), job.differential).total;
}

function play(blind: Blind, { pack, callout }: Job): AttemptState {
  const hand = new Hand(start(pack, callout.id, 'blind'), CAREFUL);
  const candidates = candidatesOf(benchOf(hand.state));
  const { tally } = callout;
  const named = (Object.keys(tally) as CauseId[]).sort((a, b) => tally[b]! - tally[a]!);
  const cause = named[blind.names % named.length];
  const others = named.filter((each) => each !== cause);
  const stake = (moment: 'survey' | 'third' | 'verdict') => {
    if (blind.chips > 0) hand.try({ kind: 'stake', moment, chips: { [cause]: blind.chips } });
  };
  if (blind.safety) hand.takeCare();
  stake('survey');
  for (const id of blind.readings) {
    const candidate = candidates.find((each) => each.id === id);
    if (candidate) hand.read(candidate);
    if (!hand.state.stakes.some(({ moment }) => moment === 'third')) stake('third');
  }
  stake('verdict');
  const cites = [...new Set(blind.cites)].filter((note) => note < hand.state.notes.length);
  // The size is no blind choice either: the middle word is the safest.
  hand.act({ kind: 'verdict', cause, size: 'clear', rival: others[blind.rival % others.length], cites });
  const remedy = remedyFor(cause);
  const steps = blind.steps ? REMEDY_RULES[remedy].steps : [];
  hand.act({ kind: 'repair', remedy, steps, root: USUAL_ROOT[cause] });
  if (blind.verifies) hand.verify(candidates);
  return hand.state;
}

export function drawBlind({ uniform }: Stream, ids: readonly string[]): Blind {
  const upTo = (most: number) => Math.floor(uniform() * (most + 1));
  const list = (most: number) => Array.from({ length: upTo(most) }, () => ids[upTo(ids.length - 1)]);
  return {
    readings: list(MOST_READINGS),
    safety: uniform() < 0.5,
    names: upTo(3),
    rival: upTo(3),
    chips: upTo(19),
    cites: Array.from({ length: upTo(3) }, () => upTo(MOST_READINGS - 1)),
    verifies: uniform() < 0.7,
    steps: uniform() < 0.7,
  };
}

/** The same with one or two things changed. */
export function mutate(blind: Blind, random: Stream, ids: readonly string[]): Blind {
  const fresh = drawBlind(random, ids);
  const keys = Object.keys(blind) as (keyof Blind)[];
  const pick = () => keys[Math.floor(random.uniform() * keys.length)];
  const changed = new Set([pick(), pick()]);
  const readings =
    random.uniform() < 0.5 ? [...blind.readings, ...fresh.readings].slice(-MOST_READINGS) : fresh.readings;
  const from = { ...fresh, readings };
  return Object.fromEntries(keys.map((key) => [key, changed.has(key) ? from[key] : blind[key]])) as unknown as Blind;
}

/** A callout of one plant with what each of its readings would show. */
export interface Readable extends Job {
  readonly candidates: readonly Candidate[];
  readonly read: Reader;
  readonly truths: readonly CauseId[];
}

export function readable(job: Job): Readable {
  const state = start(job.pack, job.callout.id, 'routine');
  const { callout, differential } = job;
  const source = sourceOf(state.site.world);
  const { plant, refrigerant, conditions, faults } = callout;
  const setup = { plant, refrigerant, conditions, faults, nuisance: machineNuisance(callout.machineSeed) };
  const read = readerOf(source.snapshots(setup, differential.states));
  return { ...job, candidates: candidatesOf(benchOf(state)), read, truths: truthsOf(faults) };
}

/** Belief in the true cause after these readings. */
export function beliefAfter(
  { candidates, read, truths, differential, callout }: Readable,
  ids: readonly string[],
): number {
  const seen = candidates
    .filter(({ id }) => ids.includes(id))
    .flatMap((each): readonly Observation[] => {
      const found = read(each);
      return found ? [found] : [];
    });
  const all = posterior(differential, callout.tally, seen);
  return truths.reduce((sum, cause) => sum + (all[cause] ?? 0), 0);
}

/** The best list of `length` readings for these callouts, added one by one and then exchanged one by one. */
export function bestRoutine(callouts: readonly Readable[], length: number): string[] {
  const ids = [...new Set(callouts.flatMap(({ candidates }) => candidates.map(({ id }) => id)))];
  const worth = (chosen: readonly string[]) =>
    callouts.reduce((sum, each) => sum + Math.min(1, beliefAfter(each, chosen) / 0.8), 0);
  const better = (rest: readonly string[]) => {
    const open = ids.filter((id) => !rest.includes(id));
    const worths = open.map((id) => worth([...rest, id]));
    return [...rest, open[worths.indexOf(Math.max(...worths))]];
  };
  let chosen: string[] = [];
  while (chosen.length < length) chosen = better(chosen);
  for (let i = 0; i < length; i++) chosen = better(chosen.slice(1));
  return chosen;
}

/**
 * These readings and no more, then what the examiner itself makes of them and the remedy that belongs to it, with every step
 * of workmanship. Nothing is read afterwards either: whoever proves the repair has read more than the routine.
 */
export function totalOfRoutine({ pack, callout, differential }: Job, ids: readonly string[]): number {
  const hand = new Hand(start(pack, callout.id, 'routine'), CAREFUL);
  const mind = new Mind(hand, differential);
  const candidates = candidatesOf(benchOf(hand.state));
  hand.takeCare();
  for (const candidate of candidates) if (ids.includes(candidate.id)) hand.read(candidate);
  const [cause, rival] = mind.ranked();
  hand.act({ kind: 'verdict', cause, size: mind.size(cause), rival, cites: mind.cites(cause, rival) });
  hand.mend(cause);
  return grade(hand.state, differential).total;
}
