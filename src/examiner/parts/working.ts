/**
 * Working: the sums that the callout needs, not those attempted. Marked by the notebook from the trainee's own inputs:
 * first answer whole, second half. A sum of readings that had not settled or were taken wrongly proves nothing:
 * that slip is charged here, and nowhere else.
 */
import type { MarkedSum } from '../../attempt';
import type { Case } from '../case';
import type { TellingSum } from '../quanta';
import type { Message } from '../types';
import type { Marked } from './part';

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
  if (credit > 0) return { credit, message: credit < 1 ? 'secondTry' : 'right' };
  if (done.some((sum) => sum.credit > 0 && isSpoilt(one, sum))) return { credit, message: 'spoilt' };
  const slip = done.find((sum) => sum.slip !== null)?.slip;
  return { credit, message: slip ? `slip.${slip}` : 'wrong' };
}

function creditOf(one: Case, sum: MarkedSum): number {
  return sum.inputsFit && !isSpoilt(one, sum) ? sum.credit : 0;
}

/** A note that the examiner does not judge, because of how or when it was taken. */
function isSpoilt({ plain }: Case, { notes }: MarkedSum): boolean {
  return notes.some((note) => {
    const taken = plain.taken[note];
    return taken && 'notJudged' in taken && (taken.notJudged === 'unsettled' || taken.notJudged === 'misused');
  });
}
