/**
 * Steady states that Newton's method misses because the controller's limits meet there: the speed is searched by itself,
 * each time with the rest solved, until the controller asks for nothing more.
 */
import { PhysicsError } from '../errors';
import { speedError, speedTarget } from './control';
import type { NetworkRig } from './rig';
import type { NetworkSetting, NetworkSolution } from './steady';

const ROUNDS = 60;
/** K of the controller's error that count as nought */
const NOUGHT = 1e-8;
/** of one speed to the next where a state is followed down */
const CREEP = 0.97;

/** A limit slows the machine down to speeds at which it has no state any more: the switch of that limit ends it. */
function woundDown({ network, data, conditions }: NetworkRig, speed: number): PhysicsError {
  const { limits } = data;
  const pHigh = network.high[0];
  const pLow = network.low[0];
  const { tDischarge } = network.compressor;
  const limit =
    tDischarge > limits.slowDownTemp
      ? 'discharge-heat'
      : pHigh > limits.slowDownPressure
        ? 'high-pressure'
        : 'low-pressure';
  return new PhysicsError('protection', `slowed down without end: the machine stops on its ${limit} switch`, {
    limit,
    speed,
    outdoor: conditions.outdoor,
    indoor: conditions.indoor,
    pHigh,
    pLow,
    tDischarge,
    defect: -1,
  });
}

/** @param solveAt the network at one speed; throws where there is no state. Null where no speed settles the controller. */
export function bySpeed(
  rig: NetworkRig,
  setting: NetworkSetting,
  solveAt: (speed: number, warm: Float64Array | null) => NetworkSolution,
): NetworkSolution | null {
  const { minSpeed, maxSpeed } = rig.data.control;
  const target = speedTarget(setting.demands, setting.outdoors.role === 'evaporator');
  let last: NetworkSolution | null = null;
  /** K that it asks for; a speed without a state is too fast */
  const error = (speed: number): number => {
    try {
      last = solveAt(speed, last?.x ?? null);
      return speedError(rig, target);
    } catch (thrown) {
      if (!(thrown instanceof PhysicsError)) throw thrown;
      last = null;
      return Number.NEGATIVE_INFINITY;
    }
  };
  const found = (speed: number): NetworkSolution | null => {
    if (last === null) return null;
    const { x, outcome } = last as NetworkSolution;
    const whole = new Float64Array(x.length + 1);
    whole.set(x.subarray(0, 4));
    whole[4] = speed;
    if (x.length > 4) whole[5] = x[4];
    return { x: whole, outcome };
  };
  let low = minSpeed;
  let high = maxSpeed;
  let wish = error(low);
  for (; wish === Number.NEGATIVE_INFINITY && low < maxSpeed; wish = error(low)) low *= 1.2;
  if (wish === Number.NEGATIVE_INFINITY) return null;
  if (wish <= 0) {
    if (low === minSpeed) return found(low);
    throw woundDown(rig, low);
  }
  for (let speed = low * 1.3; ; speed *= 1.3) {
    const at = speed < maxSpeed ? speed : maxSpeed;
    if (error(at) < 0) {
      high = at;
      break;
    }
    low = at;
    if (at === maxSpeed) return found(at);
  }
  const between = (): NetworkSolution | null => {
    for (let k = 0; k < ROUNDS; k++) {
      const middle = 0.5 * (low + high);
      const wants = error(middle);
      if (wants < NOUGHT && wants > -NOUGHT) return found(middle);
      if (wants > 0) low = middle;
      else high = middle;
    }
    return null;
  };
  const rest = between();
  if (rest !== null) return rest;
  // Two states at one speed: those below came from the one that jumps here. The other one is followed on its way down.
  low = high;
  for (let slower = error(high); slower < 0; slower = error(low)) {
    if (low === minSpeed) return found(low);
    high = low;
    low = Math.max(minSpeed, CREEP * low);
  }
  return between();
}
