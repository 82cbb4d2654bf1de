/** Small helpers on the notebook. */
import { ensure } from './refusal';
import type { AttemptState } from './state';
import type { Note } from './types';

/** The note of this number; ActionRefused where there is none or it was taken back. */
export function noteOf({ notes }: Pick<AttemptState, 'notes'>, index: number): Note {
  const note = notes[index];
  ensure(note !== undefined, 'no-such-note', index);
  ensure(!note.struck, 'struck-note', index);
  return note;
}

/** When and as which action something happens now. */
export function stamp({ clock, attempt }: Pick<AttemptState, 'clock' | 'attempt'>): { time: number; action: number } {
  return { time: clock, action: attempt.actions.length };
}
