/**
 * Working: the sums that the callout needs, not those attempted. Marked by the notebook from the trainee's own inputs:
 * first answer whole, second half. A sum of readings that had not settled or were taken wrongly proves nothing:
 * that slip is charged here, and nowhere else.
 *
 * A slip of method – gauge for absolute, the wrong line, a reading before it settles – counts wherever it stands, also
 * in a sum that this callout did not need: on the next one it is needed. A slip of the pencil in such a sum is free.
 */
import type { MarkedSum, SumKind, SumSlip } from '../../attempt';
import type { Case } from '../case';
import type { Message } from '../types';
import type { Marked } from './part';

const OF_METHOD: Readonly<Record<SumSlip, boolean>> = {
  'wrong-saturation-line': true,
  'gauge-for-absolute': true,
  altitude: true,
  'difference-as-temperature': true,
  reversed: true,
  arithmetic: false,
  'saturation-misread': false,
};

export function markWorking(one: Case): Marked {
  const needed = one.needed.map((sum) => ({ sum, ...markSum(one, sum) }));
  const wrong = wrongBesides(one);
  if (needed.length + wrong.length === 0) {
    return { share: null, reasons: [{ key: 'reason.working.notMeasured', values: {} }] };
  }
  // Where no sum was needed, that it was seen counts as one that is right.
  const right = needed.length === 0 ? 1 : needed.reduce((total, { credit }) => total + credit, 0);
  const share = right / (Math.max(1, needed.length) + wrong.length);
  return { share, reasons: [...needed, ...wrong].map(({ sum, message }) => reason(sum, message)) };
}

/** Sums that were not needed and stand wrong by a slip of method. */
function wrongBesides(one: Case): { sum: SumKind; message: string }[] {
  const besides = new Set(one.state.sums.map(({ sum }) => sum));
  for (const sum of one.needed) besides.delete(sum);
  return [...besides].flatMap((sum) => {
    const { credit, message, ofMethod } = markSum(one, sum);
    return credit === 0 && ofMethod ? [{ sum, message }] : [];
  });
}

function reason(sum: SumKind, word: string): Message {
  return { key: `reason.working.${word}`, values: { sum: { kind: 'sum', id: sum } } };
}

function markSum(one: Case, kind: SumKind): { credit: number; message: string; ofMethod: boolean } {
  const done = one.state.sums.filter(({ sum }) => sum === kind);
  if (done.length === 0) return { credit: 0, message: 'missing', ofMethod: false };
  const best = done.reduce((a, b) => (creditOf(one, b) > creditOf(one, a) ? b : a));
  const credit = creditOf(one, best);
  if (credit > 0) return { credit, message: credit < 1 ? 'secondTry' : 'right', ofMethod: false };
  if (done.some((sum) => sum.credit > 0 && isSpoilt(one, sum))) return { credit, message: 'spoilt', ofMethod: true };
  const slip = done.find((sum) => sum.slip !== null)?.slip;
  return { credit, message: slip ? `slip.${slip}` : 'wrong', ofMethod: slip ? OF_METHOD[slip] : false };
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
