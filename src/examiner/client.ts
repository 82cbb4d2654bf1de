/** The page's side of the examiner's worker: one worker an order, ended when the order is answered or called off. */
import type { Attempt, HintLevel } from '../attempt';
import type { Pack } from '../attempt/pack/types';
import type { PackedDifferential } from './compact';
import type { Judged } from './explain/debrief';
import { hireExaminer } from './hire';
import type { DifferentialInput, DifferentialProgress, Hint, ProveIt } from './types';
import type { Answer, Order } from './worker';

export interface OrderOptions {
  readonly onProgress?: (progress: DifferentialProgress) => void;
  readonly signal?: AbortSignal;
}

export function differentialInWorker(
  input: DifferentialInput,
  options: OrderOptions = {},
): Promise<PackedDifferential> {
  return ask({ kind: 'differential', input }, options, (answer) =>
    answer.kind === 'differential' ? answer.differential : null,
  );
}

export function judgeInWorker(
  attempt: Attempt,
  pack: Pack,
  differential: PackedDifferential,
  options: OrderOptions = {},
): Promise<Judged> {
  return ask({ kind: 'judge', attempt, pack, differential }, options, (answer) =>
    answer.kind === 'judged' ? answer.judged : null,
  );
}

/** What the hint of this step says; `attempt` as it was when it was asked for. */
export function hintInWorker(
  attempt: Attempt,
  pack: Pack,
  differential: PackedDifferential,
  level: HintLevel,
  options: OrderOptions = {},
): Promise<Hint> {
  return ask({ kind: 'hint', level, attempt, pack, differential }, options, (answer) =>
    answer.kind === 'hint' ? answer.hint : null,
  );
}

/** Whether the last verdict may still be proved by one more reading, or what the one taken brought. */
export async function proofInWorker(
  attempt: Attempt,
  pack: Pack,
  differential: PackedDifferential,
  options: OrderOptions = {},
): Promise<ProveIt | null> {
  const { proof } = await ask({ kind: 'proof', attempt, pack, differential }, options, (answer) =>
    answer.kind === 'proof' ? answer : null,
  );
  return proof;
}

/** Rejects with the signal's reason when called off, with an Error that names what failed else. */
function ask<T>(order: Order, { onProgress, signal }: OrderOptions, wanted: (answer: Answer) => T | null): Promise<T> {
  return new Promise((resolve, reject) => {
    if (signal?.aborted) return reject(signal.reason);
    const worker = hireExaminer();
    const end = (then: () => void) => {
      worker.terminate();
      signal?.removeEventListener('abort', abort);
      then();
    };
    const abort = () => end(() => reject(signal?.reason));
    signal?.addEventListener('abort', abort);
    worker.onerror = (event) =>
      end(() => reject(new Error(`the examiner stopped: ${event.message || 'no reason given'}`)));
    worker.onmessage = ({ data }: MessageEvent<Answer>) => {
      if (data.kind === 'progress') return onProgress?.(data.progress);
      if (data.kind === 'failed') return end(() => reject(new Error(data.reason)));
      const found = wanted(data);
      if (found !== null) end(() => resolve(found));
    };
    worker.postMessage(order);
  });
}
