/** Every reading, with its unit and its instrument, and the trainee's own sums. */
import type { Note } from '../../attempt';
import { Hints } from '../hints/Hints';
import { instrumentName, noteName, valueText } from '../kit/say';
import { beforeText } from '../kit/stale';
import { useText } from '../kit/text';
import { useSession } from '../session';
import { PressureStrip } from '../strip/PressureStrip';
import { Sums } from './Sums';
import { TakeAlong } from './TakeAlong';

export function Notebook() {
  const text = useText();
  const session = useSession();
  const { notes } = session.state.value;
  return (
    <>
      {notes.length === 0 && <p class="soft">{text.t('panels.note.empty')}</p>}
      <Hints />
      <Sums />
      <ol class="notes" reversed>
        {[...notes].reverse().map((note) => (
          <NoteRow key={note.index} note={note} />
        ))}
      </ol>
      <Strips />
      <TakeAlong />
    </>
  );
}

/** One ladder for each place where a pressure was noted. */
function Strips() {
  const text = useText();
  const { state, callout } = useSession();
  const newest = new Map<string, Note>();
  for (const note of state.value.notes) {
    if (note.quantity === 'pressure' && !note.struck) newest.set(note.place, note);
  }
  return (
    <details>
      <summary>{text.t('panels.strip.title')}</summary>
      <div class="stack">
        <p class="soft">{text.t('panels.strip.help', { refrigerant: callout.refrigerant })}</p>
        {newest.size === 0 && <p class="soft">{text.t('panels.strip.noPressure')}</p>}
        {[...newest.values()].map((note) => (
          <PressureStrip key={note.index} note={note} />
        ))}
      </div>
    </details>
  );
}

function NoteRow({ note }: { readonly note: Note }) {
  const text = useText();
  const session = useSession();
  const state = session.state.value;
  const value = valueText(text, note);
  const name = noteName(text, note);
  const before = beforeText(text, note, state);
  const twin = session.twin.value?.notes.find(({ index }) => index === note.index);
  // What is seen or felt has nothing to settle.
  const bySense = note.settled === 'settled' && (note.instrument === 'eyes' || note.instrument === 'hand');
  // No display tells how it was used; whoever is still learning is told, and everybody once the job is closed.
  const told = session.callout.mode === 'guided' || state.verification !== null;
  return (
    <li class="note" value={note.index + 1} data-stale={before !== null} data-struck={note.struck}>
      <div class="note-head">
        <span class="first">{name}</span>
        <strong class="number">{note.struck ? <s>{value}</s> : value}</strong>
        {!note.struck && <Star note={note} name={name} value={value} />}
      </div>
      <p class="note-more soft">
        {[
          text.clock(note.time),
          instrumentName(text, note.instrument),
          ...(bySense ? [] : [text.t(`names.settled.${note.settled}`)]),
          ...(told ? note.misuse.map((misuse) => text.t(`names.misuse.${misuse}`)) : []),
          ...(note.struck ? [text.t('panels.note.struck')] : []),
        ].join(' · ')}
      </p>
      {before !== null && <p class="note-before">{before}</p>}
      {twin && !note.struck && (
        <p class="note-twin">
          {text.t('panels.note.twin')}: <strong class="number">{valueText(text, twin)}</strong>
        </p>
      )}
    </li>
  );
}

/** One tap stars, a second flips to against, a third takes the mark off. */
function Star({ note, name, value }: { readonly note: Note; readonly name: string; readonly value: string }) {
  const text = useText();
  const session = useSession();
  const next = NEXT_STAR[note.star];
  return (
    <button
      type="button"
      class="star"
      data-star={note.star}
      aria-label={[
        text.t('panels.note.label', { index: note.index + 1, place: name, value }),
        text.t(`panels.note.starIs.${note.star}`),
        text.t(`panels.note.starNext.${next}`),
      ].join('. ')}
      onClick={() => session.dispatch({ kind: 'star', note: note.index, side: next })}
    >
      <span aria-hidden="true">{STAR_SIGN[note.star]}</span>
      {note.star !== 'none' && <small aria-hidden="true">{text.t(`panels.note.${note.star}`)}</small>}
    </button>
  );
}

const NEXT_STAR = { none: 'for', for: 'against', against: 'none' } as const;
const STAR_SIGN = { none: '☆', for: '★', against: '✗' } as const;
