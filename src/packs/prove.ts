/**
 * Is a callout tellable? The greedy best readings are taken on many machines of its kind: its own fault near its own
 * size, differences of its own, instruments with their errors. None lies on the examiner's grid.
 */
import { FAULTS, plantDescription } from '../../physics';
import type { CauseId, Faults, MachineSetup, Nuisance } from '../../physics/types';
import { drawNuisance, machineNuisance, REAL_WORLD } from '../attempt';
import type { Callout } from '../attempt/pack/types';
import { familyOf } from '../attempt/remedies';
import type { Bench } from '../examiner/candidates';
import { truthsOf } from '../examiner/case';
import { greedyPathOn } from '../examiner/path';
import { type Reader, readerOf } from '../examiner/readings';
import { sourceOf, statesOf } from '../examiner/source';
import { twinsOf } from '../examiner/twins';
import type { Channel, Differential, JudgedState, Observation } from '../examiner/types';
import { CHANGE_MINUTES } from '../examiner/value';
import { type Stream, stream } from '../instruments/streams';
import { type Erring, erringReader } from './erring';
import { explains } from './explains';

/** Belief that counts as told. */
export const TOLD = 0.8;
/** Sizes tried lie within this share of the callout's own. */
const SIZE_SPREAD = 0.15;

export interface Subject {
  readonly callout: Callout;
  readonly differential: Differential;
  readonly bench: Bench;
  /** the true cause and what no allowed reading tells from it on the callout's own machine */
  readonly truths: readonly CauseId[];
}

export interface Trial {
  /** belief in the truth, its twins with it */
  readonly belief: number;
  /** whether the truth explains the readings at all, however much better than the others */
  readonly explained: boolean;
  readonly leading: CauseId;
  /** minutes of the greedy path, changes of state included */
  readonly minutes: number;
  /** channels in the order in which they were read */
  readonly path: readonly Channel[];
}

export function isTold({ belief, explained }: Trial): boolean {
  return belief >= TOLD && explained;
}

/** What counts as right is judged on the callout's own machine, so that no odd one widens it. */
export function subjectOf(callout: Callout, differential: Differential): Subject {
  const source = sourceOf(REAL_WORLD);
  const plant = source.plant(callout);
  const { charge } = plant.nameplate(callout.refrigerant);
  const bench = { plant, toolbag: callout.toolbag, charge, states: statesOf(plant) };
  const own = setupOf(callout, callout.faults, machineNuisance(callout.machineSeed));
  const read = readerOf(source.snapshots(own, bench.states));
  return { callout, differential, bench, truths: twinsOf(differential, bench, read, truthsOf(callout.faults)) };
}

/** A machine of the callout's kind, in each state that it has. */
export function offGrid({ callout, bench }: Subject, index: number): Erring {
  const random = stream(`${callout.id}/off-grid/${index}`);
  const setup = setupOf(callout, nearby(callout.faults, random), drawNuisance(random));
  return { snapshots: sourceOf(REAL_WORLD).snapshots(setup, bench.states), seed: `${callout.id}/off-grid/${index}` };
}

export function tellOne(subject: Subject, machine: Erring): Trial {
  return follow(subject, erringReader(machine));
}

/** Every reading comes from one of these machines, picked at random: what is told then is not told by the readings. */
export function tellShuffled(subject: Subject, machines: readonly Erring[], seed: string): Trial {
  const { uniform } = stream(`${seed}/shuffled`);
  const readers = machines.map(erringReader);
  return follow(subject, (candidate) => readers[Math.floor(readers.length * uniform())](candidate));
}

/**
 * Callouts whose cause is neither the subject's nor taken for it: their readings should not lead to it. A machine with
 * many units has places that no other has, so it is shuffled among its own kind.
 */
export function unlike(subject: Subject, all: readonly Subject[]): Subject[] {
  const { plant } = subject.callout;
  const many = (id: Callout['plant']): boolean => plantDescription(id).units !== undefined;
  return all
    .filter(({ callout }) => (many(plant) || many(callout.plant) ? callout.plant === plant : true))
    .filter(({ callout }) => truthsOf(callout.faults).every((cause) => !subject.truths.includes(cause)));
}

function follow({ callout, differential, bench, truths }: Subject, read: Reader): Trial {
  const seen: Observation[] = [];
  const path = greedyPathOn(differential, callout.tally, bench, (candidate) => {
    const observation = read(candidate);
    if (observation) seen.push(observation);
    return observation;
  });
  const belief = path.steps.at(-1)?.posterior ?? {};
  const states = new Set<JudgedState>(path.steps.map(({ candidate }) => candidate.state));
  const causes = Object.keys(belief) as CauseId[];
  return {
    belief: truths.reduce((sum, cause) => sum + (belief[cause] ?? 0), 0),
    explained: truths.some((cause) => explains(differential, cause, seen)),
    leading: causes.reduce((a, b) => ((belief[b] ?? 0) > (belief[a] ?? 0) ? b : a), causes[0] ?? 'no-fault'),
    minutes: path.cost + [...states].reduce((sum, state) => sum + CHANGE_MINUTES[state], 0),
    path: path.steps.map(({ candidate }) => candidate.channel),
  };
}

/** The same faults, a little larger or smaller, within what the family covers. */
function nearby(faults: Faults, { uniform }: Stream): Faults {
  return Object.fromEntries(
    Object.entries(faults).map(([key, severity]) => {
      const { slight, max } = FAULTS.find(({ id }) => id === familyOf(key))!;
      const size = Math.abs(severity) * (1 + SIZE_SPREAD * (2 * uniform() - 1));
      return [key, Math.sign(severity) * Math.min(max, Math.max(slight, size))];
    }),
  );
}

function setupOf({ plant, refrigerant, conditions }: Callout, faults: Faults, nuisance: Nuisance): MachineSetup {
  return { plant, refrigerant, conditions, faults, nuisance };
}
