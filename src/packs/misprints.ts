/** Errors put into the sentences of a debrief on purpose, to see whether the audit finds them. */
import type { Message, MessageValue } from '../examiner/types';
import { type Stream, stream } from '../instruments/streams';

/** Two causes exchanged, or one number moved by a third; the same text for the same seed. */
export function misprinted(sentences: readonly Message[], seed: string): readonly Message[] {
  const random = stream(`${seed}/misprint`);
  const places = sentences.flatMap(({ key, values }, i) =>
    Object.keys(values).flatMap((name) => (spoilable(key, values[name]!) ? [{ i, name }] : [])),
  );
  if (places.length === 0) return sentences;
  const { i, name } = places[Math.floor(random.uniform() * places.length)];
  return sentences.map((message, at) => (at === i ? spoil(message, name, random) : message));
}

function spoilable(key: string, value: MessageValue): boolean {
  if (typeof value !== 'object' || !/^(tells\.(fits|fitsBoth|bands|seenIn)|together|next\.missed)$/.test(key))
    return false;
  return 'value' in value || value.kind === 'cause';
}

function spoil(message: Message, name: string, random: Stream): Message {
  const value = message.values[name]!;
  if (typeof value === 'object' && 'value' in value)
    return {
      ...message,
      values: { ...message.values, [name]: { ...value, value: moved(message, name, value.value, random) } },
    };
  const { cause, other } = message.values;
  if (cause && other) return { ...message, values: { ...message.values, cause: other, other: cause } };
  return { ...message, values: { ...message.values, [name]: { kind: 'cause', id: 'no-such-cause' } } };
}

/** Far enough that a reader would draw another conclusion: one and a half widths of the band, a third of a belief. */
function moved({ values }: Message, name: string, value: number, random: Stream): number {
  const sign = random.uniform() < 0.5 ? -1 : 1;
  const ends =
    name === 'low' || name === 'high'
      ? (['low', 'high'] as const)
      : name === 'from' || name === 'to'
        ? (['from', 'to'] as const)
        : null;
  if (ends) {
    const [low, high] = ends.map((end) => (values[end] as { value: number }).value);
    return value + sign * 1.5 * (high - low);
  }
  if (name === 'share' || name === 'rest') return value > 0.5 ? value - 0.34 : value + 0.34;
  return value === 0 ? sign : value * (1 + sign / 3);
}
