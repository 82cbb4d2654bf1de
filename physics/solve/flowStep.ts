/**
 * One implicit step in flow: the circuit's residual with walls, high-side mass and shell a step ago.
 * The refrigerant's own energy is booked afterwards (split correction): what the quasi-steady march did not account for is
 * taken from, or given to, the wall of that side, so the first law holds over the step.
 */
import { PhysicsError } from '../errors';
import * as L from '../fluids/layout';
import { exp, ln } from '../math/elementary';
import type { Rig } from './compile';
import { broyden, type Problem, solve } from './newton';
import type { CircuitState, PipeTemps } from './state';

const TOLERANCE = 1e-9;
const ACCEPT = 1e-7;

class StepProblem implements Problem {
  readonly size = 3;
  readonly caps = [0.3, 0.4, 0.3];
  readonly lower: readonly number[];
  readonly upper: readonly number[];

  constructor(
    private readonly rig: Rig,
    private readonly entry: Entry,
  ) {
    const lnMin = ln(rig.fluid.pMin);
    const lnMax = ln(rig.fluid.pMax);
    this.lower = [lnMin + 1e-5, lnMin + 1e-5, 0.5];
    this.upper = [lnMax - 1e-5, lnMax - 1e-5, 8];
  }

  residual(x: Float64Array, r: Float64Array): void {
    const { circuit, env } = this.rig;
    circuit.evaluate(exp(x[0]), exp(x[1]), x[2] * 1e5, env, r);
    if (this.entry === 'free') r[0] = (circuit.massFlow - circuit.path.flow) / circuit.massFlow;
    if (this.entry === 'pooling') r[2] = (x[2] * 1e5 - circuit.low[L.H_V] - DRAWN) / 1e5;
  }
}

/**
 * How flow is entered: `going` = it already flows; `pooling` = from standing still, the compressor draws vapour and what
 * the march does not hold lies as liquid on the low side; `free` = from standing still with the split of mass free.
 */
export type Entry = 'going' | 'pooling' | 'free';

/** J/kg over saturated vapour that the compressor draws from a pool. */
const DRAWN = 3e3;

/** share of the energy that the march did not account for which a step gives to the walls (numerical, ours) */
const GIVEN = 0.1;

export interface FlowResult {
  readonly pool: number;
  readonly x: [number, number, number];
  readonly jacobian: readonly number[];
  readonly condenserWall: number[];
  readonly evaporatorWall: number[];
  readonly handOver: number;
  /** J that each side's walls still owe its refrigerant */
  readonly debtHigh: number;
  readonly debtLow: number;
}

/**
 * Solve one step of dt seconds; the rig's circuit is left at the solution. Throws PhysicsError where it cannot.
 * @param start ln p_high, ln p_low, cylinder enthalpy / 1e5
 */
export function flowStep(
  rig: Rig,
  state: CircuitState,
  start: readonly number[],
  dt: number,
  entry: Entry,
): FlowResult {
  const { circuit, env } = rig;
  env.dt = dt;
  env.opening = state.opening;
  env.speed = state.speed;
  env.condenserWall = state.condenserWall;
  env.evaporatorWall = state.evaporatorWall;
  env.shell = state.shell;
  env.massHigh = state.massHigh;
  rig.effective.charge = state.charge;
  const { boilOff } = rig.data.suctionVessel;
  env.pool = entry === 'going' ? (state.pool * boilOff) / (boilOff + dt) : 0;
  const problem = new StepProblem(rig, entry);
  const x = Float64Array.from(start);
  const jacobian = new Float64Array(9);
  let known = state.jacobian !== null && entry === 'going';
  if (state.jacobian !== null && known) {
    jacobian.set(state.jacobian);
    known = broyden(problem, x, jacobian, TOLERANCE, 8);
  }
  if (!known) {
    x.set(start);
    const outcome = solve(problem, x, TOLERANCE, 25, jacobian);
    if (!outcome.converged && !(outcome.defect < ACCEPT)) {
      throw (
        outcome.error ??
        new PhysicsError('no-convergence', 'a time step could not be solved', {
          time: state.time,
          dt,
          defect: outcome.defect,
        })
      );
    }
    problem.residual(x, new Float64Array(3));
  }
  if (entry === 'pooling') {
    env.pool = state.charge - circuit.massHigh - circuit.massLow;
    if (env.pool < 0) {
      throw new PhysicsError('no-convergence', 'the low side holds no pool of liquid', {
        time: state.time,
        pool: env.pool,
      });
    }
    problem.residual(x, new Float64Array(3));
  }

  const m = circuit.massFlow;
  const valve = circuit.path.flow;
  const free = entry === 'free';
  const exchanged = free ? 0 : (m - valve) * circuit.hLiquid * dt;
  const defectHigh = circuit.energyHigh - state.energyHigh - exchanged;
  const defectLow = circuit.energyLow - state.energyLow + exchanged;
  // At a hand-over the jump of the sides' energies is one number; it goes to the walls too, in total.
  const handOver = free ? defectHigh + defectLow : 0;
  // Given back a part each step: at once it would overshoot a light coil and ring from step to step.
  const debtHigh = state.debtHigh + (free ? 0.5 * handOver : defectHigh);
  const debtLow = state.debtLow + (free ? 0.5 * handOver : defectLow);
  const share = entry === 'going' ? GIVEN : 1;
  return {
    x: [x[0], x[1], x[2]],
    jacobian: Array.from(jacobian),
    condenserWall: shifted(circuit.condenser.walls, (-share * debtHigh) / rig.data.condenser.wallCapacity),
    evaporatorWall: shifted(circuit.evaporator.walls, (-share * debtLow) / rig.data.evaporator.wallCapacity),
    pool: env.pool,
    handOver,
    debtHigh: (1 - share) * debtHigh,
    debtLow: (1 - share) * debtLow,
  };
}

function shifted(wall: Float64Array, by: number): number[] {
  return Array.from(wall, (t) => t + by);
}

/** Refrigerant temperatures where clamps go, with the circuit at a solution. */
export function pipeTemps(rig: Rig): PipeTemps {
  const { circuit, fluid } = rig;
  const block = new Float64Array(L.BLOCK_SIZE);
  const out = new Float64Array(L.OUT_SIZE);
  const at = (pressure: number, enthalpy: number): number => {
    fluid.setPressure(pressure, block);
    fluid.state(block, enthalpy, out);
    return out[L.OUT_T];
  };
  return {
    suction: at(circuit.pServiceSuction, circuit.hServiceSuction),
    compressorIn: at(circuit.pSuction, circuit.compressor.hSuction),
    discharge: circuit.compressor.tDischarge,
    liquid: at(circuit.pLiquid, circuit.hLiquid),
    afterDrier: circuit.path.tAfterDrier,
    meteringIn: circuit.path.tMetering,
    evaporatorOut: circuit.tEvaporatorOut,
  };
}
