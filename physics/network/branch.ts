/**
 * One exchanger of several: marched with its own through-flow, as an evaporator between liquid header and suction or as a
 * condenser between hot gas and liquid header. What it needs of the machine is passed in; what it found stays in fields.
 */
import type { FluidTable } from '../fluids/fluid';
import * as L from '../fluids/layout';
import type { AirStream } from '../parts/airStream';
import { CoilMarch } from '../parts/coil';
import { tubeFlowBy } from '../parts/correlations';
import type { FanResult } from '../parts/fan';
import { LiquidPath, type LiquidPathData } from '../parts/metering';
import type { TubeFlow } from '../parts/tubeFlow';
import type { Effective } from '../solve/effective';
import type { BranchData } from './data';
import { FlowRoot } from './flowRoot';

const { BLOCK_SIZE, CP_L, H_L, H_V, OUT_T, RHO_V, T_BUB, T_DEW } = L;

export type Role = 'evaporator' | 'condenser' | 'idle';
export type Walls = Float64Array | readonly number[];

/** Condensing coefficient falls with the gas share y as 1/(1 + k·y) (from memory, order of magnitude). */
const GAS_FILM = 3;
const GRAVITY = 9.80665;
/** K of wanted superheat under nought at which a valve is told to open fully whatever its coil does */
const HOPELESS = 25;
const nothing = (): void => {};

export class Branch {
  role: Role = 'evaporator';
  /** at rest and full of liquid on the high side */
  flooded = false;
  opening = 0.5;
  /** kg/s marched, and what its valve passes */
  flow = 0.01;
  valveFlow = 0.01;
  pIn = 1e6;
  pOut = 1e6;
  hIn = 3e5;
  hOut = 4e5;
  /** K of the refrigerant at the coil's liquid side and at its gas side */
  tLiquid = 285.5;
  tGas = 285.5;
  /** K over dew at the outlet of an evaporator; K under bubble at the outlet of a condenser */
  superheat = 5.5;
  subcooling = 5.5;
  /** density in its valve's liquid pipe, kg/m3 */
  rhoLiquid = 1000.5;
  mass = 0.5;
  energy = 0.5;
  readonly boiling: CoilMarch;
  readonly condensing: CoilMarch;
  readonly path = new LiquidPath(BLOCK_SIZE);
  readonly outlet = new Float64Array(BLOCK_SIZE);
  fan: FanResult = { flow: 0, power: 0, filterDrop: 0, coilDrop: 0, supplyPressure: 0, delivered: 0 };
  private readonly mean = new Float64Array(BLOCK_SIZE);
  private readonly out = new Float64Array(L.OUT_SIZE);
  private readonly tube: TubeFlow;
  private readonly root = new FlowRoot(3);
  private readonly held = new FlowRoot(0);
  private readonly rising: LiquidPathData;
  private readonly falling: LiquidPathData;

  constructor(
    readonly data: BranchData,
    readonly effective: Effective,
    readonly air: AirStream,
    private readonly fluid: FluidTable,
  ) {
    this.tube = tubeFlowBy(data.coil.correlations);
    this.boiling = new CoilMarch({ ...data.coil, role: 'evaporator' });
    this.condensing = new CoilMarch({ ...data.coil, role: 'condenser' });
    this.rising = data.valve;
    this.falling = { ...data.valve, lift: -data.valve.lift };
  }

  private readonly followers = (into: Float64Array): void => {
    into[0] = this.hOut;
    into[1] = this.mass;
    into[2] = this.energy;
  };

  /** Whether differences may rest on remembered slopes. */
  hurry(quick: boolean): void {
    this.root.quick = quick;
    this.held.quick = quick;
  }

  /** Forget what earlier searches learned. */
  forget(): void {
    this.root.forget();
    this.held.forget();
  }

  get march(): CoilMarch {
    return this.role === 'condenser' ? this.condensing : this.boiling;
  }

  /** Boil `m` kg/s that come at `hIn`. @param low block at the suction header @param before walls a step ago or null */
  evaporate(m: number, hIn: number, low: Float64Array, before: Walls | null, dt: number): void {
    const { fluid, mean, outlet, out, data } = this;
    const mm = m * m;
    this.role = 'evaporator';
    this.flooded = false;
    this.flow = m;
    this.hIn = hIn;
    this.pOut = low[L.P] + (data.gasDrop * mm) / low[RHO_V];
    const drop = data.coil.pressureDrop * mm * (0.5 / low[RHO_V]);
    this.pIn = this.pOut + drop;
    this.prepare(m, this.pOut + 0.5 * drop);
    const { boiling } = this;
    boiling.march(fluid, mean, this.tube, this.air, m, hIn, before, dt, 1);
    this.hOut = boiling.hOut;
    fluid.setPressure(this.pOut, outlet);
    fluid.state(outlet, this.hOut, out);
    this.tGas = out[OUT_T];
    this.superheat = out[OUT_T] - outlet[T_DEW];
    this.tLiquid = boiling.temperature[0];
    this.subcooling = 0;
    this.mass = boiling.mass;
    this.energy = boiling.energy;
  }

