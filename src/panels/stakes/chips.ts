/** The chips as they lie on the table now: the draft where there is one, else what was declared last. */
import type { CauseId } from '../../../physics/types';
import type { StakeMoment } from '../../attempt';
import { CHIPS, type Chips, currentChips as declaredChips, openMoment, unsureChips } from '../../attempt/chips';
import type { Callout } from '../../attempt/pack/types';
import { causesOf } from '../kit/causes';
import type { Session } from '../session';

export { CHIPS, type Chips, unsureChips };

/** One chip back from a cause to "not sure yet"; the same chips where there is none. */
export function takenBack(chips: Chips, cause: CauseId): Chips {
  const count = chips[cause] ?? 0;
  return count === 0 ? chips : { ...chips, [cause]: count - 1 };
}

/**
 * One chip more on a cause: from "not sure yet", or, when only its last chip lies there, from the other cause that has
 * most. So a tap always moves belief, and there is nothing to clear away first.
 */
export function given(chips: Chips, cause: CauseId): Chips {
  const more = { ...chips, [cause]: (chips[cause] ?? 0) + 1 };
  if (unsureChips(chips) > 1) return more;
  const [richest, most] = (Object.entries(chips) as [CauseId, number][])
    .filter(([other]) => other !== cause)
    .reduce(([best, top], [other, count]) => (count > top ? [other, count] : [best, top]), [cause, 0]);
  return most === 0 ? chips : { ...more, [richest]: most - 1 };
}

export function currentChips(session: Session): Chips {
  return session.drafts.value.chips ?? declaredChips(session.state.value);
}

/** True while the draft differs from what was declared. */
export function isChanged(session: Session): boolean {
  const draft = session.drafts.value.chips;
  const declared = declaredChips(session.state.value);
  return draft !== null && causesOf(session.callout).some((cause) => (draft[cause] ?? 0) !== (declared[cause] ?? 0));
}

/** Causes by chips, most first; ties in the order of the tally. */
export function ranking(chips: Chips, callout: Callout): CauseId[] {
  return causesOf(callout).sort((a, b) => (chips[b] ?? 0) - (chips[a] ?? 0));
}

/** The moment that a declaration now would count for. `verdict` is declared with the verdict, not before it. */
export function momentNow(session: Session): StakeMoment {
  const open = openMoment(session.state.value);
  return open === null || open === 'verdict' ? 'free' : open;
}
