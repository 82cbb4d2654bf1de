/**
 * Prove it: outside exams a right verdict that the readings do not carry yet, or that its proof is missing for, opens
 * one more reading of the trainee's choice before the repair. What that reading adds counts for Cause, and for Repair
 * as far as Repair hangs on the support; nothing is ever taken away by it. It opens only for a verdict that was argued:
 * a lucky guess does not learn from the offer that it was lucky, and wins nothing by it.
 */
import type { AttemptState, Verdict } from '../attempt';
import type { Case } from './case';
import { log2 } from './numeric';

/** What the readings must have made of the verdict: more likely than not, and twice as likely as the tally had it. */
const LIKELIER_THAN_NOT = 0.5;
const SPEAKS = 1;

export interface Proving {
  /** the verdict is one that may be proved */
  readonly open: boolean;
  /** the reading that was spent on it; null where none was */
  readonly note: number | null;
  /** support of the verdict with that reading; as at the verdict without it */
  readonly support: number;
}

/**
 * The first reading after the verdict and before anything is repaired that had settled and sat right. One that was
 * taken back is spent too: it was seen.
 */
export function readingAfter({ notes, repairs, site }: AttemptState, verdict: Verdict): number | null {
  if (site.callout.mode === 'exam') return null;
  const repaired = repairs.find(({ action }) => action > verdict.action)?.action ?? Number.POSITIVE_INFINITY;
  const found = notes
    .slice(verdict.notes)
    .find(
      ({ action, state, settled, misuse }) =>
        action < repaired &&
        state !== 'repaired' &&
        settled === 'settled' &&
        misuse.every((each) => each === 'not-zeroed'),
    );
  return found?.index ?? null;
}

export function provingOf(one: Case, right: 0 | 0.8 | 1): Proving {
  const open = right === 1 && one.state.site.callout.mode !== 'exam' && isArgued(one);
  const { after, support } = one;
  if (!open || !after) return { open, note: null, support };
  return { open, note: after.note, support: Math.max(support, after.support) };
}

function isArgued({ verdict, belief, twins, prior }: Case): boolean {
  if (!verdict || belief <= LIKELIER_THAN_NOT) return false;
  const group = twins.includes(verdict.cause) ? twins : [verdict.cause];
  const before = group.reduce((sum, cause) => sum + (prior[cause] ?? 0), 0);
  return belief >= 1 || log2(odds(belief) / odds(before)) >= SPEAKS;
}

const odds = (share: number): number => share / Math.max(1 - share, 1e-9);
