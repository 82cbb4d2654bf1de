/** How readings, pairs and days are written on the screens of practice. */
import type { CauseId } from '../../../physics/types';
import type { Text } from '../../i18n';
import { senseOf } from '../../instruments/looks';
import { amount, quantumName } from '../../panels/kit/message';
import { sentence } from '../../panels/kit/say';
import type { Compared } from '../../practice/quanta';

export function comparedName(text: Text, { quantum, state }: Compared): string {
  const reading = sentence(quantumName(text, quantum));
  return state === 'running'
    ? reading
    : text.t('practice.round.inState', { reading, state: text.t(`names.state.${state}`) });
}

/** A number with its unit, or the word of what was seen. */
export function shownValue(text: Text, one: Compared, value: number, atmosphere: number): string {
  const sense = one.quantum.sum === undefined ? senseOf(one.quantum.channel) : null;
  if (!sense) return amount(text, one.kind, value, atmosphere);
  return text.maybe(`names.sense.${sense.classes[value]?.word}`) ?? '';
}

export function causeName(text: Text, cause: CauseId): string {
  return text.t(`names.cause.${cause}`);
}

export function pairName(text: Text, [one, other]: readonly [CauseId, CauseId]): string {
  return text.t('practice.path.and', { one: sentence(causeName(text, one)), other: causeName(text, other) });
}

export function dayText(text: Text, at: number): string {
  return new Intl.DateTimeFormat(text.language, { day: 'numeric', month: 'long' }).format(at);
}
