/** What the examiner says while a job is still open: hints that were asked for, and a verdict that may be proved. */
import type { HintLevel } from '../attempt';
import type { Hint, ProveIt } from '../examiner/types';

export type HintShown = {
  readonly level: HintLevel;
  /** number of the action that opened it */
  readonly action: number;
} & (
  | { readonly as: 'working' }
  | { readonly as: 'ready'; readonly hint: Hint }
  | { readonly as: 'failed'; readonly reason: string }
);

export interface Advice {
  /** every hint of this attempt, in the order in which they were opened */
  readonly hints: readonly HintShown[];
  /** null where there is nothing to prove, or the examiner has not looked yet */
  readonly proof: ProveIt | null;
}
