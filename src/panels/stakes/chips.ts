/** The chips as they lie on the table now: the draft where there is one, else what was declared last. */
import type { CauseId } from '../../../physics/types';
import type { StakeMoment } from '../../attempt';
import { CHIPS, type Chips, currentChips as declaredChips, openMoment, unsureChips } from '../../attempt/chips';
import type { Callout } from '../../attempt/pack/types';
import { causesOf } from '../kit/causes';
import type { Session } from '../session';

export { CHIPS, type Chips, unsureChips };

/** One chip more or less on a cause; the same chips where there is none to take. */
export function moved(chips: Chips, cause: CauseId, by: 1 | -1): Chips {
  const count = (chips[cause] ?? 0) + by;
  if (count < 0 || unsureChips(chips) - by < 1) return chips;
  return { ...chips, [cause]: count };
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
