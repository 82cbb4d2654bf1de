/**
 * Steady state: the circuit's three residuals, and on a regulated machine the controller's two as complementarity
 * conditions (valve and speed stop at their ends). A ladder of starting points; what none of them solves is a typed error.
 */
import { PhysicsError } from '../errors';
import { exp, ln } from '../math/elementary';
import type { Circuit } from './circuit';
import { bulbTruth, reported, sensorTruth, speedError, thermostaticOpening, valveError } from './control';
import { type Outcome, type Problem, solve } from './newton';
import type { Surroundings } from './surroundings';

/** How valve and speed are set: a number holds them, null lets the controller find them. */
export interface Setting {
  readonly opening: number | null;
  readonly speed: number | null;
}

export interface SteadySolution {
  readonly x: Float64Array;
  readonly outcome: Outcome;
}

const TOLERANCE = 2e-11;
/** Where Newton stalls at a kink short of the tolerance this is still far below anything that can be measured. */
const ACCEPT = 2e-10;
const CAPS = [0.25, 0.35, 0.3, 0.15, 0.2];

class SteadyProblem implements Problem {
  readonly size: number;
  readonly caps: readonly number[];
  readonly lower: readonly number[];
  readonly upper: readonly number[];

  constructor(
    private readonly circuit: Circuit,
    private readonly env: Surroundings,
    private readonly setting: Setting,
  ) {
    const { control } = circuit.data;
    const free = [setting.opening === null, setting.speed === null];
    const index = [0, 1, 2];
    if (free[0]) index.push(3);
    if (free[1]) index.push(4);
    this.size = index.length;
    this.caps = index.map((i) => CAPS[i]);
    const lnMin = ln(circuit.fluid.pMin);
    const lnMax = ln(circuit.fluid.pMax);
    const lower = [lnMin + 1e-5, lnMin + 1e-5, 0.5, control.minOpening, control.minSpeed];
    const upper = [lnMax - 1e-5, lnMax - 1e-5, 8, 1, control.maxSpeed];
    this.lower = index.map((i) => lower[i]);
    this.upper = index.map((i) => upper[i]);
  }

  residual(x: Float64Array, r: Float64Array): void {
    const { circuit, env, setting } = this;
    const { control } = circuit.data;
    let k = 3;
    env.opening = setting.opening === null ? x[k++] : setting.opening;
    env.speed = setting.speed === null ? x[k++] : setting.speed;
    circuit.evaluate(exp(x[0]), exp(x[1]), x[2] * 1e5, env, r);
    if (this.size === 3) return;
    if (control.metering === 'thermostatic') {
      const bulb = bulbTruth(circuit, circuit.tEvaporatorOut);
      r[3] = 0.3 * (x[3] - thermostaticOpening(circuit, bulb, circuit.pEvaporatorOut));
      return;
    }
    const seen = reported(circuit, this.env.outdoor, sensorTruth(circuit));
    k = 3;
    if (setting.opening === null) {
      r[k] = x[k] - clip(x[k] + 0.05 * valveError(circuit, seen), control.minOpening, 1);
      k++;
    }
    if (setting.speed === null) {
      r[k] = x[k] - clip(x[k] + 0.05 * speedError(circuit, seen), control.minSpeed, control.maxSpeed);
    }
  }
}

function clip(value: number, low: number, high: number): number {
  return value < low ? low : value > high ? high : value;
}

/** Starting points, most likely first: kelvin over the condenser's air, under the evaporator's air, J/kg over saturated vapour. */
const STARTS: readonly (readonly [number, number, number])[] = [
  [12, 19, 8e3],
  [20, 17, 5e3],
  [9, 28, 2e4],
  [6, 24, 1.2e4],
  [16, 12, -1e4],
  [25, 22, -5e3],
  [4, 34, 3e4],
  // a generous coil outdoors in hard frost: the others lie so far below it that their discharge gas leaves the tables
  [16, 7, 2e3],
  [10, 5, -1e4],
];

interface Search {
  readonly found: SteadySolution | null;
  /** the nearest miss */
  readonly best: Outcome | null;
  readonly bestX: Float64Array | null;
}

/**
 * Find the steady state. Throws PhysicsError: `protection` naming the limit that the search ends beyond, `no-convergence`
 * with the best defect reached otherwise.
 * @param warm a neighbouring solution to start from
 */
export function solveSteady(
  circuit: Circuit,
  env: Surroundings,
  setting: Setting,
  warm: Float64Array | null,
): SteadySolution {
  const { found, best, bestX } = search(circuit, env, setting, warm);
  if (found) return found;
  if (setting.speed === null) return slowedDown(circuit, env, setting);
  throw unsolved(circuit, best, bestX);
}

