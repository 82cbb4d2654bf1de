/**
 * Cause: s · (½ + ½ a). s = how far the readings that were taken supported the verdict; a = whether it was right. A
 * well-argued wrong call keeps half, an unargued right one almost nothing. A right one is whole only with one act
 * that proves it, where a safe one exists.
 */
import { type Case, observed } from '../case';
import type { Proving } from '../proving';
import type { Message } from '../types';
import { confirmation, provenByReading, shownAtVerdict } from './confirming';
import { clip, type Marked } from './part';
import { sizeOf } from './size';

/** What a right verdict keeps without its proof. */
const UNPROVED = 0.8;
/** What it keeps with another size than the readings leave open. */
const OTHER_SIZE = 0.95;

export interface MarkedCause extends Marked {
  /** share of the weight that one more reading could have brought at the verdict, and what the one taken did bring */
  readonly open: number;
  readonly won: number;
}

export function markCause(one: Case, right: 0 | 0.8 | 1, proving: Proving): MarkedCause {
  const { verdict, support, belief } = one;
  if (!verdict) return { share: 0, reasons: [{ key: 'reason.cause.none', values: {} }], open: 0, won: 0 };
  const size = right === 1 ? sizeOf(...sizing(one), verdict.cause) : null;
  const otherSize = size !== null && size !== verdict.size;
  const whole = (0.5 + 0.5 * right) * (otherSize ? OTHER_SIZE : 1);
  const atVerdict = right > 0 ? confirmation(one, verdict.cause) : 'none-needed';
  const proof = proofOf(one, proving) ?? atVerdict;
  const before = clip(support * whole * kept(atVerdict));
  const share = Math.max(before, clip(proving.support * whole * kept(proof)));
  const reasons = [named(one, right)];
  if (share > before) reasons.push({ key: 'reason.cause.provedAfter', values: {} });
  reasons.push({
    key: support >= 1 ? 'reason.cause.supported' : 'reason.cause.unsupported',
    values: { belief: { kind: 'share', value: belief } },
  });
  if (proof === 'missing') reasons.push({ key: `reason.proof.${verdict.cause}`, values: {} });
  if (otherSize) reasons.push({ key: 'reason.cause.size', values: { size: { kind: 'size', id: size } } });
  const best = whole * (provenByReading(one, verdict.cause) ? 1 : kept(atVerdict));
  return { share, reasons, open: proving.open ? Math.max(0, best - before) : 0, won: share - before };
}

const kept = (proof: ReturnType<typeof confirmation>): number => (proof === 'missing' ? UNPROVED : 1);

/** The proof with the reading after the verdict; null where there is none that counts. */
function proofOf(one: Case, { note }: Proving): ReturnType<typeof confirmation> | null {
  if (note === null || !one.verdict || !one.after) return null;
  const { notes } = shownAtVerdict(one);
  return confirmation(one, one.verdict.cause, { taken: one.after.taken, notes: [...notes, note] });
}

function sizing(one: Case) {
  return [one.differential, one.state.site.world.families, observed(one.plain, one.judgedNotes)] as const;
}

function named({ verdict, truths, twins }: Case, right: 0 | 0.8 | 1): Message {
  const said = { kind: 'cause', id: verdict!.cause } as const;
  const was = { kind: 'cause', id: truths[0] } as const;
  if (truths.includes(verdict!.cause)) return { key: 'reason.cause.right', values: { said } };
  if (twins.includes(verdict!.cause)) return { key: 'reason.cause.twin', values: { said, was } };
  return { key: right > 0 ? 'reason.cause.mends' : 'reason.cause.wrong', values: { said, was } };
}
