/** The examiner off the page's thread. Ended (terminated) by its client to cancel. */
import { type Attempt, type HintLevel, REAL_WORLD } from '../attempt';
import type { Pack } from '../attempt/pack/types';
import {
  computeDifferential,
  type DifferentialInput,
  type DifferentialProgress,
  decodeDifferential,
  encodeDifferential,
  type Hint,
  hintIn,
  type Judged,
  judgeAttempt,
  type PackedDifferential,
  type ProveIt,
  proofIn,
  type Trial,
  type TrialOutcome,
} from './index';
import { runTrial } from './otherCause';

export type Order =
  /** the only one that a worker is asked more than once: the answer carries its number */
  | { readonly kind: 'trial'; readonly number: number; readonly trial: Trial }
  | { readonly kind: 'differential'; readonly input: DifferentialInput }
  | {
      readonly kind: 'hint';
      readonly level: HintLevel;
      /** the attempt as it was when the hint was asked for */
      readonly attempt: Attempt;
      readonly pack: Pack;
      readonly differential: PackedDifferential;
    }
  | {
      readonly kind: 'proof' | 'judge';
      readonly attempt: Attempt;
      readonly pack: Pack;
      readonly differential: PackedDifferential;
    };

export type Answer =
  | { readonly kind: 'tried'; readonly number: number; readonly outcome: TrialOutcome }
  | { readonly kind: 'progress'; readonly progress: DifferentialProgress }
  | { readonly kind: 'differential'; readonly differential: PackedDifferential }
  | { readonly kind: 'judged'; readonly judged: Judged }
  | { readonly kind: 'hint'; readonly hint: Hint }
  | { readonly kind: 'proof'; readonly proof: ProveIt | null }
  | { readonly kind: 'failed'; readonly reason: string };

const scope = self as unknown as {
  postMessage(answer: Answer): void;
  addEventListener(type: 'message', listener: (event: { readonly data: Order }) => void): void;
};

scope.addEventListener('message', ({ data }) => {
  try {
    scope.postMessage(answerTo(data));
  } catch (error) {
    scope.postMessage({ kind: 'failed', reason: error instanceof Error ? error.message : String(error) });
  }
});

function answerTo(order: Order): Answer {
  if (order.kind === 'trial') {
    return { kind: 'tried', number: order.number, outcome: runTrial(order.trial, REAL_WORLD) };
  }
  if (order.kind === 'differential') {
    const computed = computeDifferential(order.input, (progress) => scope.postMessage({ kind: 'progress', progress }));
    return { kind: 'differential', differential: encodeDifferential(computed) };
  }
  const { attempt, pack } = order;
  const differential = decodeDifferential(order.differential);
  switch (order.kind) {
    case 'hint':
      return { kind: 'hint', hint: hintIn(attempt, pack, differential, order.level) };
    case 'proof':
      return { kind: 'proof', proof: proofIn(attempt, pack, differential) };
    case 'judge':
      return { kind: 'judged', judged: judgeAttempt(attempt, pack, differential) };
  }
}
