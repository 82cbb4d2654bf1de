/** An attempt at a cold room: what its controller does while a person waits, and what counts as a reading there. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Action, type AttemptState, apply, decode, encode, replay, snapshotAt, start } from '../../src/attempt';
import { canonicalJson } from '../../src/attempt/canonical';
import type { Pack } from '../../src/attempt/pack/types';
import { actionOn, perform } from '../support/attempt-actions';

const PACK: Pack = JSON.parse(
  readFileSync(new URL('../../scenarios/market-street.pack.json', import.meta.url), 'utf8'),
);

function done(callout: string, ...actions: readonly Action[]): AttemptState {
  return actions.reduce((state, action) => apply(state, action), start(PACK, callout, 'cold'));
}

const wait = (seconds: number): Action => ({ kind: 'wait', seconds });
const read = (instrument: 'high-gauge' | 'low-gauge', place: string): Action => ({
  kind: 'read',
  instrument,
  place,
  quantity: 'pressure',
});
const OPEN: readonly Action[] = [
  { kind: 'safety', step: 'zero-gauges', taken: true },
  { kind: 'safety', step: 'eye-and-hand-protection', taken: true },
];

describe('an attempt at a cold room', () => {
  it('shows a pump-down when the thermostat is turned up, and cools again when it is turned down', () => {
    const up = done('cheese-cellar', { kind: 'control', change: { setPoint: 283.15 } }, wait(15));
    expect(snapshotAt(up).controller).toBe('pumping-down');
    const emptied = apply(up, wait(240));
    expect(snapshotAt(emptied).controller).toBe('room-satisfied');
    const { suctionPressure, dischargePressure } = snapshotAt(emptied).probes;
    expect(dischargePressure.value).toBeGreaterThan(4 * suctionPressure.value);
    const again = apply(apply(emptied, { kind: 'control', change: { setPoint: 273.65 } }), wait(300));
    expect(snapshotAt(again).controller).toBe('cooling');
  });

  it('comes to rest enough to be read while ice grows and the clock runs', () => {
    const state = done('cheese-cellar', ...OPEN, wait(600), read('high-gauge', 'liquid-port'));
    expect(state.notes.at(-1)).toMatchObject({ settled: 'settled', state: 'running' });
  });

  it('takes the high side at rest for a standing pressure, never the low side', () => {
    const off: readonly Action[] = [...OPEN, { kind: 'control', change: { running: false } }, wait(3600)];
    expect(done('cider-shop', ...off, read('high-gauge', 'liquid-port')).notes.at(-1)?.state).toBe('standing');
    expect(done('cider-shop', ...off, read('low-gauge', 'suction-port')).notes.at(-1)?.state).toBe('other');
  });

  it('is iced until the defrost is mended, and clear after it', () => {
    const found = start(PACK, 'butchers-hall', 'cold');
    expect(snapshotAt(found).looks.evaporatorIce).toBeGreaterThan(0.25);
    const judged = apply(found, {
      kind: 'verdict',
      cause: 'defrost-not-starting',
      size: 'clear',
      rival: 'evaporator-fan-slow',
      cites: [],
    });
    const mended = apply(judged, {
      kind: 'repair',
      remedy: 'replace-defrost-clock',
      steps: ['isolate', 'restart-and-settle', 'record'],
      root: 'aged-part',
    });
    expect(mended.repairs.at(-1)).toMatchObject({ fits: true, callBack: null });
    expect(snapshotAt(mended).looks.evaporatorIce).toBeLessThan(0.05);
    const { capacityTotal } = snapshotAt(apply(mended, wait(1200))).probes;
    expect(capacityTotal.value).toBeGreaterThan(snapshotAt(found).probes.capacityTotal.value);
  });

  it('replays to the same digits and seldom leaves what the physics covers, whatever was done', () => {
    const work = fc.record({
      callout: fc.constantFrom(...PACK.callouts.map(({ id }) => id)),
      seed: fc.nat().map((n) => `c${n}`),
      actions: fc.array(actionOn('cold-room'), { minLength: 4, maxLength: 12, size: 'max' }),
    });
    let stuck = 0;
    fc.assert(
      fc.property(work, ({ callout, seed, actions }) => {
        const state = perform(start(PACK, callout, seed), actions);
        for (const note of state.notes) expect(Number.isFinite(note.value)).toBe(true);
        if (state.site.at(state.events, state.clock).stuck) stuck += 1;
        const again = replay(decode(encode(state.attempt)), PACK);
        expect(canonicalJson(again.notes)).toBe(canonicalJson(state.notes));
      }),
      { seed: 5, numRuns: 40 },
    );
    expect(stuck).toBeLessThanOrEqual(1);
  }, 120_000);
});
