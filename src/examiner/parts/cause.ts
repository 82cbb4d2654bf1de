/**
 * Cause: s · (½ + ½ a). s = how far the readings that were taken supported the verdict; a = whether it was right. A
 * well-argued wrong call keeps half, an unargued right one almost nothing. A right one is whole only with one act
 * that proves it, where a safe one exists.
 */
import { type Case, observed } from '../case';
import type { Message } from '../types';
import { confirmation } from './confirming';
import { clip, type Marked } from './part';
import { sizeOf } from './size';

/** What a right verdict keeps without its proof. */
const UNPROVED = 0.8;
/** What it keeps with another size than the readings leave open. */
const OTHER_SIZE = 0.95;

export function markCause(one: Case, right: 0 | 0.8 | 1): Marked {
  const { state, verdict, support, truths, twins, belief } = one;
  const seen = observed(one.plain, one.judgedNotes);
  if (!verdict) return { share: 0, reasons: [{ key: 'reason.cause.none', values: {} }] };
  const said = { kind: 'cause', id: verdict.cause } as const;
  const was = { kind: 'cause', id: truths[0] } as const;
  const reasons: Message[] = [];
  if (truths.includes(verdict.cause)) reasons.push({ key: 'reason.cause.right', values: { said } });
  else if (twins.includes(verdict.cause)) reasons.push({ key: 'reason.cause.twin', values: { said, was } });
  else if (right > 0) reasons.push({ key: 'reason.cause.mends', values: { said, was } });
  else reasons.push({ key: 'reason.cause.wrong', values: { said, was } });
  reasons.push({
    key: support >= 1 ? 'reason.cause.supported' : 'reason.cause.unsupported',
    values: { belief: { kind: 'share', value: belief } },
  });
  const proof = right > 0 ? confirmation(one, verdict.cause) : 'none-needed';
  if (proof === 'missing') reasons.push({ key: `reason.proof.${verdict.cause}`, values: {} });
  const size = right === 1 ? sizeOf(one.differential, state.site.world.families, seen, verdict.cause) : null;
  const otherSize = size !== null && size !== verdict.size;
  if (otherSize) reasons.push({ key: 'reason.cause.size', values: { size: { kind: 'size', id: size } } });
  const kept = (proof === 'missing' ? UNPROVED : 1) * (otherSize ? OTHER_SIZE : 1);
  const share = support * (0.5 + 0.5 * right) * kept;
  return { share: clip(share), reasons };
}

/** Points of the weight that one more reading or act could still bring: right, but not yet proven. */
export function openShare(marked: Marked, right: 0 | 0.8 | 1): number {
  return right === 1 && marked.share !== null ? 1 - marked.share : 0;
}
