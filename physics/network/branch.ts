/**
 * One exchanger of several: marched with its own through-flow, as an evaporator between liquid header and suction or as a
 * condenser between hot gas and liquid header. What it needs of the machine is passed in; what it found stays in fields.
 */
import type { FluidTable } from '../fluids/fluid';
import * as L from '../fluids/layout';
import type { AirStream } from '../parts/airStream';
import { CoilMarch } from '../parts/coil';
import type { FanResult } from '../parts/fan';
import { LiquidPath, type LiquidPathData } from '../parts/metering';
import { TubeFlow } from '../parts/tubeFlow';
import type { Effective } from '../solve/effective';
import type { BranchData } from './data';

const { BLOCK_SIZE, CP_L, H_L, H_V, OUT_T, RHO_V, T_BUB, T_DEW } = L;

export type Role = 'evaporator' | 'condenser' | 'idle';
export type Walls = Float64Array | readonly number[];

/** Condensing coefficient falls with the gas share y as 1/(1 + k·y) (from memory, order of magnitude). */
const GAS_FILM = 3;
const GRAVITY = 9.80665;
/** relative change of the flow at which a branch's own root counts as found */
const EXACT = 1e-11;
const ROUNDS = 40;

export class Branch {
  role: Role = 'evaporator';
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
  private readonly tube = new TubeFlow();
  /** slope of what a draining valve passes less what condenses, as last met; NaN = not yet */
  private drainSlope = Number.NaN;
  private readonly rising: LiquidPathData;
  private readonly falling: LiquidPathData;

  constructor(
    readonly data: BranchData,
    readonly effective: Effective,
    readonly air: AirStream,
    private readonly fluid: FluidTable,
  ) {
    this.boiling = new CoilMarch({ ...data.coil, role: 'evaporator' });
    this.condensing = new CoilMarch({ ...data.coil, role: 'condenser' });
    this.rising = data.valve;
    this.falling = { ...data.valve, lift: -data.valve.lift };
  }

  get march(): CoilMarch {
    return this.role === 'condenser' ? this.condensing : this.boiling;
  }

  /** Boil `m` kg/s that come at `hIn`. @param low block at the suction header @param before walls a step ago or null */
  evaporate(m: number, hIn: number, low: Float64Array, before: Walls | null, dt: number): void {
    const { fluid, mean, outlet, out, data } = this;
    const mm = m * m;
    this.role = 'evaporator';
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

  /** Forget what was learned on the way, so that a result depends on nothing but its inputs. */
  forget(): void {
    this.drainSlope = Number.NaN;
  }

  /** No flow: vapour at a header's pressure and the air's temperature. */
  rest(header: Float64Array): void {
    const { fluid, out, data } = this;
    const t = this.air.temperature;
    this.role = 'idle';
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

  /**
   * Steady: the flow at which the outlet's superheat by the valve's two sensors is `target`, within what the valve can
   * pass at `minOpening` and fully open. The flow's own effect on the heat is small, so this settles in a few marches.
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
    const area = this.effective.metering;
    const widest = (): number => {
      this.path.solve(this.fluid, this.rising, liquid, h, h, this.pIn, drier, this.rising.line, area, this.flow);
      return this.path.flow;
    };
    let m = this.flow > 1e-5 ? this.flow : 0.01;
    let most = 0;
    let last = 0;
    let lastMiss = 0;
    for (let k = 0; k < ROUNDS; k++) {
      this.evaporate(m, h, low, null, 0);
      most = widest();
      const wanted = this.wantedEnthalpy(target - adrift);
      // the flow that this heat would bring to the wanted state; a flooded or a dry outlet only moves it on
      const heat = m * (this.hOut - h);
      let next = heat / (wanted - h);
      const least = most * minOpening;
      if (!(next > 0) || adrift - target > 25) next = most;
      const miss = next - m;
      if (k > 0 && miss !== lastMiss) {
        const slope = (miss - lastMiss) / (m - last);
        // Aitken: the fixed point of a nearly constant heat; a coil that runs dry takes heat with its flow instead
        if (slope < -0.1 && slope > -40) next = m - miss / slope;
        else next = m + 4 * miss;
      }
      if (next > most) next = most;
      if (next < least) next = least;
      if (!(next > 0.2 * m)) next = 0.2 * m;
      if (next > 4 * m) next = 4 * m;
      const moved = next - m;
      if (moved < EXACT * m && moved > -EXACT * m) break;
      last = m;
      lastMiss = miss;
      m = next;
    }
    this.valveFlow = this.flow;
    this.opening = this.flow / (most > 0 ? most : 1);
    this.rhoLiquid = this.path.rhoMetering;
    if (this.opening < 1 - 1e-9) {
      // the pipe before the valve at this flow, not at the widest
      this.opening = this.path.openingFor(this.fluid, this.rising, liquid, h, this.pIn, this.flow) / area;
    }
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
    const { fluid, effective, path } = this;
    const passes = (m: number): number => {
      this.condense(m, hIn, hot, nitrogen, before, dt);
      this.opening = law(this.subcooling);
      const { hOut, falling } = this;
      const open = this.opening * effective.metering;
      path.solve(fluid, falling, this.outlet, hOut, hOut, pLiquid, 0, falling.line, open, m);
      return path.flow - m;
    };
    let low = 0;
    let fLow = 0;
    let high = 0;
    let fHigh = 0;
    let m = this.flow > 1e-6 ? this.flow : 0.005;
    let previous = 0;
    let fPrevious = 0;
    for (let k = 0; k < 60; k++) {
      const f = passes(m);
      if (f < EXACT * m && f > -EXACT * m) break;
      if (f > 0) {
        low = m;
        fLow = f;
      } else {
        high = m;
        fHigh = f;
      }
      let next = Number.NaN;
      if (k > 0 && f !== fPrevious) this.drainSlope = (f - fPrevious) / (m - previous);
      if (this.drainSlope < 0) next = m - f / this.drainSlope;
      else next = m * (f > 0 ? 1.002 : 0.998);
      previous = m;
      fPrevious = f;
      if (high > 0 && low > 0) {
        if (!(next > low && next < high))
          next = k % 3 === 0 ? 0.5 * (low + high) : (fLow * high - fHigh * low) / (fLow - fHigh);
        if (high - low < 1e-15) break;
      } else if (high === 0) {
        if (!(next > m)) next = 1.5 * m;
        if (next > 3 * m) next = 3 * m;
      } else {
        if (!(next < m)) next = 0.6 * m;
        if (next < 0.2 * m) next = 0.2 * m;
        if (m < 1e-9) break;
      }
      m = next;
    }
    this.valveFlow = this.flow;
    this.rhoLiquid = path.rhoMetering;
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
