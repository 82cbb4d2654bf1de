/** One attempt as all parts of the grade see it: what was read, what it supported, what was true. Worked out once. */
import type { CauseId } from '../../physics/types';
import type { AttemptState, Note, Verdict, World } from '../attempt';
import type { Callout } from '../attempt/pack/types';
import { familyOf } from '../attempt/remedies';
import { machineNuisance } from '../attempt/seeds';
import { causeLogLikelihoods, priorOf, temper } from './belief';
import { type Bench, candidatesOf } from './candidates';
import { driftOf } from './drift';
import { inputsOf, neededSums } from './needed';
import { observationsOf, type Taken, type Taking, takeNotes } from './observe';
import { greedyPathOn } from './path';
import { readingAfter } from './proving';
import type { TellingSum } from './quanta';
import { type Reader, readerOf } from './readings';
import { sourceOf, statesOf } from './source';
import { twinsOf } from './twins';
import type { Candidate, Differential, GreedyPath, Observation, Posterior } from './types';

/** One way of taking the notes: as they are, or as the trainee believed them. */
export interface View {
  readonly taken: readonly Taken[];
  /** ln p(first `count` notes | cause) */
  readonly likelihoods: (count: number) => ReadonlyMap<CauseId, number>;
  /** belief from the first `count` notes */
  readonly posterior: (count: number) => Posterior;
  /** belief from all notes before the verdict */
  readonly final: Posterior;
}

export interface Case {
  readonly state: AttemptState;
  readonly differential: Differential;
  readonly bench: Bench;
  readonly candidates: readonly Candidate[];
  readonly tally: Readonly<Partial<Record<CauseId, number>>>;
  /** the tally as printed: what it does not name can be neither staked on nor named, and counts for nothing here */
  readonly prior: Posterior;
  readonly truths: readonly CauseId[];
  readonly twins: readonly CauseId[];
  readonly read: Reader;
  readonly path: GreedyPath;
  /** sums that the case needs, and what greedy path and sums together cost, minutes */
  readonly needed: readonly TellingSum[];
  readonly bestCost: number;
  readonly verdict: Verdict | null;
  /** notes before the verdict (all of them where there is none) */
  readonly judgedNotes: number;
  readonly plain: View;
  readonly followThrough: View;
  /** belief in the verdict (its twins with it where it is one of the truths' twins), the kinder of both views */
  readonly belief: number;
  /** min(1, belief / 0.8) */
  readonly support: number;
  /** the first good reading after the verdict, before a repair, and the support of the verdict with it */
  readonly after: { readonly note: number; readonly taken: readonly Taken[]; readonly support: number } | null;
}

/** Belief in the verdict that counts as fully supported. */
export const SUPPORTED = 0.8;

/** What an examiner knows of a callout whatever was done on it. */
type Known = Pick<Case, 'bench' | 'candidates' | 'read' | 'truths' | 'twins' | 'path' | 'needed' | 'bestCost'> & {
  readonly world: World;
};
const known = new WeakMap<Differential, WeakMap<Callout, Known>>();

/** Worked out once for all attempts at a callout: it costs more than all the rest of a grade. */
function knownOf(state: AttemptState, differential: Differential): Known {
  const { callout, world } = state.site;
  const callouts = known.get(differential) ?? new WeakMap<Callout, Known>();
  known.set(differential, callouts);
  const found = callouts.get(callout);
  if (found?.world === world) return found;
  const bench = benchOf(state);
  const { plant, refrigerant, conditions, faults, tally, machineSeed } = callout;
  const source = sourceOf(world);
  const setup = { plant, refrigerant, conditions, faults, nuisance: machineNuisance(machineSeed) };
  const read = readerOf(source.snapshots(setup, differential.states));
  const truths = truthsOf(faults);
  const path = greedyPathOn(differential, tally, bench, read);
  const candidates = candidatesOf(bench);
  const needed = neededSums(differential, tally, bench, read);
  const fresh = {
    world,
    bench,
    candidates,
    read,
    truths,
    twins: twinsOf(differential, bench, read, truths),
    path,
    needed,
    bestCost: costOf([...path.steps.map(({ candidate }) => candidate), ...inputsOf(needed, candidates)]),
  };
  callouts.set(callout, fresh);
  return fresh;
}

