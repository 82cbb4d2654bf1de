/** What a person had in mind: predictions before a reading, reasons with a verdict, a look back. Kept, never scored. */
import type { Draft } from 'immer';
import { noteOf, stamp } from './notes';
import { inBag } from './reading';
import { ensure } from './refusal';
import type { AttemptState } from './state';
import type { Action } from './types';

export function takeChalk(
  state: AttemptState,
  draft: Draft<AttemptState>,
  { instrument, place, quantity, cause, expect }: Extract<Action, { kind: 'chalk' }>,
): void {
  const { site } = state;
  ensure(site.place(place) !== undefined, 'unknown-place', place);
  ensure(inBag(state, instrument), 'not-in-toolbag', instrument);
  ensure((site.callout.tally[cause] ?? 0) > 0, 'cause-not-here', cause);
  const { action } = stamp(state);
  draft.chalks.push({ instrument, place, quantity, cause, expect, note: state.notes.length, action });
}

export function giveBecause(
  state: AttemptState,
  draft: Draft<AttemptState>,
  { shows, rulesOut }: Extract<Action, { kind: 'because' }>,
): void {
  ensure(state.verdicts.length > 0, 'no-verdict', 'because');
  for (const index of [shows, rulesOut]) noteOf(state, index);
  const { action } = stamp(state);
  draft.becauses.push({ verdict: state.verdicts.length - 1, shows, rulesOut, action });
  draft.undo = [];
}

export function lookBack(
  state: AttemptState,
  draft: Draft<AttemptState>,
  { forVerdict, forRival, missing }: Extract<Action, { kind: 'reflect' }>,
): void {
  ensure(state.verdicts.length > 0, 'no-verdict', 'reflect');
  for (const index of [...forVerdict, ...forRival]) noteOf(state, index);
  const twice = forVerdict.find((index) => forRival.includes(index));
  ensure(twice === undefined, 'note-on-both-sides', `note ${twice}`);
  const { action } = stamp(state);
  const sorted = { forVerdict: [...forVerdict], forRival: [...forRival] };
  draft.reflections.push({ verdict: state.verdicts.length - 1, ...sorted, missing, action });
  draft.undo = [];
}
