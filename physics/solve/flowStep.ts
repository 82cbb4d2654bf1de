/**
 * One implicit step in flow: the circuit's residual with walls, high-side mass and shell a step ago.
 * The refrigerant's own energy is booked afterwards (split correction): what the quasi-steady march did not account for is
 * taken from, or given to, the wall of that side, so the first law holds over the step.
 */
import { PhysicsError } from '../errors';
import { exp, ln } from '../math/elementary';
import * as L from '../fluids/layout';
import type { Rig } from './compile';
import { type Problem, solve } from './newton';
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
    /** hand-over from standing still: the split of mass between the sides is free, flows must agree */
    private readonly freeSplit: boolean,
  ) {
    const lnMin = ln(rig.fluid.pMin);
    const lnMax = ln(rig.fluid.pMax);
    this.lower = [lnMin + 1e-5, lnMin + 1e-5, 0.5];
    this.upper = [lnMax - 1e-5, lnMax - 1e-5, 8];
  }

  residual(x: Float64Array, r: Float64Array): void {
    const { circuit, env } = this.rig;
    circuit.evaluate(exp(x[0]), exp(x[1]), x[2] * 1e5, env, r);
    if (this.freeSplit) r[0] = (circuit.massFlow - circuit.path.flow) / circuit.massFlow;
  }
}

export interface FlowResult {
  readonly x: [number, number, number];
  readonly condenserWall: number[];
  readonly evaporatorWall: number[];
  readonly handOver: number;
}

/**
 * Solve one step of dt seconds; the rig's circuit is left at the solution. Throws PhysicsError where it cannot.
 * @param start ln p_high, ln p_low, cylinder enthalpy / 1e5
 */
export function flowStep(rig: Rig, state: CircuitState, start: readonly number[], dt: number, freeSplit: boolean): FlowResult {
  const { circuit, env } = rig;
  env.dt = dt;
  env.opening = state.opening;
  env.speed = state.speed;
  env.condenserWall = state.condenserWall;
  env.evaporatorWall = state.evaporatorWall;
  env.shell = state.shell;
  env.massHigh = state.massHigh;
  rig.effective.charge = state.charge;
  const problem = new StepProblem(rig, freeSplit);
  const x = Float64Array.from(start);
  const outcome = solve(problem, x, TOLERANCE, 25);
  if (!outcome.converged && !(outcome.defect < ACCEPT)) {
    throw (
      outcome.error ??
      new PhysicsError('no-convergence', 'a time step could not be solved', { time: state.time, dt, defect: outcome.defect })
    );
  }
  problem.residual(x, new Float64Array(3));

  const m = circuit.massFlow;
  const valve = circuit.path.flow;
  const exchanged = freeSplit ? 0 : (m - valve) * circuit.hLiquid * dt;
  const defectHigh = circuit.energyHigh - state.energyHigh - exchanged;
  const defectLow = circuit.energyLow - state.energyLow + exchanged;
  // At a hand-over the jump of the sides' energies is one number; it goes to the walls too, in total.
  const handOver = freeSplit ? defectHigh + defectLow : 0;
  const high = freeSplit ? 0.5 * handOver : defectHigh;
  const low = freeSplit ? 0.5 * handOver : defectLow;
  return {
    x: [x[0], x[1], x[2]],
    condenserWall: shifted(circuit.condenser.wall, -high / rig.data.condenser.wallCapacity),
    evaporatorWall: shifted(circuit.evaporator.wall, -low / rig.data.evaporator.wallCapacity),
    handOver,
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
    evaporatorOut: circuit.tEvaporatorOut,
  };
}
