/** Everything that can be done now, as lines that a person may type the beginnings of: "clamp suc", "wait 5". */
import type { Text } from '../../i18n';
import { causesOf } from '../../panels/kit/causes';
import { optionName, placeName, quantityName } from '../../panels/kit/say';
import { type Session, SHEETS } from '../../panels/session';
import { currentChips, given } from '../../panels/stakes/chips';
import { toHints } from './focusSheet';

export interface Command {
  readonly id: string;
  readonly label: string;
  readonly run: () => void;
}

const WAITS = [1, 5, 15] as const;

export function commandsOf(session: Session, text: Text): Command[] {
  const readings = [...session.plant.places]
    .sort((a, b) => a.order - b.order)
    .flatMap((place) =>
      session.optionsAt(place.id).map((option): Command => {
        const parts = [optionName(text, option), placeName(text, place.id)];
        if (option.quantity === 'wetBulb') parts.push(quantityName(text, option.quantity));
        return {
          id: `read/${place.id}/${option.instrument}/${option.quantity}/${option.channel}/${option.insulated}`,
          label: parts.join(' – '),
          run() {
            session.place.value = place.id;
            session.take(option);
          },
        };
      }),
    );
  const waits = WAITS.map(
    (minutes): Command => ({
      id: `wait/${minutes}`,
      label: `${text.t('panels.machine.wait')}: ${text.t('panels.machine.waitMinutes', { minutes })}`,
      run: () => session.dispatch({ kind: 'wait', seconds: 60 * minutes }),
    }),
  );
  const chips = causesOf(session.callout).map(
    (cause): Command => ({
      id: `chip/${cause}`,
      label: text.t('panels.stakes.give', { cause: text.t(`names.cause.${cause}`) }),
      run() {
        session.drafts.value = { ...session.drafts.value, chips: given(currentChips(session), cause) };
      },
    }),
  );
  const sheets = SHEETS.map(
    (sheet): Command => ({
      id: `sheet/${sheet}`,
      label: text.t(`panels.sheet.${sheet}`),
      run() {
        session.sheet.value = sheet;
      },
    }),
  );
  const hint: Command = { id: 'hint', label: text.t('panels.hint.title'), run: () => toHints(session) };
  return [...readings, ...waits, ...chips, ...sheets, hint];
}

/** Letters without their accents, so that "valvula" finds "válvula". */
const plain = (words: string) =>
  words
    .normalize('NFD')
    .replace(/\p{Diacritic}/gu, '')
    .toLocaleLowerCase();

/** Every typed word must begin some word of the label; labels whose words come in the typed order stand first. */
export function matching(commands: readonly Command[], typed: string, most: number): Command[] {
  const wanted = plain(typed).split(/\s+/).filter(Boolean);
  if (wanted.length === 0) return [];
  return commands
    .map((command, index) => ({ command, index, rank: rank(plain(command.label).split(/[^\p{L}\p{N}]+/u), wanted) }))
    .filter(({ rank: found }) => found !== null)
    .sort((a, b) => a.rank! - b.rank! || a.index - b.index)
    .slice(0, most)
    .map(({ command }) => command);
}

function rank(words: readonly string[], wanted: readonly string[]): number | null {
  let outOfOrder = 0;
  let last = -1;
  for (const want of wanted) {
    const at = words.findIndex((word) => word.startsWith(want));
    if (at < 0) return null;
    if (at < last) outOfOrder += 1;
    last = at;
  }
  return 100 * outOfOrder + words.length;
}
