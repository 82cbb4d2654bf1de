/** Two rows that never go away: the last three readings and the two leading causes, so that no sheet hides them. */
import type { CauseId } from '../../../physics/types';
import { noteName, shortNoteName, valueText } from '../kit/say';
import { useText } from '../kit/text';
import { useSession } from '../session';
import { currentChips } from '../stakes/chips';

export function Tray() {
  const text = useText();
  const session = useSession();
  const state = session.state.value;
  const notes = state.notes.filter((note) => !note.struck).slice(-3);
  const chips = currentChips(session);
  const leading = (Object.entries(chips) as [CauseId, number][])
    .filter(([, count]) => count > 0)
    .sort(([, a], [, b]) => b - a)
    .slice(0, 2);
  return (
    <aside class="tray" aria-label={text.t('panels.tray.title')}>
      <ul class="tray-notes">
        {notes.length === 0 && <li class="soft">{text.t('panels.tray.none')}</li>}
        {notes.map((note) => (
          <li key={note.index}>
            <strong class="number">{valueText(text, note)}</strong>{' '}
            <span class="soft tray-name">{noteName(text, note)}</span>
            <span class="soft tray-short" aria-hidden="true">
              {shortNoteName(text, note)}
            </span>
          </li>
        ))}
      </ul>
      <ul class="tray-causes" aria-label={text.t('panels.tray.leading')}>
        {leading.map(([cause, count]) => (
          <li key={cause}>
            <strong class="number">{count}</strong> <span class="first">{text.t(`names.cause.${cause}`)}</span>
          </li>
        ))}
      </ul>
    </aside>
  );
}
