/** The examiner at work beside the page: what each rival would have shown, then the grade and the debrief. */
import { type ReadonlySignal, signal } from '@preact/signals';
import type { AttemptState } from '../../attempt';
import type { Callout, Pack } from '../../attempt/pack/types';
import { differentialInput, type PackedDifferential } from '../../examiner';
import { differentialInWorker, judgeInWorker } from '../../examiner/client';
import type { Judgement } from '../../panels/session';
import { shippedDifferential } from './differentials';

export interface Examining {
  readonly judgement: ReadonlySignal<Judgement>;
  /** begins the long part early, so that it is done when it is needed */
  prepare(): void;
  /** what every rival would have shown: shipped, or computed */
  expectations(): Promise<PackedDifferential>;
  judge(state: AttemptState): void;
  stop(): void;
}

export function createExamining(pack: Pack, callout: Callout): Examining {
  const judgement = signal<Judgement>({ as: 'none' });
  const { signal: stopped, abort } = newAbort();
  let differential: Promise<PackedDifferential> | null = null;
  let judged = false;

  function expectations(): Promise<PackedDifferential> {
    differential ??= shippedDifferential(pack, callout).then(
      (shipped) => shipped ?? differentialInWorker(differentialInput(callout), { signal: stopped, onProgress: report }),
    );
    return differential;
  }

  function report({ done, total }: { readonly done: number; readonly total: number }): void {
    if (judgement.peek().as === 'working') judgement.value = { as: 'working', done, total };
  }

  return {
    judgement,
    prepare: () => void expectations().catch(() => {}),
    expectations,
    judge({ attempt }) {
      if (judged) return;
      judged = true;
      judgement.value = { as: 'working', done: 0, total: 1 };
      expectations()
        .then((packed) => judgeInWorker(attempt, pack, packed, { signal: stopped }))
        .then(({ grade, debrief }) => {
          judgement.value = { as: 'ready', grade, debrief };
        })
        .catch((error: unknown) => {
          if (stopped.aborted) return;
          judged = false;
          differential = null;
          judgement.value = { as: 'failed', reason: error instanceof Error ? error.message : String(error) };
        });
    },
    stop: abort,
  };
}

function newAbort(): { signal: AbortSignal; abort: () => void } {
  const controller = new AbortController();
  return { signal: controller.signal, abort: () => controller.abort(new Error('the callout was left')) };
}
