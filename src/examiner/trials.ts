/**
 * The page's side of trying causes: one worker that stays, since it is asked many times while a slider moves. Only the
 * newest trial counts: while one runs, those in between are left out, and what they would have answered is never seen.
 */
import { type Hired, hireExaminer } from './hire';
import type { Trial, TrialOutcome } from './types';
import type { Order } from './worker';

export type TrialAnswer = TrialOutcome | { readonly as: 'failed'; readonly reason: string };

export interface Trials {
  /** forgets what was asked before */
  ask(trial: Trial): void;
  close(): void;
}

export function openTrials(onAnswer: (answer: TrialAnswer) => void, hire: () => Hired = hireExaminer): Trials {
  let worker: Hired | null = null;
  let running = false;
  let number = 0;
  let next: Order | null = null;

  function send(): void {
    if (running || !next) return;
    worker ??= listening(hire());
    running = true;
    worker.postMessage(next);
    next = null;
  }

  function listening(hired: Hired): Hired {
    hired.onmessage = ({ data }) => {
      running = false;
      const isNewest = next === null;
      if (data.kind === 'failed' && isNewest) onAnswer({ as: 'failed', reason: data.reason });
      if (data.kind === 'tried' && data.number === number) onAnswer(data.outcome);
      send();
    };
    hired.onerror = (event) => {
      dismiss();
      onAnswer({ as: 'failed', reason: event.message || 'no reason given' });
      send();
    };
    return hired;
  }

  function dismiss(): void {
    worker?.terminate();
    worker = null;
    running = false;
  }

  return {
    ask(trial) {
      number += 1;
      next = { kind: 'trial', number, trial };
      send();
    },
    close() {
      next = null;
      dismiss();
    },
  };
}
