/** The committed cause, and the proof of the repair. */
import { castDraft, type Draft } from 'immer';
import { noteOf, stamp } from './notes';
import { ensure } from './refusal';
import type { AttemptState, Verification } from './state';
import type { Action } from './types';

export const MOST_CITES = 3;

export function giveVerdict(
  state: AttemptState,
  draft: Draft<AttemptState>,
  { cause, size, rival, cites }: Extract<Action, { kind: 'verdict' }>,
): void {
  const { tally } = state.site.callout;
  for (const each of [cause, rival]) ensure((tally[each] ?? 0) > 0, 'cause-not-here', each);
  ensure(cause !== rival, 'rival-is-verdict', cause);
  ensure(
    cites.length <= MOST_CITES && new Set(cites).size === cites.length,
    'out-of-range',
    `${cites.length} notes cited`,
  );
  for (const index of cites) noteOf(state, index);
  draft.verdicts.push({ cause, size, rival, cites: [...cites], notes: state.notes.length, ...stamp(state) });
  draft.undo = [];
}

/** Ends the attempt with the notes that prove the repair. */
export function closeWith(
  state: AttemptState,
  draft: Draft<AttemptState>,
  { notes }: Extract<Action, { kind: 'verified' }>,
): void {
  ensure(state.repairs.length > 0, 'nothing-repaired', 'verified');
  draft.verification = castDraft(verification(state, notes));
  draft.undo = [];
}

function verification(state: AttemptState, indices: readonly number[]): Verification {
  const notes = indices.map((index) => noteOf(state, index));
  const { to } = state.repairs.at(-1)!;
  const times = notes.map(({ time }) => time);
  return {
    notes: indices,
    ...stamp(state),
    after: notes.length > 0 && times.every((time) => time >= to),
    settled: notes.length > 0 && notes.every(({ settled, misuse }) => settled === 'settled' && misuse.length === 0),
    ran: notes.length > 0 ? Math.max(0, Math.min(...times) - restartOf(state)) : 0,
  };
}

/** When the machine last began to run: switched on, or given back after a repair. */
function restartOf({ events }: AttemptState): number {
  const runs = (i: number) => {
    const last = events.slice(0, i).findLast(({ kind }) => kind !== 'faults');
    return last === undefined || (last.kind === 'controls' && last.controls.running);
  };
  return events.findLast((_, i) => runs(i + 1) && !runs(i))?.t ?? 0;
}
