/** The value that a worked hint compares: a bare reading, or the sum that the trade thinks in. */
import type { CauseId } from '../../../physics/types';
import type { Saturation } from '../../attempt';
import { type Expectations, separation } from '../explain/bands';
import { valueOfSum } from '../explain/quanta';
import { INPUTS, instrumentError, kindOf, TELLING_SUMS } from '../quanta';
import type { Candidate, Channel, JudgedState, Message, Quantum, ValueKind } from '../types';

/** A sum replaces the bare reading unless it parts the two clearly worse. */
const SUM_WORTH = 0.75;

export interface Shown {
  readonly quantum: Quantum;
  readonly kind: ValueKind;
  readonly state: JudgedState;
  /** SI, pressures absolute */
  readonly value: number;
  /** standard deviation of the reading itself */
  readonly error: number;
}

/** Gives a channel's value, or null where it is not known. */
export type ValueReader = (channel: Channel) => number | null;

export function shownFor(
  open: Candidate,
  value: number,
  read: ValueReader,
  saturation: Saturation,
  expectations: Expectations,
  pair: readonly [CauseId, CauseId],
): Shown {
  const quantum = { channel: open.channel };
  const bare: Shown = {
    quantum,
    kind: kindOf(quantum),
    state: open.state,
    value,
    error: instrumentError(quantum, open, value),
  };
  if (open.state === 'standing') return bare;
  const apart = (shown: Shown) => apartOf(expectations, shown, pair);
  const sums = TELLING_SUMS.filter((sum) => INPUTS[sum].includes(open.channel)).flatMap((sum): Shown[] => {
    const [a, b] = INPUTS[sum].map(read);
    const worked = a === null || b === null ? null : valueOfSum(sum, a, b, saturation);
    if (worked === null) return [];
    return [
      { quantum: { sum }, kind: 'difference', state: open.state, value: worked, error: instrumentError({ sum }) },
    ];
  });
  const best = sums.sort((x, y) => apart(y) - apart(x))[0];
  return best && apart(best) >= SUM_WORTH * apart(bare) ? best : bare;
}

function apartOf(expectations: Expectations, shown: Shown, [a, b]: readonly [CauseId, CauseId]): number {
  const x = expectations.of(a, shown.state, shown.quantum, shown.error);
  const y = expectations.of(b, shown.state, shown.quantum, shown.error);
  return x && y ? separation(x, y) : 0;
}

/** How a superheat or subcooling comes about: from pressure to saturation, then the pipe. */
export function stepsOf({ quantum: { sum }, state }: Shown, read: ValueReader, saturation: Saturation): Message[] {
  if (state === 'standing' || (sum !== 'superheat' && sum !== 'subcooling')) return [];
  const [pressure, pipe] = INPUTS[sum].map(read);
  if (pressure === null || pipe === null) return [];
  const line = sum === 'superheat' ? saturation.tDew(pressure) : saturation.tBubble(pressure);
  if (line === null) return [];
  return [
    {
      key: sum === 'superheat' ? 'hint.worked.dew' : 'hint.worked.bubble',
      values: { pressure: { kind: 'pressure', value: pressure }, saturation: { kind: 'temperature', value: line } },
    },
    { key: 'hint.worked.pipe', values: { pipe: { kind: 'temperature', value: pipe } } },
  ];
}
