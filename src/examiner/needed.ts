/**
 * Which sums a callout needs: those that still tell about its cause once the survey (what can be seen) is done, of what
 * the bag allows. A case that the eyes settle needs none.
 */
import type { CauseId } from '../../physics/types';
import type { Bench } from './candidates';
import { candidatesOf } from './candidates';
import { informationOfMeasured, type Outcome } from './information';
import { componentMoments, INPUTS, instrumentError, TELLING_SUMS, type TellingSum } from './quanta';
import type { Reader } from './readings';
import type { Candidate, Differential } from './types';
import { componentsFor, type Standpoint, standpoint } from './value';

const MOST_SUMS = 3;
const LEAST_BITS = 0.15;

export function neededSums(
  differential: Differential,
  tally: Readonly<Partial<Record<CauseId, number>>>,
  bench: Bench,
  read: Reader,
): TellingSum[] {
  const candidates = candidatesOf(bench).filter(({ state }) => state === 'running');
  const survey = candidates.filter(({ instrument }) => instrument === 'eyes').flatMap((each) => read(each) ?? []);
  const readable = new Set(candidates.filter((each) => read(each) !== null).map(({ channel }) => channel));
  const point = standpoint(differential, tally, survey);
  return TELLING_SUMS.filter((sum) => INPUTS[sum].every((channel) => readable.has(channel)))
    .map((sum) => ({ sum, bits: bitsOfSum(point, sum) }))
    .filter(({ bits }) => bits >= LEAST_BITS)
    .sort((a, b) => b.bits - a.bits)
    .slice(0, MOST_SUMS)
    .map(({ sum }) => sum);
}

/** The readings that the needed sums are made of. */
export function inputsOf(sums: readonly TellingSum[], candidates: readonly Candidate[]): Candidate[] {
  const channels = [...new Set(sums.flatMap((sum) => INPUTS[sum]))];
  return channels.flatMap((channel) => {
    const found = candidates.filter((each) => each.channel === channel && each.state === 'running');
    return found.length === 0 ? [] : [found.reduce((a, b) => (b.minutes < a.minutes ? b : a))];
  });
}

function bitsOfSum({ differential, causes, fits }: Standpoint, sum: TellingSum): number {
  const silent = new Array<number>(causes.length).fill(0);
  const outcomes: Outcome[] = [];
  for (const { fit, cause, weight } of fits) {
    silent[cause] += weight;
    for (const { component, share } of componentsFor(fit, 'running')) {
      const moments = componentMoments(differential, component, { sum }, instrumentError({ sum }));
      silent[cause] -= weight * share;
      outcomes.push({ cause, weight: weight * share, ...moments });
    }
  }
  return informationOfMeasured(
    outcomes,
    silent.map((rest) => Math.max(0, rest)),
  );
}
