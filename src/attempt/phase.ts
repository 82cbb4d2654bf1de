/** Where in the order of work an attempt is: what was done last, never a lock. */
import { measuredNotes } from './chips';
import type { AttemptState } from './state';
import type { Phase } from './types';

export function phaseOf(state: AttemptState): Phase {
  if (state.verification) return 'debrief';
  if (state.repairs.length > 0) return 'verify';
  if (state.verdicts.length > 0) return 'repair';
  if (state.stakes.some(({ moment }) => moment === 'verdict')) return 'verdict';
  if (measuredNotes(state) > 0) return 'measure';
  if (Object.keys(state.safety).length > 0) return 'make-safe';
  return state.attempt.actions.length > 0 ? 'survey' : 'work-order';
}
