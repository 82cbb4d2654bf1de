/**
 * Hints are recorded, not stored: what one says is worked out by the examiner from the record up to it. Three steps a
 * callout, each only after an own act; none in an exam, none once the verdict is given.
 */
import type { Draft } from 'immer';
import { stamp } from './notes';
import { ActionRefused, type RefusalCode } from './refusal';
import type { AttemptState } from './state';
import type { Action, ActionKind, HintLevel } from './types';

/** The last step shows the worked answer: from there the callout is a study. */
export const WORKED_HINT: HintLevel = 3;

/** What counts as an own act: it moves the work on. Stars, marks and taking back do not. */
const OWN_ACTS: readonly ActionKind[] = ['look', 'read', 'wait', 'control', 'safety', 'sum', 'stake'];

/** The step that comes next; after the last one every further hint is worked too. */
export function nextHint({ hints }: Pick<AttemptState, 'hints'>): HintLevel {
  return Math.min(hints.length + 1, WORKED_HINT) as HintLevel;
}

/** Why no hint can be had now, or null. */
export function hintRefusal({ site, verdicts, hints, attempt }: AttemptState): RefusalCode | null {
  if (site.callout.mode === 'exam' || verdicts.length > 0) return 'no-hint-now';
  const since = attempt.actions.slice((hints.at(-1)?.action ?? -1) + 1);
  return since.some(({ action }) => OWN_ACTS.includes(action.kind)) ? null : 'hint-too-soon';
}

export function takeHint(
  state: AttemptState,
  draft: Draft<AttemptState>,
  { level }: Extract<Action, { kind: 'hint' }>,
): void {
  const refused = hintRefusal(state);
  if (refused) throw new ActionRefused(refused, `hint ${level}`);
  if (level !== nextHint(state)) throw new ActionRefused('hint-too-soon', `hint ${level}`);
  draft.hints.push({ level, ...stamp(state) });
  draft.undo = [];
}
