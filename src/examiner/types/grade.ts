/** The grade of an attempt. */
import type { CauseId } from '../../../physics/types';
import type { GreedyPath, NotJudged, Posterior } from './belief';
import type { Message } from './message';

export type PartName = 'cause' | 'belief' | 'evidence' | 'working' | 'repair' | 'economy';

export interface PartScore {
  readonly part: PartName;
  /** points that this part can give in this attempt: the pack's weight, and its share of what was not measured */
  readonly weight: number;
  /** null = not measured (its weight is shared out over the measured ones) */
  readonly points: number | null;
  /** reasons as message keys with computed values */
  readonly reasons: readonly Message[];
}

export interface TrailStep {
  readonly note: number;
  /** the examiner's belief after this note */
  readonly posterior: Posterior;
  /** KL of the belief after from the belief before, bits: what the reading moved */
  readonly bits: number;
  /** null when the note was judged */
  readonly notJudged: NotJudged | null;
}

/** One more reading for a verdict that is right but not proven yet. */
export interface ProveIt {
  /** points that it could have brought at the verdict */
  readonly open: number;
  /** points that the one taken did bring */
  readonly won: number;
  /** the reading that was spent on it; null = none yet */
  readonly note: number | null;
}

export interface Grade {
  /** 0…100 after the cap */
  readonly total: number;
  readonly uncapped: number;
  readonly cap: 40 | 70 | 100;
  /** false when the last hint was opened: a study, no score */
  readonly scored: boolean;
  readonly parts: readonly PartScore[];
  readonly hazards: { readonly met: number; readonly handled: number };
  /** the examiner's belief from all readings judged, before the verdict */
  readonly posterior: Posterior;
  /** the same if the trainee's own recorded slip were no slip (follow-through) */
  readonly followThrough: Posterior;
  /** 1 right or an information twin, 0.8 the remedy would mend it, 0 else */
  readonly right: 0 | 0.8 | 1;
  /** min(1, belief in the verdict / 0.8) */
  readonly support: number;
  /** causes that no allowed reading tells from the truth by 3 to 1 on this machine, the truth included */
  readonly twins: readonly CauseId[];
  /** null where there is nothing to prove: wrong, not argued, or an exam */
  readonly proveIt: ProveIt | null;
  /** steps of hints that were opened */
  readonly hints: number;
  readonly trail: readonly TrailStep[];
  readonly path: GreedyPath;
  readonly used: number;
}