/** Newton from `warm`, then from every starting point; the circuit's fields are left at what is found. */
function search(circuit: Circuit, env: Surroundings, setting: Setting, warm: Float64Array | null): Search {
  env.dt = 0;
  const problem = new SteadyProblem(circuit, env, setting);
  let best: Outcome | null = null;
  let bestX: Float64Array | null = null;
  const tries: Float64Array[] = [];
  if (warm && warm.length === problem.size) tries.push(Float64Array.from(warm));
  for (const start of STARTS) {
    const x = new Float64Array(problem.size);
    x[0] = ln(circuit.fluid.pDew(Math.min(circuit.condenserAir.temperature + start[0], circuit.fluid.tCritical - 6)));
    const pLow = circuit.fluid.pDew(circuit.evaporatorAir.temperature - start[1]);
    x[1] = ln(pLow);
    circuit.fluid.setPressure(pLow, circuit.low);
    x[2] = (circuit.low[5] + start[2]) / 1e5;
    let k = 3;
    if (setting.opening === null) x[k++] = 0.4;
    if (setting.speed === null) x[k] = 1;
    tries.push(x);
  }
  for (const x of tries) {
    const outcome = solve(problem, x, TOLERANCE, 60);
    if (outcome.converged || outcome.defect < ACCEPT) {
      problem.residual(x, new Float64Array(problem.size));
      return { found: { x, outcome }, best, bestX };
    }
    if (best === null || outcome.defect < best.defect) {
      best = outcome;
      bestX = x;
    }
  }
  return { found: null, best, bestX };
}

/** Relative speeds at which a machine is held on its way down; the last is its own least one. */
const WAY_DOWN = [1.5, 1.25, 1, 0.8, 0.65, 0.5, 0.4, 0.35];

/**
 * A machine that no search solves because its step-down finds no speed at which it would end: gas that leaks back is hotter
 * the slower it runs. Held at one speed after another, each from the one before, the whole problem is tried from there;
 * the least speed is a rest whatever it still asks for. Where it has no state at one of them, a switch ends the way down.
 */
function slowedDown(circuit: Circuit, env: Surroundings, setting: Setting): SteadySolution {
  const { minSpeed, maxSpeed } = circuit.data.control;
  const whole = new SteadyProblem(circuit, env, setting);
  let warm: Float64Array | null = null;
  for (const speed of [...WAY_DOWN.filter((each) => each > minSpeed && each <= maxSpeed), minSpeed]) {
    const { found, best, bestX }: Search = search(circuit, env, { ...setting, speed }, warm);
    if (found === null) {
      // it may start too fast to have a state
      if (warm === null && speed > minSpeed) continue;
      throw unsolved(circuit, best, bestX);
    }
    warm = found.x;
    const x = Float64Array.from([...found.x, speed]);
    const outcome = solve(whole, x, TOLERANCE, 60);
    if (!outcome.converged && !(outcome.defect < ACCEPT)) continue;
    whole.residual(x, new Float64Array(whole.size));
    return { x, outcome };
  }
  throw new PhysicsError('no-convergence', 'the steady state could not be found at any speed', {
    outdoor: circuit.outdoorAir.temperature,
    indoor: circuit.indoorAir.temperature,
  });
}

/**
 * Why there is no steady state. Where the search ends beyond a limit of the machine, that limit is the reason: the real
 * machine would stop on it before it came to rest.
 */
function unsolved(circuit: Circuit, best: Outcome | null, x: Float64Array | null): PhysicsError {
  const details = {
    defect: best?.defect ?? -1,
    outdoor: circuit.outdoorAir.temperature,
    indoor: circuit.indoorAir.temperature,
  };
  const { limits } = circuit.data;
  const pHigh = x ? exp(x[0]) : 0;
  const pLow = x ? exp(x[1]) : 0;
  const limit =
    pHigh > limits.highPressure || best?.error?.code === 'table-end'
      ? 'high-pressure'
      : pLow > 0 && pLow < limits.lowPressure
        ? 'low-pressure'
        : best?.error?.code === 'range' || circuit.compressor.tDischarge > limits.dischargeTemp
          ? 'discharge-heat'
          : null;
  if (limit === null) return new PhysicsError('no-convergence', 'the steady state could not be found', details);
  return new PhysicsError('protection', `no steady running state: the machine stops on its ${limit} switch first`, {
    ...details,
    limit,
    pHigh,
    pLow,
  });
}
