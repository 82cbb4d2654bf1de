/** The small texts that hang on the drawing: the last readings, and what an instrument left in its place shows since. */
import { type AttemptState, type Note, sceneOf } from '../../attempt';
import type { PlaceTag } from '../../bench';
import type { Text } from '../../i18n';
import { read } from '../../instruments';
import { valueText } from '../../panels/kit/say';

/** Tags at once: as many as the tray shows. */
const TAGS = 3;

/** `clock` is the simulated second that is shown. */
export function tagsOf(text: Text, state: AttemptState, clock: number): Record<string, PlaceTag> {
  const tags: Record<string, PlaceTag> = {};
  for (const note of state.notes.filter(({ struck }) => !struck).slice(-TAGS)) {
    const noted = valueText(text, note);
    const now = goesOn(state, note, clock);
    tags[note.place] = {
      noted,
      shown: now === null ? noted : valueText(text, { ...note, value: now }),
      live: now !== null,
    };
  }
  return tags;
}

/**
 * What the instrument of this note shows at `clock`, if it still sits where the note was taken and time has passed
 * since; else null. It takes the note's own draw of the instrument's noise, so that it differs from the note only by
 * what the machine or the sensor did since. Never noted, never judged.
 */
function goesOn(state: AttemptState, note: Note, clock: number): number | null {
  const { instrument, quantity, channel, word, misuse } = note;
  const sits = state.connections[instrument];
  const place = state.site.place(note.place);
  const taken = state.attempt.actions[note.action]!;
  if (word !== undefined || !place || sits?.place !== place.id || clock <= taken.t + note.cost) return null;
  const ordinal = state.notes
    .slice(0, note.index)
    .filter((other) => other.instrument === instrument && other.place === place.id).length;
  return read(sceneOf(state, state.events), {
    instrument,
    place,
    quantity,
    channel,
    time: clock,
    since: sits.since,
    ordinal,
    insulated: sits.insulated,
    zeroed: !misuse.includes('not-zeroed'),
    compared: state.safety['compare-thermometers']?.taken ?? false,
  }).value;
}