  /** Condense `m` kg/s of gas at `hIn`. @param hot block at the hot header @param nitrogen Pa of gas that does not condense */
  condense(m: number, hIn: number, hot: Float64Array, nitrogen: number, before: Walls | null, dt: number): void {
    const { fluid, mean, outlet, out, data } = this;
    const mm = m * m;
    this.role = 'condenser';
    this.flooded = false;
    this.flow = m;
    this.hIn = hIn;
    this.pIn = hot[L.P] - (data.gasDrop * mm) / hot[RHO_V];
    const drop = data.coil.pressureDrop * mm * (0.5 / hot[RHO_V]);
    this.pOut = this.pIn - drop;
    this.prepare(m, this.pIn - 0.5 * drop - nitrogen);
    const { condensing } = this;
    const penalty = 1 / (1 + (GAS_FILM * nitrogen) / hot[L.P]);
    condensing.march(fluid, mean, this.tube, this.air, m, hIn, before, dt, penalty);
    this.hOut = condensing.hOut;
    fluid.setPressure(this.pOut, outlet);
    fluid.state(outlet, this.hOut, out);
    this.tLiquid = out[OUT_T];
    this.subcooling = (outlet[H_L] - this.hOut) / outlet[CP_L];
    if (this.subcooling > 0) this.subcooling = outlet[T_BUB] - out[OUT_T];
    this.superheat = 0;
    this.tGas = condensing.temperature[0];
    this.mass = condensing.mass;
    this.energy = condensing.energy;
  }

  /** No flow: vapour at a header's pressure and the air's temperature. */
  rest(header: Float64Array): void {
    const { fluid, out, data } = this;
    const t = this.air.temperature;
    this.role = 'idle';
    this.flooded = false;
    this.flow = 0;
    this.valveFlow = 0;
    this.pIn = header[L.P];
    this.pOut = this.pIn;
    this.hOut = t > header[T_DEW] + 1e-6 ? fluid.hVapour(header, t) : header[H_V];
    this.hIn = this.hOut;
    fluid.state(header, this.hOut, out);
    this.tGas = out[OUT_T];
    this.tLiquid = out[OUT_T];
    this.superheat = 0;
    this.subcooling = 0;
    this.mass = data.coil.volume * out[L.OUT_RHO];
    this.energy = this.mass * this.hOut - this.pIn * data.coil.volume;
  }

  /** No flow, but hot gas reaches it: it has filled with liquid down to the air's temperature. */
  flood(header: Float64Array): void {
    const { fluid, out, data } = this;
    this.rest(header);
    this.flooded = true;
    const cold = header[T_BUB] - this.air.temperature;
    this.hOut = cold > 0 ? header[H_L] - header[CP_L] * cold : header[H_L];
    fluid.state(header, this.hOut, out);
    this.tLiquid = out[OUT_T];
    this.tGas = out[OUT_T];
    this.mass = data.coil.volume * out[L.OUT_RHO];
    this.energy = this.mass * this.hOut - this.pIn * data.coil.volume;
  }

  /**
   * Steady: the flow at which the outlet's superheat by the valve's two sensors is `target`, within what the valve can
   * pass at `minOpening` and fully open.
   * @param liquid block at the liquid header, `h` its enthalpy, `drier` further resistance before the valve
   * @param adrift K that the sensors add to the superheat they show
   */
  regulate(
    liquid: Float64Array,
    h: number,
    low: Float64Array,
    drier: number,
    target: number,
    adrift: number,
    minOpening: number,
  ): void {
    const wanted = target - adrift;
    // a valve at a stop stays there while the outlet says so: the cheaper question first
    const { stroke } = this.effective;
    if (this.opening >= stroke || wanted < -HOPELESS) {
      this.hold(liquid, h, low, drier, stroke);
      if (wanted < -HOPELESS || this.hOut >= this.wantedEnthalpy(wanted)) return;
    } else if (this.opening <= minOpening) {
      this.hold(liquid, h, low, drier, minOpening);
      if (this.hOut <= this.wantedEnthalpy(wanted)) return;
    }
    const { root } = this;
    // the flow that the heat at `m` would bring to the wanted state: heat hardly depends on the flow
    const miss = (m: number): number => {
      this.evaporate(m, h, low, null, 0);
      const next = (m * (this.hOut - h)) / (this.wantedEnthalpy(wanted) - h);
      return (next > 0 ? next : 0) - m;
    };
    const most = Math.sqrt((0.5 * low[L.P] * low[RHO_V]) / (this.data.gasDrop + this.data.coil.pressureDrop));
    const m = root.find(miss, this.followers, this.flow > 1e-6 ? this.flow : 0.01, most);
    const { path, effective, rising, fluid } = this;
    const full = path.capacityAt(fluid, rising, liquid, h, this.pIn, drier, rising.line, effective.metering, m);
    if (!(m < stroke * full)) this.hold(liquid, h, low, drier, stroke);
    else if (m < minOpening * full) this.hold(liquid, h, low, drier, minOpening);
    else {
      this.opening = m / full;
      this.settle(m);
    }
  }

