import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AttemptState, decode, encode, replay, snapshotAt, start } from '../../src/attempt';
import { canonicalJson } from '../../src/attempt/canonical';
import { GOLDEN_PACK } from '../golden/pack';
import { actionOn, perform } from '../support/attempt-actions';

const anyWork = fc.constantFrom(...GOLDEN_PACK.callouts).chain((callout) =>
  fc.record({
    callout: fc.constant(callout.id),
    seed: fc.nat().map((n) => `r${n}`),
    actions: fc.array(actionOn(callout.plant), { minLength: 4, maxLength: 14, size: 'max' }),
  }),
);

function seen({ site: _site, ...rest }: AttemptState) {
  return rest;
}

const ATTEMPTS = 200;
/** Of random handling (unprepared stops, vented refrigerant, wrong remedies) so many may leave what the physics covers. */
const STUCK_SHARE = 0.02;

describe('attempts on the real machines', () => {
  it(`replay to the same digits from their codes, whatever was done (${ATTEMPTS} attempts)`, () => {
    let notes = 0;
    const stuck = new Map<string, number>();
    fc.assert(
      fc.property(anyWork, ({ callout, seed, actions }) => {
        const state = perform(start(GOLDEN_PACK, callout, seed), actions);
        notes += state.notes.length;
        for (const note of state.notes) expect(Number.isFinite(note.value)).toBe(true);
        expect(Number.isFinite(snapshotAt(state).probes.suctionPressure.value)).toBe(true);
        const code = state.site.at(state.events, state.clock).stuck;
        if (code) stuck.set(code, (stuck.get(code) ?? 0) + 1);
        const again = replay(decode(encode(state.attempt)), GOLDEN_PACK);
        expect(canonicalJson(seen(again)) === canonicalJson(seen(state))).toBe(true);
      }),
      { seed: 11, numRuns: ATTEMPTS },
    );
    expect(notes).toBeGreaterThan(2 * ATTEMPTS);
    const all = [...stuck.values()].reduce((sum, count) => sum + count, 0);
    expect(all, JSON.stringify([...stuck])).toBeLessThanOrEqual(STUCK_SHARE * ATTEMPTS);
  }, 600_000);
});
