/**
 * Minutes that a person lets pass are played in a few seconds. The attempt is at their end already (one action, kept
 * at once); only what is shown runs after it. Any tap or key goes to the end.
 */
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Passing } from '../../panels/session';

/** Shorter waits are over before an eye has found the clock, s. */
const LEAST = 30;
/** Real time: a start, and so much more for each simulated minute, ms. */
const START = 1100;
const EACH_MINUTE = 240;
const LONGEST = 5500;
/** Above 1: slow at first, since what changed shows most just after it. */
const EASE = 1.5;
/** These would press the button that still has the focus, or close a sheet, when all that was meant is "go on". */
const CONSUMED = ['Enter', ' ', 'Escape'];
const MODIFIERS = ['Shift', 'Control', 'Alt', 'Meta'];

export interface Lapse {
  readonly passing: ReadonlySignal<Passing | null>;
  /** Begins to play from one simulated second to another; false where nothing may move or there is too little to show. */
  play(from: number, to: number, onArrive: () => void): boolean;
  /** Goes to the end at once. */
  arrive(): void;
}

export function createLapse(still: ReadonlySignal<boolean>): Lapse {
  const passing = signal<Passing | null>(null);
  let running: { readonly stop: () => void; readonly onArrive: () => void } | null = null;

  function arrive(): void {
    if (!running) return;
    const { stop, onArrive } = running;
    running = null;
    stop();
    passing.value = null;
    onArrive();
  }

  function play(from: number, to: number, onArrive: () => void): boolean {
    arrive();
    if (still.peek() || document.hidden || to - from < LEAST) return false;
    const length = Math.min(LONGEST, START + (EACH_MINUTE * (to - from)) / 60);
    let begun: number | null = null;
    let frame = 0;
    const step = (now: number) => {
      begun ??= now;
      const share = Math.min(1, (now - begun) / length);
      if (share >= 1) return arrive();
      passing.value = { from, to, now: Math.floor(from + (to - from) * share ** EASE) };
      frame = requestAnimationFrame(step);
    };
    passing.value = { from, to, now: from };
    frame = requestAnimationFrame(step);
    const stopListening = onGoOn(arrive);
    const stop = () => {
      cancelAnimationFrame(frame);
      stopListening();
    };
    running = { stop, onArrive };
    return true;
  }

  return { passing: computed(() => passing.value), play, arrive };
}

function onGoOn(arrive: () => void): () => void {
  const onPointer = (event: PointerEvent) => {
    // The button that says so is pressed as a button.
    if (!(event.target as Element | null)?.closest('.passing')) arrive();
  };
  const onKey = (event: KeyboardEvent) => {
    if (MODIFIERS.includes(event.key)) return;
    if (CONSUMED.includes(event.key)) {
      event.preventDefault();
      event.stopPropagation();
    }
    arrive();
  };
  const onHidden = () => {
    // A hidden page gets no frames.
    if (document.hidden) arrive();
  };
  addEventListener('pointerdown', onPointer, true);
  addEventListener('keydown', onKey, true);
  document.addEventListener('visibilitychange', onHidden);
  return () => {
    removeEventListener('pointerdown', onPointer, true);
    removeEventListener('keydown', onKey, true);
    document.removeEventListener('visibilitychange', onHidden);
  };
}
