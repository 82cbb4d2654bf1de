/** Causes that no allowed reading tells apart on one machine by 3 to 1: whoever names either is right. */
import type { CauseId } from '../../physics/types';
import { causeLogLikelihoods } from './belief';
import { type Bench, candidatesOf } from './candidates';
import { LN3 } from './numeric';
import type { Reader } from './readings';
import type { Differential, Observation } from './types';

/** Every allowed reading on that machine, free of instrument error. */
export function everyReading(bench: Bench, read: Reader): Observation[] {
  return candidatesOf(bench).flatMap((candidate) => read(candidate) ?? []);
}

/** The truths first, then whatever explains every allowed reading at least a third as well as the best of them. */
export function twinsOf(
  differential: Differential,
  bench: Bench,
  read: Reader,
  truths: readonly CauseId[],
): readonly CauseId[] {
  const likelihoods = causeLogLikelihoods(differential, everyReading(bench, read));
  const best = Math.max(...truths.map((cause) => likelihoods.get(cause) ?? -Infinity));
  const twins = [...likelihoods].filter(([cause, value]) => !truths.includes(cause) && value > best - LN3);
  return [...truths, ...twins.map(([cause]) => cause)];
}
