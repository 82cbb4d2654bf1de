/** Asks the examiner's worker for what an open job may be told: hints from the record, and whether a verdict is proved. */
import { effect, type ReadonlySignal, signal, untracked } from '@preact/signals';
import type { AttemptState } from '../../attempt';
import type { Pack } from '../../attempt/pack/types';
import type { PackedDifferential } from '../../examiner';
import { hintInWorker, proofInWorker } from '../../examiner/client';
import { readingAfter } from '../../examiner/proving';
import type { Advice, HintShown } from '../../panels/advice';

export interface Advising {
  readonly advice: ReadonlySignal<Advice>;
  /** asks once more for a hint that could not be worked out */
  again(action: number): void;
  stop(): void;
}

export function createAdvising(
  pack: Pack,
  state: ReadonlySignal<AttemptState>,
  expectations: () => Promise<PackedDifferential>,
  tell: (hint: HintShown) => void,
): Advising {
  const advice = signal<Advice>({ hints: [], proof: null });
  const left = new AbortController();
  const { signal: stopped } = left;
  let proving: AbortController | null = null;
  let provedFor = '';

  function put(shown: HintShown): void {
    const { hints, ...rest } = advice.peek();
    const others = hints.filter(({ action }) => action !== shown.action);
    advice.value = { ...rest, hints: [...others, shown].sort((a, b) => a.action - b.action) };
  }

  async function ask(level: HintShown['level'], action: number, isNew: boolean): Promise<void> {
    put({ level, action, as: 'working' });
    const { attempt } = state.peek();
    const asked = { ...attempt, actions: attempt.actions.slice(0, action) };
    try {
      const hint = await hintInWorker(asked, pack, await expectations(), level, { signal: stopped });
      const shown: HintShown = { level, action, as: 'ready', hint };
      put(shown);
      if (isNew) tell(shown);
    } catch (error) {
      if (!stopped.aborted) put({ level, action, as: 'failed', reason: reasonOf(error) });
    }
  }

  /** Looks anew whenever another verdict stands, or a reading has been spent on it. An older look is called off. */
  async function prove(key: string, { attempt }: AttemptState): Promise<void> {
    proving?.abort(new Error('asked anew'));
    const mine = new AbortController();
    proving = mine;
    try {
      const signal = AbortSignal.any([stopped, mine.signal]);
      const proof = await proofInWorker(attempt, pack, await expectations(), { signal });
      if (!mine.signal.aborted && provedFor === key) advice.value = { ...advice.peek(), proof };
    } catch {
      // Whoever left or asked anew does not want it; an examiner that cannot work says so in the debrief.
    }
  }

  const arrived = state.peek().hints.length;
  const unwatch = effect(() => {
    const now = state.value;
    untracked(() => {
      const known = advice.peek().hints.length;
      now.hints.slice(known).forEach(({ level, action }, i) => {
        void ask(level, action, known + i >= arrived);
      });
      const key = proofKey(now);
      if (key === provedFor) return;
      provedFor = key;
      advice.value = { ...advice.peek(), proof: null };
      if (key !== '') void prove(key, now);
    });
  });

  return {
    advice,
    again(action) {
      const found = advice.peek().hints.find((each) => each.action === action);
      if (found?.as === 'failed') void ask(found.level, action, true);
    },
    stop() {
      unwatch();
      left.abort(new Error('the callout was left'));
    },
  };
}

/** Names the verdict and the reading spent on it; empty where nothing can be proved now. */
function proofKey(state: AttemptState): string {
  const { verdicts, repairs, site } = state;
  const verdict = verdicts.at(-1);
  if (!verdict || site.callout.mode === 'exam' || repairs.length > 0) return '';
  return `${verdict.action}/${readingAfter(state, verdict) ?? 'none'}`;
}

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
