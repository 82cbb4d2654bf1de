/** The greedy best path on one machine: always the reading with the highest expected gain a minute, in order of work. */
import type { CauseId } from '../../physics/types';
import type { Bench } from './candidates';
import type { Reader } from './readings';
import type { Differential, GreedyPath, Observation, ValuedCandidate } from './types';
import { bestOf, type Standpoint, standpoint, valueAll } from './value';

/** Belief at which the path ends: a little more than the 0.8 that counts as well supported. */
export const ENOUGH = 0.9;
const LONGEST = 20;

export interface PathOptions {
  readonly enough?: number;
  readonly from?: readonly Observation[];
}

export function greedyPathOn(
  differential: Differential,
  tally: Readonly<Partial<Record<CauseId, number>>>,
  bench: Bench,
  read: Reader,
  { enough = ENOUGH, from = [] }: PathOptions = {},
): GreedyPath {
  const steps: GreedyPath['steps'][number][] = [];
  const silent = new Set<string>();
  let point = standpoint(differential, tally, from);
  let cost = 0;
  while (steps.length < LONGEST && surest(point) < enough) {
    const next = nextAudible(point, bench, silent);
    if (!next) break;
    const observation = read(next);
    if (!observation) {
      silent.add(next.id);
      continue;
    }
    point = standpoint(differential, tally, [...point.observations, observation]);
    if (next.instrument !== 'eyes') cost += next.minutes;
    const { bits, cost: _cost, first: _first, ...candidate } = next;
    steps.push({ candidate, bits, posterior: point.posterior });
  }
  return { steps, cost, reached: surest(point) >= enough };
}

function nextAudible(point: Standpoint, bench: Bench, silent: ReadonlySet<string>): ValuedCandidate | null {
  return bestOf(valueAll(point, bench).filter(({ id }) => !silent.has(id)));
}

function surest({ posterior }: Standpoint): number {
  return Math.max(...Object.values(posterior));
}