  /** Steady flow of a valve that stands at `opening`: its outlet pressure follows the flow a little. */
  hold(liquid: Float64Array, h: number, low: Float64Array, drier: number, opening: number): void {
    const { path, effective, rising, fluid, data } = this;
    const drop = data.gasDrop + 0.5 * data.coil.pressureDrop;
    const area = opening * effective.metering;
    const miss = (m: number): number =>
      path.capacityAt(fluid, rising, liquid, h, low[L.P] + (drop * m * m) / low[RHO_V], drier, rising.line, area, m) -
      m;
    this.opening = opening;
    const m = this.held.find(miss, nothing, this.flow > 1e-6 ? this.flow : 0.01, Number.POSITIVE_INFINITY);
    this.evaporate(m > 1e-9 ? m : 1e-9, h, low, null, 0);
    this.valveFlow = this.flow;
    this.rhoLiquid = path.rhoMetering;
  }

  /** From the last march on to the root beside it. */
  private settle(m: number): void {
    const { root } = this;
    this.flow = m;
    this.valveFlow = m;
    this.hOut += root.follow(0);
    this.mass += root.follow(1);
    this.energy += root.follow(2);
    this.rhoLiquid = this.path.rhoMetering;
  }

  /** What the valve passes at its opening, kg/s, while `m` boil: the low side's pressure at its outlet follows `m`. */
  meter(liquid: Float64Array, h: number, low: Float64Array, drier: number, m: number): void {
    const drop = this.data.gasDrop + 0.5 * this.data.coil.pressureDrop;
    const pIn = low[L.P] + (drop * m * m) / low[RHO_V];
    const opening = this.opening * this.effective.metering;
    this.path.solve(this.fluid, this.rising, liquid, h, h, pIn, drier, this.rising.line, opening, this.valveFlow);
    this.valveFlow = this.path.flow;
    this.rhoLiquid = this.path.rhoMetering;
  }

  /**
   * The flow that condenses and passes the valve to the liquid header at once.
   * @param pLiquid Pa at the branching point @param law opening as a function of subcooling
   */
  drain(
    hIn: number,
    hot: Float64Array,
    nitrogen: number,
    pLiquid: number,
    law: (subcooling: number) => number,
    before: Walls | null,
    dt: number,
  ): void {
    const { fluid, effective, path, falling } = this;
    const miss = (m: number): number => {
      this.condense(m, hIn, hot, nitrogen, before, dt);
      this.opening = law(this.subcooling);
      const open = this.opening * effective.metering;
      return path.capacityAt(fluid, falling, this.outlet, this.hOut, pLiquid, 0, falling.line, open, m) - m;
    };
    this.settle(this.root.find(miss, this.followers, this.flow > 1e-6 ? this.flow : 0.005, Number.POSITIVE_INFINITY));
  }

  /** Static head from the branching point up to this branch, Pa. */
  head(density: number): number {
    return density * GRAVITY * this.data.valve.lift;
  }

  /** Enthalpy at which the outlet would show `superheat` K to sensors at the coil's liquid side and its outlet, J/kg. */
  private wantedEnthalpy(superheat: number): number {
    const { outlet, fluid } = this;
    const t = this.tLiquid + superheat;
    const dew = outlet[T_DEW];
    if (t > dew + 0.05) return fluid.hVapour(outlet, t);
    // a target at or under saturation asks for wet gas: carried on smoothly, a tenth of the latent heat a kelvin
    const edge = fluid.hVapour(outlet, dew + 0.05);
    return edge + (t - dew - 0.05) * 0.1 * (outlet[H_V] - outlet[H_L]);
  }

  private prepare(m: number, pressure: number): void {
    const { fluid, mean } = this;
    const { circuits, diameter, enhancement } = this.data.coil;
    fluid.setPressure(pressure, mean);
    fluid.setTransport(mean);
    const area = 0.7853981633974483 * diameter * diameter * circuits;
    this.tube.prepare(mean, m / area, diameter, enhancement, pressure / fluid.pCritical);
  }
}
