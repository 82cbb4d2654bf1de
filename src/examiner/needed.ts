/** Which sums a callout needs: those that tell most about its causes before anything is read, of what the bag allows. */
import type { CauseId } from '../../physics/types';
import { causesOf, priorOf } from './belief';
import { informationOfMeasured, type Outcome } from './information';
import { componentMoments, INPUTS, instrumentError, TELLING_SUMS, type TellingSum } from './quanta';
import type { Candidate, Differential } from './types';

const MOST_SUMS = 3;
const LEAST_BITS = 0.1;

export function neededSums(
  differential: Differential,
  tally: Readonly<Partial<Record<CauseId, number>>>,
  candidates: readonly Candidate[],
): TellingSum[] {
  const readable = new Set(candidates.filter(({ state }) => state === 'running').map(({ channel }) => channel));
  return TELLING_SUMS.filter((sum) => INPUTS[sum].every((channel) => readable.has(channel)))
    .map((sum) => ({ sum, bits: bitsOfSum(differential, tally, sum) }))
    .filter(({ bits }) => bits >= LEAST_BITS)
    .sort((a, b) => b.bits - a.bits)
    .slice(0, MOST_SUMS)
    .map(({ sum }) => sum);
}

function bitsOfSum(
  differential: Differential,
  tally: Readonly<Partial<Record<CauseId, number>>>,
  sum: TellingSum,
): number {
  const prior = priorOf(differential, tally);
  const causes = causesOf(differential);
  const silent = new Array<number>(causes.length).fill(0);
  const outcomes: Outcome[] = [];
  for (const node of differential.nodes) {
    const cause = causes.indexOf(node.cause);
    const belief = prior[node.cause]! * node.weight;
    silent[cause] += belief;
    for (const component of node.states.running ?? []) {
      const moments = componentMoments(differential, component, { sum }, instrumentError({ sum }));
      const weight = belief * component.weight;
      silent[cause] -= weight;
      outcomes.push({ cause, weight, ...moments });
    }
  }
  return informationOfMeasured(
    outcomes,
    silent.map((rest) => Math.max(0, rest)),
  );
}
