/** Tries another cause in the callout's machine, while a slider moves: debounced, the newest only. */
import { type ReadonlySignal, signal } from '@preact/signals';
import type { AttemptState } from '../../attempt';
import { trialOf } from '../../examiner/otherCause';
import { openTrials, type Trials } from '../../examiner/trials';
import type { Tried } from '../../panels/session';

/** A slider that still moves is not asked for, ms. */
const PAUSE = 120;

export interface Trying {
  readonly tried: ReadonlySignal<Tried | null>;
  tryCause(key: string, severity: number): void;
  stop(): void;
}

export function createTrying(state: ReadonlySignal<AttemptState>): Trying {
  const tried = signal<Tried | null>(null);
  let trials: Trials | null = null;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  return {
    tried,
    tryCause(key, severity) {
      tried.value = { key, severity, outcome: null, before: tried.peek()?.outcome ?? tried.peek()?.before ?? null };
      clearTimeout(waiting);
      waiting = setTimeout(() => {
        trials ??= openTrials((outcome) => {
          const now = tried.peek();
          if (now) tried.value = { ...now, outcome, before: null };
        });
        trials.ask(trialOf(state.peek(), key, severity));
      }, PAUSE);
    },
    stop() {
      clearTimeout(waiting);
      trials?.close();
      trials = null;
    },
  };
}
