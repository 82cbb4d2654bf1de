/**
 * Working: the sums that the callout needs, not those attempted. Marked by the notebook from the trainee's own inputs:
 * first answer whole, second half. The loss for a reading that had not settled or was taken wrongly falls here alone.
 */
import type { MarkedSum } from '../../attempt';
import type { Case } from '../case';
import type { TellingSum } from '../quanta';
import type { Message } from '../types';
import type { Marked } from './part';

/** What a right sum of spoilt readings is worth. */
const SPOILT = 0.5;

export function markWorking(one: Case): Marked {
  const { needed } = one;
  if (needed.length === 0) return { share: null, reasons: [{ key: 'reason.working.notMeasured', values: {} }] };
  const marks = needed.map((sum) => ({ sum, ...markSum(one, sum) }));
  const share = marks.reduce((total, { credit }) => total + credit, 0) / needed.length;
  return { share, reasons: marks.map(({ sum, message }) => reason(sum, message)) };
}

function reason(sum: TellingSum, word: string): Message {
  return { key: `reason.working.${word}`, values: { sum: { kind: 'sum', id: sum } } };
}

function markSum(one: Case, kind: TellingSum): { credit: number; message: string } {
  const done = one.state.sums.filter(({ sum }) => sum === kind);
  if (done.length === 0) return { credit: 0, message: 'missing' };
  const best = done.reduce((a, b) => (creditOf(one, b) > creditOf(one, a) ? b : a));
  const credit = creditOf(one, best);
  if (best.credit === 0 || !best.inputsFit) {
    const slip = done.find((sum) => sum.slip !== null)?.slip;
    return { credit: 0, message: slip ? `slip.${slip}` : 'wrong' };
  }
  if (isSpoilt(one, best)) return { credit, message: 'spoilt' };
  return { credit, message: best.credit < 1 ? 'secondTry' : 'right' };
}

function creditOf(one: Case, sum: MarkedSum): number {
  if (!sum.inputsFit) return 0;
  return sum.credit * (isSpoilt(one, sum) ? SPOILT : 1);
}

/** A note that the examiner does not judge, because of how or when it was taken. */
function isSpoilt({ plain }: Case, { notes }: MarkedSum): boolean {
  return notes.some((note) => {
    const taken = plain.taken[note];
    return taken && 'notJudged' in taken && (taken.notJudged === 'unsettled' || taken.notJudged === 'misused');
  });
}
