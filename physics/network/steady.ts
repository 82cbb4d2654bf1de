/** Steady state of a network: its four residuals, and the controller's as complementarity conditions. */
import { PhysicsError } from '../errors';
import * as L from '../fluids/layout';
import { exp, ln } from '../math/elementary';
import { broyden, type Outcome, type Problem, solve } from '../solve/newton';
import type { UnitDemand } from '../types';
import { bySpeed } from './bySpeed';
import { speedError, speedTarget } from './control';
import { fanShare, leastExchange, valveShare } from './exchange';
import type { NetworkRig } from './rig';
import { condensingSeen, evaporatingSeen } from './seen';
import { type Outdoors, tasksFor } from './tasks';

/** A number holds speed or outdoor exchange, null lets the controller find it. */
export interface NetworkSetting {
  readonly speed: number | null;
  /** share of the outdoor fans' speed where rooms cool and heat at once */
  readonly exchange: number | null;
  readonly outdoors: Outdoors;
  readonly demands: readonly UnitDemand[];
  readonly valveHold: number | null;
}

export interface NetworkSolution {
  readonly x: Float64Array;
  readonly outcome: Outcome;
}

const TOLERANCE = 2e-11;
const ACCEPT = 1e-9;
const CAPS = [0.2, 0.25, 0.25, 0.2, 0.15, 0.2];

export class NetworkProblem implements Problem {
  readonly size: number;
  readonly caps: readonly number[];
  readonly lower: readonly number[];
  readonly upper: readonly number[];

  constructor(
    private readonly rig: NetworkRig,
    private readonly setting: NetworkSetting,
  ) {
    const { control } = rig.data;
    const index = [0, 1, 2, 3];
    if (setting.speed === null) index.push(4);
    if (setting.exchange === null) index.push(5);
    this.size = index.length;
    this.caps = index.map((i) => CAPS[i]);
    const least = ln(rig.fluid.pMin) + 1e-5;
    const most = ln(rig.fluid.pMax) - 1e-5;
    const lower = [least, least, 0.5, least, control.minSpeed, leastExchange(setting.outdoors)];
    const upper = [most, most, 8, most, control.maxSpeed, 1];
    this.lower = index.map((i) => lower[i]);
    this.upper = index.map((i) => upper[i]);
  }

  residual(x: Float64Array, r: Float64Array): void {
    const { rig, setting } = this;
    const { control } = rig.data;
    const { drive, network } = rig;
    let k = 4;
    drive.speed = setting.speed === null ? x[k++] : setting.speed;
    if (setting.exchange === null) exchangeOf(rig, setting.outdoors, x[k]);
    network.evaluate(exp(x[0]), exp(x[1]), x[2] * 1e5, exp(x[3]), drive, r);
    k = 4;
    const outdoorBoils = setting.outdoors.role === 'evaporator';
    if (setting.speed === null) {
      const target = speedTarget(setting.demands, outdoorBoils);
      r[k] = x[k] - clip(x[k] + 0.05 * speedError(rig, target), control.minSpeed, control.maxSpeed);
      k++;
    }
    if (setting.exchange === null) {
      const error = outdoorBoils
        ? control.evaporatingTarget - evaporatingSeen(rig)
        : condensingSeen(rig) - control.condensingTarget;
      r[k] = x[k] - clip(x[k] + 0.03 * error, leastExchange(setting.outdoors), 1);
    }
  }
}

/** Air and valves of the modules at this exchange. */
export function exchangeOf(rig: NetworkRig, { role, count }: Outdoors, exchange: number): void {
  rig.setOutdoorAir(fanShare(role, exchange), count > 0);
  rig.drive.throttle = valveShare(exchange);
}

function clip(value: number, low: number, high: number): number {
  return value < low ? low : value > high ? high : value;
}

/**
 * Starting points: K of the condensing over what it gives heat to, K of the evaporating under what it takes heat from,
 * J/kg over vapour, liquid header over discharge pressure, outdoor exchange.
 */
const STARTS: readonly (readonly [number, number, number, number, number])[] = [
  [12, 19, 8e3, 0.92, 0.3],
  [20, 17, 5e3, 0.88, 0.6],
  [8, 12, -4e4, 0.9, 0.3],
  [4, 6, -7e4, 0.9, 0.3],
  [8, 26, 1.5e4, 0.95, 0.12],
  [16, 12, -5e3, 0.9, 0.2],
  [26, 22, 2e3, 0.85, 0.9],
  [6, 34, 2.5e4, 0.95, 0.06],
];

/**
 * Find the steady state; the rig's network is left at it. Throws PhysicsError: `protection` naming the limit that a search
 * ends beyond, `no-convergence` otherwise.
 * @param starts how many of the starting points to try at most
 */
