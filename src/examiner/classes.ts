/**
 * Seen and felt things come in classes ("a few bubbles", "warm"). How likely is the class that was noted, where the
 * model expects a value with some spread? The spread gives the share of each true class; people then take a
 * neighbouring class for it now and then.
 */
import { ln } from '../../physics/math/elementary';
import { normalCdf, sum } from './numeric';
import type { Classed } from './types';

/** Chance of taking a neighbouring class, and any other one, for the true one. Judgement, no source. */
const NEIGHBOUR = 0.06;
const FARTHER = 0.01;

/** Row `truth` of the confusion table: the chance of noting each class. Sums to 1. */
export function confusionRow(truth: number, classes: number): number[] {
  const row: number[] = Array.from({ length: classes }, (_, noted) => {
    const steps = Math.abs(noted - truth);
    return steps === 0 ? 0 : steps === 1 ? NEIGHBOUR : FARTHER;
  });
  row[truth] = 1 - sum(row);
  return row;
}

/** Chance of each class of being noted where the model expects mean ± sd. */
export function classChances(edges: readonly number[], mean: number, sd: number): number[] {
  const classes = edges.length + 1;
  const below = edges.map((edge) => (sd > 0 ? normalCdf((edge - mean) / sd) : edge > mean ? 1 : 0));
  const chances: number[] = new Array(classes).fill(0);
  for (let truth = 0; truth < classes; truth++) {
    const share = (truth < classes - 1 ? below[truth] : 1) - (truth > 0 ? below[truth - 1] : 0);
    if (share <= 0) continue;
    confusionRow(truth, classes).forEach((chance, noted) => {
      chances[noted] += share * chance;
    });
  }
  return chances;
}

export function classLogLikelihood(seen: Classed, mean: number, sd: number): number {
  const chance = classChances(seen.edges, mean, Math.sqrt(sd * sd + seen.sd * seen.sd))[seen.value];
  if (chance === undefined) throw new RangeError(`class ${seen.value} of ${seen.channel} is not among its classes`);
  return ln(Math.max(chance, 1e-6));
}
