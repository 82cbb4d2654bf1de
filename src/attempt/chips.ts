/** Belief in twenty chips. */
import type { CauseId } from '../../physics/types';
import type { Callout } from './pack/types';
import { ensure } from './refusal';
import type { AttemptState, Stake } from './state';
import type { StakeMoment } from './types';

export const CHIPS = 20;
/** Measured notes from which the moment after the third reading may be declared. */
export const THIRD = 3;

export type Chips = Stake['chips'];

/**
 * The tally as a stake: each cause gets the whole chips that its share of 100 is worth, what is left over stays on
 * "not sure yet" (at least one). With what is unsure spread by the tally this is the tally again.
 */
export function chipsFromTally(tally: Callout['tally']): Chips {
  const causes = Object.entries(tally) as [CauseId, number][];
  const chips = causes.map(([cause, count]) => [cause, Math.floor((count * CHIPS) / 100)] as [CauseId, number]);
  if (chips.reduce((sum, [, count]) => sum + count, 0) === CHIPS) {
    const most = chips.reduce((best, each) => (each[1] > best[1] ? each : best));
    most[1] -= 1;
  }
  return Object.fromEntries(chips.filter(([, count]) => count > 0));
}

/** Where the trainee stands: the last declared stake, else the tally. */
export function currentChips(state: AttemptState): Chips {
  return state.stakes.at(-1)?.chips ?? chipsFromTally(state.site.callout.tally);
}

/** Chips left on "not sure yet". */
export function unsureChips(chips: Chips): number {
  return CHIPS - Object.values(chips).reduce((sum, count) => sum + count, 0);
}

/** Throws `bad-chips` or `cause-not-here`. */
export function checkChips(chips: Chips, callout: Callout): void {
  for (const [cause, count] of Object.entries(chips)) {
    ensure((callout.tally[cause as CauseId] ?? 0) > 0, 'cause-not-here', cause);
    ensure(Number.isInteger(count) && count >= 0, 'bad-chips', `${cause}: ${count}`);
  }
  const unsure = unsureChips(chips);
  ensure(unsure >= 1, 'bad-chips', `${CHIPS - unsure} chips on causes, at most ${CHIPS - 1}`);
}

export function measuredNotes(state: AttemptState): number {
  return state.notes.filter(({ quantity, struck }) => !struck && quantity !== 'look' && quantity !== 'touch').length;
}

/** Throws where this moment cannot be declared now. */
export function checkMoment(state: AttemptState, moment: StakeMoment): void {
  ensure(state.verdicts.length === 0 || moment === 'free', 'moment-past', moment);
  if (moment === 'free') return;
  ensure(!state.stakes.some((stake) => stake.moment === moment), 'moment-declared', moment);
  if (moment === 'survey') ensure(measuredNotes(state) < THIRD, 'moment-past', moment);
  if (moment === 'third') ensure(measuredNotes(state) >= THIRD, 'moment-too-early', moment);
}

/** The fixed moment that is open and not declared yet, by what has been done; null where none is. */
export function openMoment(state: AttemptState): StakeMoment | null {
  if (state.verdicts.length > 0) return null;
  const declared = (moment: StakeMoment) => state.stakes.some((stake) => stake.moment === moment);
  const measured = measuredNotes(state);
  if (measured < THIRD) return declared('survey') ? null : 'survey';
  if (!declared('third')) return 'third';
  return declared('verdict') ? null : 'verdict';
}
