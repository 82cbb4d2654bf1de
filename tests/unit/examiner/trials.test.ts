/** A slider asks many times: the newest answer is the only one that is seen, and a broken worker is replaced. */
import { describe, expect, it } from 'vitest';
import type { Hired } from '../../../src/examiner/hire';
import { openTrials, type TrialAnswer } from '../../../src/examiner/trials';
import type { Trial } from '../../../src/examiner/types';
import type { Order } from '../../../src/examiner/worker';

class FakeWorker implements Hired {
  readonly orders: Order[] = [];
  ended = false;
  onmessage: Hired['onmessage'] = null;
  onerror: Hired['onerror'] = null;

  postMessage(order: Order): void {
    this.orders.push(order);
  }

  terminate(): void {
    this.ended = true;
  }

  answer(code: string): void {
    const { number } = this.orders.at(-1) as Extract<Order, { kind: 'trial' }>;
    this.onmessage?.({ data: { kind: 'tried', number, outcome: { as: 'unsolved', code } } } as MessageEvent);
  }
}

function open() {
  const seen: TrialAnswer[] = [];
  const hired: FakeWorker[] = [];
  const trials = openTrials(
    (answer) => seen.push(answer),
    () => {
      const worker = new FakeWorker();
      hired.push(worker);
      return worker;
    },
  );
  return { seen, hired, trials };
}

const trial = (severity: number) => ({ setup: { faults: { undercharge: severity } }, states: [] }) as unknown as Trial;

describe('trials of a cause', () => {
  it('are asked one at a time; what the slider passed in between is left out', () => {
    const { seen, hired, trials } = open();
    for (const severity of [0.1, 0.2, 0.3, 0.4]) trials.ask(trial(severity));
    expect(hired.length).toBe(1);
    expect(hired[0].orders.length).toBe(1);
    hired[0].answer('of the first');
    expect(seen).toEqual([]);
    expect(hired[0].orders.length).toBe(2);
    expect((hired[0].orders[1] as Extract<Order, { kind: 'trial' }>).trial).toEqual(trial(0.4));
    hired[0].answer('of the last');
    expect(seen).toEqual([{ as: 'unsolved', code: 'of the last' }]);
  });

  it('say when the worker breaks, and hire another for the next', () => {
    const { seen, hired, trials } = open();
    trials.ask(trial(0.1));
    hired[0].onerror?.({ message: 'out of memory' } as ErrorEvent);
    expect(seen).toEqual([{ as: 'failed', reason: 'out of memory' }]);
    expect(hired[0].ended).toBe(true);
    trials.ask(trial(0.2));
    expect(hired.length).toBe(2);
    hired[1].answer('again');
    expect(seen.at(-1)).toEqual({ as: 'unsolved', code: 'again' });
  });

  it('end with whoever asked', () => {
    const { hired, trials } = open();
    trials.ask(trial(0.1));
    trials.close();
    expect(hired[0].ended).toBe(true);
  });
});
