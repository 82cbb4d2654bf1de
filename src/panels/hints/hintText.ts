import type { Hint } from '../../examiner/types';
import type { Text } from '../../i18n';
import { messageText } from '../kit/message';
import { sentence } from '../kit/say';

/** The sentences of a hint, in the reader's words and units. */
export function hintText(text: Text, hint: Hint, atmosphere: number): string[] {
  return hint.lines.map((line) => sentence(messageText(text, line, atmosphere)));
}
