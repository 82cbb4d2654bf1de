/** What a technician compares on a plant: the sums first, then bare readings; each with what every cause makes of it. */
import { type CauseId, unitOf } from '../../physics/types';
import { type Bench, candidatesOf } from '../examiner/candidates';
import type { Expectations } from '../examiner/explain/bands';
import { INPUTS, instrumentError, kindOf, type Moments, TELLING_SUMS } from '../examiner/quanta';
import type { Candidate, Channel, Differential, JudgedState, Quantum, ValueKind } from '../examiner/types';
import { senseOf } from '../instruments/looks';

/** One thing that can be compared: a reading, or a sum with the readings behind it. */
export interface Compared {
  /** quantum and state; the same on every machine of a plant */
  readonly id: string;
  readonly quantum: Quantum;
  readonly kind: ValueKind;
  readonly state: JudgedState;
  /** the readings that have to be taken for it */
  readonly inputs: readonly Candidate[];
  /** minutes for all of them together */
  readonly minutes: number;
}

/** Everything that this bag lets a person compare in these states, sums first. What a hand feels is left out. */
export function comparedOn(
  bench: Bench,
  differential: Differential,
  states: readonly JudgedState[] = differential.states,
): Compared[] {
  const known = new Set(differential.channels);
  const open = candidatesOf(bench).filter(
    ({ channel, state, instrument }) => states.includes(state) && instrument !== 'hand' && known.has(channel),
  );
  const sums = states
    .filter((state) => state !== 'standing')
    .flatMap((state) =>
      TELLING_SUMS.flatMap((sum): Compared[] => {
        const inputs = INPUTS[sum].map((channel) => cheapest(open, channel, state));
        return inputs.every((each): each is Candidate => each !== null) ? [compared({ sum }, state, inputs)] : [];
      }),
    );
  const single = new Map<string, Compared>();
  for (const each of open) {
    const one = compared({ channel: each.channel }, each.state, [each]);
    const other = single.get(one.id);
    if (!other || one.minutes < other.minutes) single.set(one.id, one);
  }
  return [...sums, ...single.values()];
}

function compared(quantum: Quantum, state: JudgedState, inputs: readonly Candidate[]): Compared {
  const minutes = inputs.reduce((sum, each) => sum + each.minutes, 0);
  return { id: `${quantum.sum ?? quantum.channel}/${state}`, quantum, kind: kindOf(quantum), state, inputs, minutes };
}

function cheapest(open: readonly Candidate[], channel: Channel, state: JudgedState): Candidate | null {
  const found = open.filter((each) => each.channel === channel && each.state === state);
  return found.length === 0 ? null : found.reduce((a, b) => (b.minutes < a.minutes ? b : a));
}

/** Seen, in classes, instead of measured. */
export const isLook = ({ inputs }: Compared): boolean => inputs.length === 1 && senseOf(inputs[0]!.channel) !== null;

/** Of one indoor unit among several. */
export const isOfUnit = ({ inputs }: Compared): boolean => inputs.some(({ channel }) => unitOf(channel) !== null);

/** Mean and spread under a cause, the instrument's own error in it; null where the machine has no such state. */
export function expectedOf(expectations: Expectations, cause: CauseId, one: Compared): Moments | null {
  const { quantum, state, inputs } = one;
  const first = expectations.of(cause, state, quantum, 0);
  if (!first) return null;
  const sense = quantum.sum === undefined ? senseOf(quantum.channel) : null;
  const error = sense ? sense.sd : instrumentError(quantum, inputs[0], first.mean);
  return { mean: first.mean, sd: Math.sqrt(first.sd * first.sd + error * error) };
}
