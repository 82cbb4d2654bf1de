/**
 * How hard a callout is, computed from its machine, its work order and its toolbag; nowhere is it typed in.
 *
 * - `bits`: what the readings have to bring: from the odds of the true cause on the work order to belief 0.8, in bits.
 * - `minutes`: what the best readings one after the other cost, changes of the machine's state included.
 * - `rival`: the named cause that is hardest to part from the truth: the one for which the smallest share of all that a
 *   person could read on arrival, weighed by what it is worth then, speaks for the truth by three to one.
 * - `scarcity`: minus the binary logarithm of that share: one bit more is half as many telling readings.
 * - `level`: bits + log2(1 + minutes) + scarcity / 2: much to tell, long to tell it, and little that tells it. The three
 *   were put together so that they rank callouts as the success of an imperfect reasoner does (`npm run prove`).
 */
import type { CauseId } from '../../../physics/types';
import { causeLogLikelihoods, priorOf } from '../../examiner/belief';
import { LN3 } from '../../examiner/numeric';
import type { GreedyPath, JudgedState, Posterior, ValuedCandidate } from '../../examiner/types';
import { CHANGE_MINUTES, LEAST_BITS, standpoint, valueAll } from '../../examiner/value';
import { TOLD } from '../prove';
import type { Opened } from './opened';

export interface Difficulty {
  readonly bits: number;
  readonly minutes: number;
  readonly rival: CauseId | null;
  /** share of the readings, by their worth on arrival, that part rival and truth by three to one */
  readonly telling: number;
  readonly scarcity: number;
  readonly level: number;
}

/** Below this share there is as good as no telling reading. */
const LEAST_SHARE = 1 / 64;

/** What each reading is worth on arrival, to whoever knows the work order alone. */
export function onArrival({ differential, callout, bench }: Opened): ValuedCandidate[] {
  return valueAll(standpoint(differential, callout.tally, []), bench).filter(({ bits }) => bits >= LEAST_BITS);
}

export function difficultyOf(
  opened: Opened,
  path: GreedyPath,
  twins: readonly CauseId[],
  arrival: readonly ValuedCandidate[],
): Difficulty {
  const { differential, callout } = opened;
  const prior = inGroup(priorOf(differential, callout.tally), twins);
  const bits = Math.max(0, logOdds(TOLD) - logOdds(prior));
  const minutes = minutesOf(path);
  const shares = tellingShares(opened, twins, arrival);
  const hardest = [...shares].reduce<readonly [CauseId | null, number]>((a, b) => (b[1] < a[1] ? b : a), [null, 1]);
  const scarcity = -Math.log2(Math.max(hardest[1], LEAST_SHARE));
  return {
    bits,
    minutes,
    rival: hardest[0],
    telling: hardest[1],
    scarcity,
    level: bits + Math.log2(1 + minutes) + scarcity / 2,
  };
}

/** Minutes of a path, changes of the machine's state included. */
export function minutesOf(path: GreedyPath): number {
  const states = new Set<JudgedState>(path.steps.map(({ candidate }) => candidate.state));
  return path.cost + [...states].reduce((sum, state) => sum + CHANGE_MINUTES[state], 0);
}

/** For each named rival: which share of the readings, each taken alone, favours the truth over it by three to one. */
function tellingShares(
  { differential, callout, truths, read }: Opened,
  twins: readonly CauseId[],
  arrival: readonly ValuedCandidate[],
): Map<CauseId, number> {
  const named = (Object.keys(callout.tally) as CauseId[]).filter((cause) => (callout.tally[cause] ?? 0) > 0);
  const rivals = named.filter((cause) => !twins.includes(cause));
  const told = new Map(rivals.map((cause) => [cause, 0]));
  let all = 0;
  for (const candidate of arrival) {
    const observation = read(candidate);
    if (!observation) continue;
    all += candidate.bits;
    const likelihoods = causeLogLikelihoods(differential, [observation], [...truths, ...rivals]);
    const own = Math.max(...truths.map((cause) => likelihoods.get(cause)!));
    for (const rival of rivals) {
      if (own - likelihoods.get(rival)! >= LN3) told.set(rival, told.get(rival)! + candidate.bits);
    }
  }
  return new Map([...told].map(([cause, bits]) => [cause, all > 0 ? bits / all : 0]));
}

const inGroup = (belief: Posterior, causes: readonly CauseId[]): number =>
  causes.reduce((sum, cause) => sum + (belief[cause] ?? 0), 0);

function logOdds(share: number): number {
  return Math.log2(share / (1 - Math.min(share, 1 - 1e-9)));
}
