/**
 * What the examiner's work costs beside one steady state of a split in the same run: a differential (computed anew only for
 * callouts that no pack ships), and from a verdict to its debrief.
 */
import { bench, describe } from 'vitest';
import { createMachine } from '../../physics/index';
import { computeDifferential, differentialInput, judge } from '../../src/examiner';
import { playTrainee } from '../../src/examiner/trainees';
import { differentialFor, shippedCallouts } from '../support/differentials';

const ALL = shippedCallouts();
const ONE = [1, 2].map((warmer) =>
  createMachine({
    plant: 'inverter-split',
    refrigerant: 'R-32',
    conditions: { outdoor: 307.15 + warmer, indoor: 300.15, wetBulb: 292.15, mode: 'cooling', altitude: 0 },
    faults: {},
  }),
);
/** minutes of one core on many units: once is enough */
const ONCE = { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0 } as const;

function steadyTurns(): () => void {
  let turn = 0;
  return () => {
    turn = 1 - turn;
    ONE[turn].steady();
  };
}

describe('a differential', () => {
  bench('one steady state of a split', steadyTurns());
  for (const plant of ['orifice-split', 'inverter-split', 'cold-room', 'thermostatic-heat-pump', 'multi-split']) {
    const { callout } = ALL.find((each) => each.callout.plant === plant)!;
    bench(`${plant}: ${callout.id}`, () => void computeDifferential(differentialInput(callout)), ONCE);
  }
});

describe('from a verdict to its debrief', () => {
  bench('one steady state of a split', steadyTurns());
  for (const plant of [
    'orifice-split',
    'inverter-split',
    'cold-room',
    'thermostatic-heat-pump',
    'multi-split',
    'heat-recovery',
  ]) {
    const shipped = ALL.find((each) => each.callout.plant === plant)!;
    const { pack, callout } = shipped;
    const differential = differentialFor(shipped);
    const state = playTrainee('first-hunch', { pack, callout: callout.id, seed: 'bench', differential });
    bench(`${plant}: ${callout.id}`, () => void judge(state, differential), { ...ONCE, iterations: 3 });
  }
});
