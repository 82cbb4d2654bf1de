/**
 * One implicit step of a network in flow: its residual with walls, high-side mass and shell a step ago. What the march did
 * not account for of the refrigerant's own energy goes to the walls of that side, so the first law holds over the step.
 */
import { PhysicsError } from '../errors';
import * as L from '../fluids/layout';
import { exp, ln } from '../math/elementary';
import { broyden, type Problem, solve } from '../solve/newton';
import type { NetworkRig } from './rig';
import type { NetworkState } from './state';
import { tasksFor } from './tasks';

const TOLERANCE = 1e-9;
const ACCEPT = 1e-8;
/** J/kg over saturated vapour that the compressor draws from a pool */
const DRAWN = 3e3;
/** share of the energy that the march did not account for which a step gives to the walls (numerical, ours) */
const GIVEN = 0.1;
const SIZE = 4;

/** `going` = it already flows; `pooling` = from standing, the rest lies as liquid on the low side; `free` = split of mass free. */
export type Entry = 'going' | 'pooling' | 'free';

class StepProblem implements Problem {
  readonly size = SIZE;
  readonly caps = [0.3, 0.4, 0.3, 0.3];
  readonly lower: readonly number[];
  readonly upper: readonly number[];

  constructor(
    private readonly rig: NetworkRig,
    private readonly entry: Entry,
  ) {
    const least = ln(rig.fluid.pMin) + 1e-5;
    const most = ln(rig.fluid.pMax) - 1e-5;
    this.lower = [least, least, 0.5, least];
    this.upper = [most, most, 8, most];
  }

  residual(x: Float64Array, r: Float64Array): void {
    const { network, drive } = this.rig;
    network.evaluate(exp(x[0]), exp(x[1]), x[2] * 1e5, exp(x[3]), drive, r);
    const m = network.massFlow;
    if (this.entry === 'free') r[0] = (m - network.valveFlow - network.bypassFlow) / m;
    if (this.entry === 'pooling') r[2] = (x[2] * 1e5 - network.low[L.H_V] - DRAWN) / 1e5;
  }
}

export interface FlowResult {
  readonly x: readonly number[];
  readonly jacobian: readonly number[];
  readonly walls: readonly (readonly number[])[];
  readonly flows: readonly number[];
  readonly pool: number;
  readonly handOver: number;
  readonly debtHigh: number;
  readonly debtLow: number;
}

/** Put the drive at a state: what the coming evaluations stand on. */
export function drivenBy(rig: NetworkRig, state: NetworkState, dt: number, pool: number): void {
  const { drive, network } = rig;
  drive.dt = dt;
  drive.speed = state.speed;
  drive.shell = state.shell;
  drive.massHigh = state.massHigh;
  drive.pool = pool;
  const steady = dt === 0;
  drive.walls = steady ? state.walls.map(() => null) : state.walls;
  const openings = steady ? null : state.openings;
  drive.tasks = tasksFor(rig, state.outdoors, state.routing, openings, state.inputs.controls.valveHold);
  rig.effective.machine.charge = state.charge;
  network.branches.forEach((b, i) => {
    b.flow = state.flows[i];
    b.valveFlow = state.flows[i];
    b.opening = state.openings[i];
    b.forget();
  });
}

/** Solve one step of dt seconds; the rig's network is left at the solution. Throws PhysicsError where it cannot. */
export function flowStep(rig: NetworkRig, state: NetworkState, dt: number, entry: Entry): FlowResult {
  const { network, drive, data } = rig;
  const { boilOff } = data.suctionVessel;
  drivenBy(rig, state, dt, entry === 'going' ? (state.pool * boilOff) / (boilOff + dt) : 0);
  const problem = new StepProblem(rig, entry);
  const x = Float64Array.from(state.x);
  const jacobian = new Float64Array(SIZE * SIZE);
  const r = new Float64Array(SIZE);
  let known = state.jacobian !== null && entry === 'going';
  if (state.jacobian !== null && known) {
    jacobian.set(state.jacobian);
    known = broyden(problem, x, jacobian, TOLERANCE, 8);
  }
  if (!known) {
    x.set(state.x);
    drivenBy(rig, state, dt, drive.pool);
    const outcome = solve(problem, x, TOLERANCE, 30, jacobian);
    if (!outcome.converged && !(outcome.defect < ACCEPT)) {
      const details = { time: state.time, dt, defect: outcome.defect };
      throw outcome.error ?? new PhysicsError('no-convergence', 'a time step could not be solved', details);
    }
  }
  if (entry === 'pooling') {
    drive.pool = state.charge - network.massHigh - network.massLow;
    if (drive.pool < 0) {
      const details = { time: state.time, pool: drive.pool };
      throw new PhysicsError('no-convergence', 'the low side holds no pool of liquid', details);
    }
  }
  // the kept evaluation starts from these flows, so that a snapshot repeats it
  const flows = network.branches.map((b) => b.flow);
  problem.residual(x, r);

  const m = network.massFlow;
  const free = entry === 'free';
  const exchanged = free ? 0 : (m - network.valveFlow - network.bypassFlow) * network.hLiquid * dt;
  const defectHigh = network.energyHigh - state.energyHigh - exchanged;
  const defectLow = network.energyLow - state.energyLow + exchanged;
  const handOver = free ? defectHigh + defectLow : 0;
  const debtHigh = state.debtHigh + (free ? 0.5 * handOver : defectHigh);
  const debtLow = state.debtLow + (free ? 0.5 * handOver : defectLow);
  const share = entry === 'going' ? GIVEN : 1;
  return {
    x: Array.from(x),
    jacobian: Array.from(jacobian),
    walls: newWalls(rig, state, dt, -share * debtHigh, -share * debtLow),
    flows,
    pool: drive.pool,
    handOver,
    debtHigh: (1 - share) * debtHigh,
    debtLow: (1 - share) * debtLow,
  };
}

/** Walls after the step, with `high` and `low` joules shared out over the coils of either side; idle coils take on their air. */
function newWalls(rig: NetworkRig, state: NetworkState, dt: number, high: number, low: number): number[][] {
  const { branches } = rig.network;
  let capacityHigh = 0;
  let capacityLow = 0;
  for (const b of branches) {
    if (b.role === 'condenser') capacityHigh += b.data.coil.wallCapacity;
    else if (b.role === 'evaporator') capacityLow += b.data.coil.wallCapacity;
  }
  return branches.map((b, i) => {
    if (b.role === 'idle') {
      const toAir = b.air.ua / b.data.coil.wallCapacity;
      const share = (dt * toAir) / (1 + dt * toAir);
      return state.walls[i].map((t) => t + share * (b.air.temperature - t));
    }
    const by = b.role === 'condenser' ? high / capacityHigh : low / capacityLow;
    return Array.from(b.march.walls, (t) => t + by);
  });
}
