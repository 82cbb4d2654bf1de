/** A note to choose: its value and place, and from which state of the machine it is. */
import type { Note } from '../../attempt';
import { useSession } from '../session';
import { noteName, valueText } from './say';
import { beforeText } from './stale';
import { useText } from './text';

/** `timed`: among others of the same place the time tells it apart. */
export function NoteTag({ note, timed = false }: { readonly note: Note; readonly timed?: boolean }) {
  const text = useText();
  const before = beforeText(text, note, useSession().state.value);
  return (
    <>
      <strong class="number">{valueText(text, note)}</strong> <span>{noteName(text, note)}</span>
      {(timed || before) && (
        <small class="soft">
          {[...(timed ? [text.clock(note.time)] : []), ...(before ? [before] : [])].join(' · ')}
        </small>
      )}
    </>
  );
}
