/** What the trainee's notes allow to be compared: each reading, and each sum whose inputs were read in one state. */
import type { AttemptState, Note, Saturation } from '../../attempt';
import { INPUTS, instrumentError, kindOf, TELLING_SUMS, type TellingSum } from '../quanta';
import type { Channel, JudgedState, Measured, Observation, Quantum, ValueKind } from '../types';

/** One compared value, with the notes behind it. */
export interface ReadQuantum {
  readonly quantum: Quantum;
  readonly kind: ValueKind;
  readonly state: JudgedState;
  /** SI, pressures absolute */
  readonly read: number;
  readonly notes: readonly number[];
  /** standard deviation of the reading itself */
  readonly error: number;
}

export function readQuanta(
  attempt: AttemptState,
  states: readonly JudgedState[],
  observations: readonly Observation[],
): ReadQuantum[] {
  const measured = observations.filter((each): each is Measured => each.kind === 'measured');
  const latest = new Map<string, Measured>(measured.map((each) => [`${each.channel} ${each.state}`, each]));
  const readings = [...latest.values()].map((each) => fromReading(attempt.notes[each.note], each));
  const sums = states.flatMap((state) =>
    TELLING_SUMS.flatMap((sum) =>
      fromSum(attempt.site.saturation, sum, state, (channel) => latest.get(`${channel} ${state}`) ?? null),
    ),
  );
  return [...sums, ...readings];
}

function fromReading(note: Note, { channel, state, value }: Measured): ReadQuantum {
  const quantum: Quantum = { channel };
  const error = instrumentError(quantum, note, value);
  return { quantum, kind: kindOf(quantum), state, read: value, notes: [note.index], error };
}

function fromSum(
  saturation: Saturation,
  sum: TellingSum,
  state: JudgedState,
  read: (channel: Channel) => Measured | null,
): ReadQuantum[] {
  if (state === 'standing') return [];
  const inputs = INPUTS[sum].map(read);
  if (!inputs.every((each): each is Measured => each !== null)) return [];
  const [a, b] = inputs;
  const value = valueOfSum(sum, a.value, b.value, saturation);
  if (value === null) return [];
  const quantum: Quantum = { sum };
  const error = instrumentError(quantum);
  return [{ quantum, kind: 'difference', state, read: value, notes: [a.note, b.note], error }];
}

/** From the inputs in the order of `INPUTS`; null where the pressure is beyond the saturation table. */
export function valueOfSum(sum: TellingSum, a: number, b: number, saturation: Saturation): number | null {
  switch (sum) {
    case 'superheat': {
      const dew = saturation.tDew(a);
      return dew === null ? null : b - dew;
    }
    case 'subcooling': {
      const bubble = saturation.tBubble(a);
      return bubble === null ? null : bubble - b;
    }
    case 'air-drop':
    case 'line-difference':
      return a - b;
    case 'air-rise':
    case 'approach':
      return b - a;
  }
}
