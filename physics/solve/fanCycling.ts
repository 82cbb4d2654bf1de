/**
 * Steady state of a machine whose condenser fan is switched by head pressure. On the mean the fan runs a share of the time
 * (its duty), and head lies at what `meanHead` declares for that duty: at the lower switch while the fan hardly stops,
 * halfway to the upper one while it hardly runs. The coil then sees the mean of its air with and without the fan.
 */
import { PhysicsError } from '../errors';
import { type ColdStoreData, meanHead } from './coldStore';
import type { Rig } from './compile';
import type { SteadySolution } from './steady';

/** Pa of head within which the duty is found, and the most steps that it may take */
const CLOSE = 1e-3;
const STEPS = 60;

/** Steady state at a duty from a first guess; leaves the rig there. */
type SolveAt = (duty: number, guess: Float64Array) => SteadySolution;

/** Throws what `solveAt` throws where no duty gives a steady state. */
export function withCyclingFan(rig: Rig, store: ColdStoreData, guess: Float64Array, solveAt: SolveAt): SteadySolution {
  let near = guess;
  let reason: PhysicsError | null = null;
  /** Pa of head over what this duty would hold, falling as the fan runs more; infinite where there is no steady state */
  const over = (duty: number): number => {
    try {
      near = solveAt(duty, near).x;
      return rig.circuit.pDischarge - meanHead(store, rig.effective, duty);
    } catch (error) {
      if (!(error instanceof PhysicsError)) throw error;
      reason = error;
      return error.details.limit === 'high-pressure' ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
    }
  };
  let atHigh = over(1);
  if (atHigh === Number.POSITIVE_INFINITY && reason) throw reason;
  if (atHigh >= 0) return solveAt(1, near);
  let atLow = over(0);
  if (atLow === Number.NEGATIVE_INFINITY && reason) throw reason;
  if (atLow <= 0) return solveAt(0, near);
  let low = 0;
  let high = 1;
  let side = 0;
  let duty = 1;
  for (let k = 0; k < STEPS; k++) {
    duty = (high * atLow - low * atHigh) / (atLow - atHigh);
    if (!(duty > low && duty < high)) duty = 0.5 * (low + high);
    const at = over(duty);
    if (at > -CLOSE && at < CLOSE) break;
    if (at > 0) {
      low = duty;
      atLow = at;
      if (side === 1) atHigh *= 0.5;
      side = 1;
    } else {
      high = duty;
      atHigh = at;
      if (side === -1) atLow *= 0.5;
      side = -1;
    }
  }
  return solveAt(duty, near);
}
