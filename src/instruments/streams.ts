/** Seeded random numbers, one stream per purpose: drawing from one never moves another. */
import alea from 'seedrandom/lib/alea.js';

export interface Stream {
  /** in [0, 1) */
  uniform(): number;
  /** mean 0, standard deviation 1, never beyond ±6 */
  normal(): number;
}

/** The stream of this name. Names are paths by purpose: `<seed>/reading/pipe-clamp/suction-line/0`. */
export function stream(name: string): Stream {
  const next = alea(name);
  return { uniform: () => next(), normal: () => normalFrom(next) };
}

/**
 * Sum of twelve uniforms less six (Irwin–Hall): variance exactly 1, tails a little short of the normal's. Taken because
 * it needs no logarithm and so gives the same bits in every engine.
 */
function normalFrom(next: () => number): number {
  let sum = -6;
  for (let i = 0; i < 12; i += 1) sum += next();
  return sum;
}
