/**
 * A scripted person who reasons imperfectly: makes a list of what is worth reading on arrival and takes a few of them
 * as they come, the better ones sooner; reads three times as badly as the instruments allow; moves less than the readings
 * support; and then names what leads. How often that ends well is what computed difficulty is held against.
 */
import type { CauseId } from '../../physics/types';
import { causeLogLikelihoods, priorOf, temper } from '../examiner/belief';
import type { Observation, ValuedCandidate } from '../examiner/types';
import { type Stream, stream } from '../instruments/streams';
import { type Erring, erringReader } from './erring';
import type { Subject } from './prove';

export interface Habits {
  /** readings taken before naming */
  readonly readings: number;
  /** error of a reading over what the instruments allow */
  readonly clumsy: number;
  /** share of what the readings support by which belief moves */
  readonly bold: number;
}

export const USUAL: Habits = { readings: 3, clumsy: 3, bold: 0.6 };

/** True where the cause that is named in the end is the true one, or none that can be told from it. */
export function endsWell(
  { callout, differential, truths }: Subject,
  machine: Erring,
  arrival: readonly ValuedCandidate[],
  habits: Habits = USUAL,
): boolean {
  const random = stream(`${machine.seed}/reasoner`);
  const read = erringReader(machine);
  const seen: Observation[] = [];
  const left = [...arrival];
  while (left.length > 0 && seen.length < habits.readings) {
    const [next] = left.splice(indexByWorth(left, random), 1);
    const observation = read(next);
    if (observation) seen.push(clumsily(observation, habits.clumsy, random));
  }
  const belief = temper(priorOf(differential, callout.tally), causeLogLikelihoods(differential, seen), habits.bold);
  const named = (Object.keys(belief) as CauseId[]).filter((cause) => (callout.tally[cause] ?? 0) > 0);
  const first = named.reduce((a, b) => (belief[b]! > belief[a]! ? b : a), named[0]);
  return truths.includes(first);
}

function indexByWorth(list: readonly ValuedCandidate[], { uniform }: Stream): number {
  let at = uniform() * list.reduce((sum, { bits }) => sum + bits, 0);
  const found = list.findIndex(({ bits }) => {
    at -= bits;
    return at < 0;
  });
  return found < 0 ? list.length - 1 : found;
}

/** The same reading with a further error, so that all of it together is `clumsy` times the instrument's; not known to the reader. */
function clumsily(observation: Observation, clumsy: number, { normal }: Stream): Observation {
  if (observation.kind === 'classed') return observation;
  const more = Math.sqrt(clumsy * clumsy - 1) * Math.hypot(observation.noise, observation.bias);
  return { ...observation, value: observation.value + more * normal() };
}
