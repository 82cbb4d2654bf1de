/** Differences between machines of one kind that are no fault, drawn evenly over their range for the differential. */
import type { Nuisance } from '../../physics/types';
import { NUISANCE_SPREAD } from '../attempt/seeds';
import { stream } from '../instruments/streams';

export const NUISANCE_NAMES = Object.keys(NUISANCE_SPREAD) as (keyof Nuisance)[];

/** Standard deviations from the middle at the end of an even spread. */
export const EVEN = Math.sqrt(3);

/** Multipliers for scores in standard deviations, in the order of `NUISANCE_NAMES` (the spread is two of them). */
export function nuisanceAt(scores: readonly number[]): Nuisance {
  const entries = NUISANCE_NAMES.map((name, i) => [name, 1 + 0.5 * NUISANCE_SPREAD[name] * scores[i]]);
  return Object.fromEntries(entries) as unknown as Nuisance;
}

/**
 * Latin hypercube of `draws` × `factors` scores in standard deviations: every factor is met evenly over ±1.7, so that
 * few draws tell its effect well.
 */
export function latinScores(seed: string, draws: number, factors: number): number[][] {
  const { uniform } = stream(`${seed}/latin`);
  const columns = Array.from({ length: factors }, () => {
    const strata = Array.from({ length: draws }, (_, i) => i);
    for (let i = draws - 1; i > 0; i--) {
      const j = Math.floor(uniform() * (i + 1));
      [strata[i], strata[j]] = [strata[j], strata[i]];
    }
    return strata.map((stratum) => EVEN * ((2 * (stratum + uniform())) / draws - 1));
  });
  return Array.from({ length: draws }, (_, i) => columns.map((column) => column[i]));
}
