/** A sum being made: which notes it wants, and which could go in. */
import { type Note, SUM_RULES, type SumKind } from '../../attempt';
import type { Kind } from '../../i18n';
import type { Drafts, Session } from '../session';

export type SumDraft = NonNullable<Drafts['sum']>;

/** An empty sum; an input of which there is only one note is that note. */
export function begun(kind: SumKind, session: Session): SumDraft {
  const notes = slots(kind).map((slot) => {
    const fitting = candidates(session.state.value.notes, slot);
    return slots(kind).filter((other) => other === slot).length === 1 && fitting.length === 1
      ? fitting[0]!.index
      : null;
  });
  return { kind, notes, saturation: '', answer: '' };
}

export type Slot = 'pressure' | 'temperature';

export function slots(kind: SumKind): readonly Slot[] {
  const { temperatures } = SUM_RULES[kind];
  const hot = Array.from({ length: temperatures }, (): Slot => 'temperature');
  return temperatures < 2 ? ['pressure', ...hot] : hot;
}

/** The newest note of each place and instrument that can go into this slot. */
export function candidates(notes: readonly Note[], slot: Slot): Note[] {
  const newest = new Map<string, Note>();
  for (const note of notes) {
    if (!note.struck && note.quantity === slot) newest.set(`${note.instrument}/${note.channel}/${note.place}`, note);
  }
  return [...newest.values()].sort((a, b) => b.index - a.index);
}

/** The kind of number that the answer is. */
export function answerKind(kind: SumKind): Kind {
  if (kind === 'absolute-pressure') return 'pressure';
  return kind === 'saturation-temperature' ? 'temperature' : 'difference';
}
