/** Predictions and reasons, laid beside what the examiner expects as soon as there are any. */
import { effect, type ReadonlySignal, signal } from '@preact/signals';
import type { AttemptState } from '../../attempt';
import { decodeDifferential, type PackedDifferential } from '../../examiner';
import { OWN_SENSES } from '../../instruments/catalogue';
import type { ReadingOption } from '../../panels/place/options';
import type { Head } from '../../panels/session';
import { becauseTold, chalksTold, reflectionTold } from '../../practice/head';

/** Only what is measured settles; a look is there at once. */
export function asksChalk({ instrument }: ReadingOption): boolean {
  return !OWN_SENSES.includes(instrument);
}

export interface Heads {
  readonly told: ReadonlySignal<Head | null>;
  stop(): void;
}

export function createHead(
  state: ReadonlySignal<AttemptState>,
  expectations: () => Promise<PackedDifferential>,
): Heads {
  const told = signal<Head | null>(null);
  let asked = 0;
  const stop = effect(() => {
    const now = state.value;
    if (now.chalks.length === 0 && now.becauses.length === 0 && now.reflections.length === 0) return;
    asked += 1;
    const mine = asked;
    expectations().then(
      (packed) => {
        if (mine !== asked) return;
        const differential = decodeDifferential(packed);
        told.value = {
          chalks: chalksTold(now, differential),
          because: becauseTold(now, differential),
          reflection: reflectionTold(now, differential),
        };
      },
      // An examiner that cannot work says so in the debrief.
      () => {},
    );
  });
  return { told, stop };
}
