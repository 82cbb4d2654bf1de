import type { Answer, Order } from './worker';

/** What is needed of the examiner's worker; tests hand in one of their own. */
export interface Hired {
  postMessage(order: Order): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<Answer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** The one place that names the worker's file, so that it is built once. */
export function hireExaminer(): Hired {
  return new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'examiner' });
}
