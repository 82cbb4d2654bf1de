/** Every reading, with its unit and its instrument, and the trainee's own sums. */
import type { Note } from '../../attempt';
import { instrumentName, noteName, sentence, valueText } from '../kit/say';
import { useText } from '../kit/text';
import { useSession } from '../session';
import { Sums } from './Sums';
import { TakeAlong } from './TakeAlong';

export function Notebook() {
  const text = useText();
  const session = useSession();
  const { notes } = session.state.value;
  return (
    <>
      {notes.length === 0 && <p class="soft">{text.t('panels.note.empty')}</p>}
      <ol class="notes" reversed>
        {[...notes].reverse().map((note) => (
          <NoteRow key={note.index} note={note} />
        ))}
      </ol>
      <Sums />
      <TakeAlong />
    </>
  );
}

function NoteRow({ note }: { readonly note: Note }) {
  const text = useText();
  const session = useSession();
  const state = session.state.value;
  const value = valueText(text, note);
  const name = noteName(text, note);
  const before = staleness(note, state.epoch, state.repairs.length > 0);
  const twin = session.twin.value?.notes.find(({ index }) => index === note.index);
  const star = (side: Note['star']) => session.dispatch({ kind: 'star', note: note.index, side });
  return (
    <li class="note" value={note.index + 1} data-stale={before !== null} data-struck={note.struck}>
      <p class="note-head">
        <span class="first">{name}</span>
        <strong class="number">{note.struck ? <s>{value}</s> : value}</strong>
      </p>
      <p class="note-more soft">
        {[
          text.clock(note.time),
          text.t('panels.note.with', { instrument: instrumentName(text, note.instrument) }),
          text.t(`names.settled.${note.settled}`),
          ...note.misuse.map((misuse) => text.t(`names.misuse.${misuse}`)),
          ...(note.struck ? [text.t('panels.note.struck')] : []),
        ].join(' · ')}
      </p>
      {before !== null && (
        <p class="note-before">{sentence(text.t('panels.note.before', { change: text.t(`panels.note.${before}`) }))}</p>
      )}
      {twin && !note.struck && (
        <p class="note-twin">
          {text.t('panels.note.twin')}: <strong class="number">{valueText(text, twin)}</strong>
        </p>
      )}
      {!note.struck && (
        <span
          class="pair"
          role="group"
          aria-label={text.t('panels.note.label', { index: note.index + 1, place: name, value })}
        >
          {(['for', 'against'] as const).map((side) => (
            <button
              type="button"
              key={side}
              class="star"
              aria-pressed={note.star === side}
              aria-label={text.t(note.star === side ? 'panels.note.starNone' : STAR_LABEL[side])}
              onClick={() => star(note.star === side ? 'none' : side)}
            >
              <span aria-hidden="true">{note.star === side ? '★' : '☆'}</span> {text.t(`panels.note.${side}`)}
            </button>
          ))}
        </span>
      )}
    </li>
  );
}

const STAR_LABEL = { for: 'panels.note.starFor', against: 'panels.note.starAgainst' } as const;

/** What happened since the note was taken; the word stands in text, never in colour alone. */
function staleness(note: Note, epoch: number, repaired: boolean): 'beforeRepair' | 'beforeChange' | null {
  if (repaired && note.state !== 'repaired') return 'beforeRepair';
  return note.epoch < epoch ? 'beforeChange' : null;
}