export function solveNetwork(
  rig: NetworkRig,
  setting: NetworkSetting,
  warm: Float64Array | null,
  starts = STARTS.length,
): NetworkSolution {
  const { drive, network, data, fluid, conditions } = rig;
  drive.dt = 0;
  drive.pool = 0;
  drive.tasks = tasksFor(rig, setting.outdoors, setting.demands, null, setting.valveHold);
  drive.walls = network.branches.map(() => null);
  const problem = new NetworkProblem(rig, setting);
  const heats = setting.demands.includes('heating');
  const cools = setting.demands.includes('cooling');
  const source = cools ? conditions.indoor : conditions.outdoor;
  const sink = heats ? conditions.indoor + 10 : conditions.outdoor;
  const tries: Float64Array[] = [];
  if (warm && warm.length === problem.size) tries.push(Float64Array.from(warm));
  for (const [over, under, dry, share, exchange] of STARTS.slice(0, starts)) {
    const x = new Float64Array(problem.size);
    const pHigh = fluid.pDew(Math.min(sink + over, fluid.tCritical - 6));
    const pLow = fluid.pDew(Math.max(source - (cools ? under : under * 0.5), 220));
    fluid.setPressure(pLow, network.low);
    x[0] = ln(pHigh);
    x[1] = ln(pLow);
    x[2] = (network.low[L.H_V] + dry) / 1e5;
    x[3] = ln(share * pHigh);
    let k = 4;
    if (setting.speed === null) x[k++] = 0.8;
    if (setting.exchange === null) x[k] = exchange;
    tries.push(x);
  }
  let best: Outcome | null = null;
  let bestX: Float64Array | null = null;
  for (const x of tries) {
    resetFlows(rig);
    const jacobian = new Float64Array(problem.size * problem.size);
    hurry(rig, true);
    const outcome = solve(problem, x, TOLERANCE, 60, jacobian);
    hurry(rig, false);
    if (outcome.converged || outcome.defect < ACCEPT) {
      const better = polished(problem, x, jacobian);
      if (better !== null) return { x: better, outcome };
    }
    if (best === null || outcome.defect < best.defect) {
      best = outcome;
      bestX = x;
    }
  }
  if (setting.speed === null && starts === STARTS.length) {
    const slow = bySpeed(rig, setting, (speed, from) => solveNetwork(rig, { ...setting, speed }, from, 4));
    if (slow !== null) return slow;
  }
  throw unsolved(rig, best, bestX, data.limits);
}

function hurry(rig: NetworkRig, quick: boolean): void {
  for (const b of rig.network.branches) b.hurry(quick);
}

/** The last steps with every branch searched to the end; the network is left there. Null where that is no solution. */
function polished(problem: NetworkProblem, x: Float64Array, jacobian: Float64Array): Float64Array | null {
  const better = Float64Array.from(x);
  if (broyden(problem, better, jacobian, TOLERANCE, 8)) return better;
  better.set(x);
  const { converged, defect } = solve(problem, better, TOLERANCE, 30);
  if (!(converged || defect < ACCEPT)) return null;
  problem.residual(better, new Float64Array(problem.size));
  return better;
}

/** Branches start from their rated share: what a search finds must not depend on what was computed before. */
export function resetFlows(rig: NetworkRig): void {
  for (const b of rig.network.branches) {
    b.flow = 0.1 * b.data.coil.airFlow;
    b.valveFlow = b.flow;
    b.pIn = exp(ln(rig.fluid.pMin) + 2);
    b.opening = 0.5;
    b.forget();
  }
}

function unsolved(
  rig: NetworkRig,
  best: Outcome | null,
  x: Float64Array | null,
  limits: NetworkRig['data']['limits'],
): PhysicsError {
  const pHigh = x ? exp(x[0]) : 0;
  const pLow = x ? exp(x[1]) : 0;
  const details = {
    defect: best?.defect ?? -1,
    outdoor: rig.conditions.outdoor,
    indoor: rig.conditions.indoor,
    pHigh,
    pLow,
    tDischarge: rig.network.compressor.tDischarge,
  };
  const limit =
    pHigh > limits.highPressure || best?.error?.code === 'table-end'
      ? 'high-pressure'
      : pLow > 0 && pLow < limits.lowPressure
        ? 'low-pressure'
        : best?.error?.code === 'range' || rig.network.compressor.tDischarge > limits.dischargeTemp
          ? 'discharge-heat'
          : null;
  if (limit === null) return new PhysicsError('no-convergence', 'the steady state could not be found', details);
  return new PhysicsError('protection', `no steady running state: the machine stops on its ${limit} switch first`, {
    ...details,
    limit,
  });
}
