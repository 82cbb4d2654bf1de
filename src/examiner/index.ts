/** The examiner: what readings support, what they are worth, what an attempt earned and why. */

import type { Attempt, HintLevel } from '../attempt';
import { type AttemptState, REAL_WORLD, replay, type World } from '../attempt';
import type { Callout, Pack } from '../attempt/pack/types';
import { benchOf } from './case';
import { computeDifferentialFrom } from './differential';
import { driftOf } from './drift';
import { type Judged, judge } from './explain/debrief';
import { grade } from './grade';
import { hintFor } from './hints';
import { type DifferentialOptions, differentialKey } from './key';
import { observationsOf, takeNotes } from './observe';
import { greedyPathOn, type PathOptions } from './path';
import type { Reader } from './readings';
import { sourceOf } from './source';
import type {
  Debrief,
  Differential,
  DifferentialInput,
  DifferentialProgress,
  Grade,
  GreedyPath,
  Hint,
  Observation,
  ProveIt,
  ValuedCandidate,
} from './types';
import { bestNextFor } from './value';

export { causeLogLikelihoods, posterior, priorOf } from './belief';
export { type Bench, candidatesOf } from './candidates';
export { decodeDifferential, encodeDifferential, type PackedDifferential } from './compact';
export type { Judged } from './explain/debrief';
export { remedyFor } from './grade';
export { type Reader, readerOf } from './readings';
export { twinsOf } from './twins';
export type * from './types';
export { benchOf, grade, hintFor, judge };

/** Every channel under every rival, for one machine in one weather; seconds of work, see `client.ts` for a worker. */
export function computeDifferential(
  input: DifferentialInput,
  onProgress?: (progress: DifferentialProgress) => void,
  options?: DifferentialOptions,
  world: World = REAL_WORLD,
): Differential {
  return computeDifferentialFrom(input, sourceOf(world), onProgress, options);
}

/** Name under which a differential is cached and shipped: changes with all that it depends on. */
export function keyOfDifferential(input: DifferentialInput, world: World = REAL_WORLD): string {
  return differentialKey(input, sourceOf(world));
}

/** What the notes of an attempt tell the examiner, those that it does not judge left out. */
export function observationsIn(state: AttemptState): Observation[] {
  return observationsOf(takeNotes(state.notes, { atmosphere: state.site.atmosphere, drift: driftOf(state) }));
}

/** The best next reading after these notes, inside the order of work; null where nothing open is worth it. */
export function bestNext(state: AttemptState, differential: Differential): ValuedCandidate | null {
  return bestNextFor(differential, state.site.callout.tally, benchOf(state), observationsIn(state));
}

/** The greedy best path on a machine that `read` reads. */
export function greedyPath(
  state: AttemptState,
  differential: Differential,
  read: Reader,
  options?: PathOptions,
): GreedyPath {
  return greedyPathOn(differential, state.site.callout.tally, benchOf(state), read, options);
}

/** What the hint of this step says after these actions. */
export function hintIn(attempt: Attempt, pack: Pack, differential: Differential, level: HintLevel): Hint {
  return hintFor(replay(attempt, pack), differential, level);
}

/** What one more reading could bring, or brought, to the last verdict; null where there is nothing to prove. */
export function proofIn(attempt: Attempt, pack: Pack, differential: Differential): ProveIt | null {
  return gradeAttempt(attempt, pack, differential).proveIt;
}

/** Runs an attempt again from its record and grades it. */
export function gradeAttempt(attempt: Attempt, pack: Pack, differential: Differential, world?: World): Grade {
  return grade(replay(attempt, pack, world), differential);
}

/** The same, with everything that the debrief shows. */
export function judgeAttempt(attempt: Attempt, pack: Pack, differential: Differential, world?: World): Judged {
  return judge(replay(attempt, pack, world), differential);
}

export function debrief(attempt: Attempt, pack: Pack, differential: Differential, world?: World): Debrief {
  return judgeAttempt(attempt, pack, differential, world).debrief;
}

/** The part of a callout that its differential depends on. */
export function differentialInput({ plant, refrigerant, conditions }: Callout): DifferentialInput {
  return { plant, refrigerant, conditions };
}
