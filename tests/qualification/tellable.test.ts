/**
 * Every shipped callout can be told: greedy best readings on 200 machines of its kind off the examiner's grid, with all
 * families of the plant and no fault as rivals, reach belief 0.8 in the truth on nine of ten. With the readings of other
 * callouts' machines in their place they do not.
 */
import { describe, expect, it } from 'vitest';
import { truthsOf } from '../../src/examiner/case';
import { proveCallout, TOLD } from '../../src/packs/prove';
import { differentialFor, shippedCallouts } from '../support/differentials';

const MACHINES = 200;
/** Of each other callout whose cause is another. */
const SWAPPED = 5;

const all = shippedCallouts();

describe.each(all.map((shipped) => [shipped.callout.id, shipped] as const))('%s', (_id, shipped) => {
  const { callout } = shipped;
  const differential = differentialFor(shipped);

  it(`is told on nine of ten of ${MACHINES} machines`, { timeout: 300_000 }, () => {
    const proof = proveCallout(callout, differential, MACHINES);
    const missed = proof.trials.filter(({ belief }) => belief < TOLD).map(({ leading }) => leading);
    console.log(`${callout.id}: told ${(100 * proof.told).toFixed(1)} %, half within ${proof.median.toFixed(0)} min`);
    expect(proof.told, `missed for ${missed.join(', ')}`).toBeGreaterThanOrEqual(0.9);
  });

  it("is not told from other callouts' readings", { timeout: 300_000 }, () => {
    const [truth] = truthsOf(callout.faults);
    const others = all.filter((each) => truthsOf(each.callout.faults)[0] !== truth);
    const trials = others.flatMap((each) => proveCallout(callout, differential, SWAPPED, each.callout).trials);
    const told = trials.filter(({ belief }) => belief >= TOLD).length;
    console.log(`${callout.id}: from other machines ${told} of ${trials.length}`);
    expect(told / trials.length).toBeLessThanOrEqual(0.05);
  });
});