export function openCase(state: AttemptState, differential: Differential): Case {
  const { tally } = state.site.callout;
  const { world: _world, ...fixed } = knownOf(state, differential);
  const { twins } = fixed;
  const verdict = state.verdicts.at(-1) ?? null;
  const judgedNotes = verdict ? verdict.notes : state.notes.filter((note) => note.state !== 'repaired').length;
  const prior = printedPrior(differential, tally);
  const { atmosphere } = state.site;
  const drift = driftOf(state);
  const views = (notes: readonly Note[]) => {
    const view = (taking: Taking) => openView(takeNotes(notes, taking), differential, prior);
    const plain = view({ atmosphere, drift });
    const followThrough = view({ atmosphere, drift, followThrough: { gaugeAs: gaugeBelief(state) } });
    const beliefs = [plain, followThrough].map(({ final }) => (verdict ? inVerdict(final, verdict.cause, twins) : 0));
    return { plain, followThrough, belief: Math.max(...beliefs) };
  };
  const judged = state.notes.slice(0, judgedNotes);
  const { plain, followThrough, belief } = views(judged);
  const next = verdict ? readingAfter(state, verdict) : null;
  const more = next === null ? null : views([...judged, state.notes[next]]);
  return {
    ...fixed,
    state,
    differential,
    tally,
    prior,
    verdict,
    judgedNotes,
    plain,
    followThrough,
    belief,
    support: supportOf(belief),
    after: more && next !== null ? { note: next, taken: more.plain.taken, support: supportOf(more.belief) } : null,
  };
}

const supportOf = (belief: number): number => Math.min(1, belief / SUPPORTED);

function printedPrior(differential: Differential, tally: Case['tally']): Posterior {
  const named = Object.entries(priorOf(differential, tally)).filter(([cause]) => (tally[cause as CauseId] ?? 0) > 0);
  const total = named.reduce((sum, [, share]) => sum + share, 0);
  return Object.fromEntries(named.map(([cause, share]) => [cause, share / total]));
}

function openView(taken: readonly Taken[], differential: Differential, prior: Posterior): View {
  const known = new Map<number, ReadonlyMap<CauseId, number>>();
  const likelihoods = (count: number): ReadonlyMap<CauseId, number> => {
    const observations = observationsOf(taken.slice(0, count));
    const found = known.get(observations.length) ?? causeLogLikelihoods(differential, observations);
    known.set(observations.length, found);
    return found;
  };
  const posterior = (count: number) => temper(prior, likelihoods(count), 1);
  return { taken, likelihoods, posterior, final: posterior(taken.length) };
}

/** Minutes of these readings, each channel once, looks free. */
function costOf(readings: readonly Candidate[]): number {
  const once = new Map(readings.map((each) => [`${each.channel} ${each.state}`, each]));
  return [...once.values()].reduce((sum, each) => sum + (each.instrument === 'eyes' ? 0 : each.minutes), 0);
}

export function benchOf({ site }: AttemptState): Bench {
  const { plant, callout, nameplate } = site;
  return { plant, toolbag: callout.toolbag, charge: nameplate.charge, states: statesOf(plant) };
}

/** The causes behind fault keys: the family, without the sensor that it concerns. */
export function truthsOf(faults: Readonly<Record<string, number>>): CauseId[] {
  const causes = Object.keys(faults).filter((key) => faults[key] !== 0);
  return causes.length > 0 ? [...new Set(causes.map(familyOf))] : ['no-fault'];
}

export function inVerdict(belief: Posterior, cause: CauseId, twins: readonly CauseId[]): number {
  const group = twins.includes(cause) ? twins : [cause];
  return group.reduce((sum, each) => sum + (belief[each] ?? 0), 0);
}

/** Observations from the first `count` notes, under one view. */
export function observed(view: View, count: number): Observation[] {
  return observationsOf(view.taken.slice(0, count));
}

/** What the trainee's own sums show that a gauge's figure was taken for. */
function gaugeBelief(state: AttemptState): 'gauge' | 'absolute' | 'sea-level' {
  const slips = state.sums.map(({ slip }) => slip);
  if (slips.includes('gauge-for-absolute')) return 'absolute';
  return slips.includes('altitude') ? 'sea-level' : 'gauge';
}
