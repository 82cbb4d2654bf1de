/**
 * The look-alikes of the trade's review: both pressures, superheat, subcooling, the air's difference and the current, and
 * one further reading or test, tell each machine from the other. `npm run lookalikes` asks more machines and mild weather.
 */
import { describe, expect, it } from 'vitest';
import { LOOK_ALIKES, PairBench } from '../../src/packs/lookAlikePairs';

const MACHINES = [0, 1, 2, 3];

describe.each(LOOK_ALIKES.map((pair) => [pair.id, pair] as const))('%s', (_id, pair) => {
  it('is told at belief 0.8', { timeout: 120_000 }, () => {
    const bench = new PairBench(pair, false);
    for (const side of ['A', 'B'] as const) {
      for (const machine of MACHINES) expect(bench.tell(side, machine)?.six, `${side} ${machine}`).toBeGreaterThan(0.8);
    }
  });
});
