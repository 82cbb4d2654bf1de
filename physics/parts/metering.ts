/**
 * The liquid path in series: filter-drier, liquid line with its lift, metering device. Given pressures at both ends it
 * finds the flow, so valve flow and compressor flow may differ in a transient. What the line gains of heat on its way is
 * told by its enthalpy at the metering device.
 *
 * Metering (orifice and electronic valve alike): m = C·A·√(2ρ(p_in − p_throat)). The throat cannot fall below a share of
 * the inlet liquid's bubble pressure: flashing chokes it, so the flow answers to inlet subcooling and hardly to the low
 * side (Aaron & Domanski, ASHRAE Trans. 96, 1990, from memory; the share is a parameter of the device). A two-phase
 * inlet enters with its homogeneous density.
 */
import type { FluidTable } from '../fluids/fluid';
import * as layout from '../fluids/layout';

const { OUT_Q, OUT_RHO, OUT_T, P } = layout;

export interface LiquidPathData {
  /** Pa = coefficient · m² / rho, of the clean drier and of the line */
  readonly drier: number;
  readonly line: number;
  /** m that the metering device lies above the condenser's outlet */
  readonly lift: number;
  /** flow area times coefficient at opening 1, m2 */
  readonly area: number;
  /** throat pressure over bubble pressure when choked */
  readonly throat: number;
}

const GRAVITY = 9.80665;
/** below this difference (Pa) the square root is made linear: the flow stays differentiable at zero */
const LINEAR = 2e4;

export class LiquidPath {
  flow = 0.5;
  pAfterDrier = 0.5;
  pMetering = 0.5;
  /** Pa in the throat of the metering device */
  pThroat = 0.5;
  tAfterDrier = 0.5;
  rhoAfterDrier = 0.5;
  qAfterDrier = 0.5;
  rhoIn = 0.5;
  rhoMetering = 0.5;
  tMetering = 0.5;
  qMetering = 0.5;
  private drier = 0.5;
  private line = 0.5;
  private hMetering = 0.5;
  private readonly block: Float64Array;
  private readonly out = new Float64Array(8);

  constructor(blockSize: number) {
    this.block = new Float64Array(blockSize);
  }

  /**
   * @param block1 pressure block at the path's inlet (total pressure), h J/kg there, hMetering J/kg at the metering device
   * @param pLow evaporator inlet pressure, Pa
   * @param drier coefficient of the drier as it is, `line` of the liquid line, `opening` 0…1 of the metering area
   * @param guess kg/s
   */
  solve(
    fluid: FluidTable,
    data: LiquidPathData,
    block1: Float64Array,
    h: number,
    hMetering: number,
    pLow: number,
    drier: number,
    line: number,
    opening: number,
    guess: number,
  ): void {
    this.drier = drier;
    this.line = line;
    this.hMetering = hMetering;
    fluid.state(block1, h, this.out);
    this.rhoIn = this.out[OUT_RHO];
    const p1 = block1[P];
    // a column that falls adds to its pressure: it may flow all the same
    if (p1 <= pLow + 1 && data.lift >= 0) {
      this.pAfterDrier = p1;
      this.pMetering = p1;
      this.rhoAfterDrier = this.rhoIn;
      this.rhoMetering = this.rhoIn;
      this.tAfterDrier = this.out[OUT_T];
      this.tMetering = this.tAfterDrier;
      this.qAfterDrier = this.out[OUT_Q];
      this.qMetering = this.qAfterDrier;
      this.flow = 0;
      return;
    }
    // The capacity of the device falls as the flow grows (its inlet pressure does): one root, bracketed.
    let low = 0;
    let high = this.passes(fluid, data, p1, h, pLow, opening, 0);
    let fLow = high;
    let fHigh = this.passes(fluid, data, p1, h, pLow, opening, high) - high;
    let m = high;
    if (fHigh < -1e-13 * high) {
      m = guess > 0 && guess < high ? guess : 0.7 * high;
      let side = 0;
      for (let k = 0; k < 60; k++) {
        const f = this.passes(fluid, data, p1, h, pLow, opening, m) - m;
        if (f > -1e-13 * high && f < 1e-13 * high) break;
        if (f > 0) {
          low = m;
          fLow = f;
          if (side === 1) fHigh *= 0.5;
          side = 1;
        } else {
          high = m;
          fHigh = f;
          if (side === -1) fLow *= 0.5;
          side = -1;
        }
        if (high - low < 1e-14 * high) break;
        m = (fLow * high - fHigh * low) / (fLow - fHigh);
        if (!(m > low && m < high)) m = 0.5 * (low + high);
      }
    }
    this.passes(fluid, data, p1, h, pLow, opening, m);
    this.flow = m;
  }

  /** What the metering device passes at `opening` if `m` kg/s flow through drier and line, kg/s. Arguments as of `solve`. */
  capacityAt(
    fluid: FluidTable,
    data: LiquidPathData,
    block1: Float64Array,
    h: number,
    pLow: number,
    drier: number,
    line: number,
    opening: number,
    m: number,
  ): number {
    this.drier = drier;
    this.line = line;
    this.hMetering = h;
    fluid.state(block1, h, this.out);
    this.rhoIn = this.out[OUT_RHO];
    return this.passes(fluid, data, block1[P], h, pLow, opening, m);
  }

  /** What the metering device would pass if `m` flowed through drier and line, kg/s. */
  private passes(
    fluid: FluidTable,
    data: LiquidPathData,
    p1: number,
    h: number,
    pLow: number,
    opening: number,
    m: number,
  ): number {
    const out = this.out;
    const block = this.block;
    const p2 = p1 - (this.drier * m * m) / this.rhoIn;
    if (p2 <= pLow && (data.lift >= 0 || p2 <= 0.5 * pLow)) {
      this.pAfterDrier = pLow;
      this.pMetering = pLow;
      return 0;
    }
    fluid.setPressure(p2, block);
    fluid.state(block, h, out);
    this.pAfterDrier = p2;
    this.tAfterDrier = out[OUT_T];
    this.rhoAfterDrier = out[OUT_RHO];
    this.qAfterDrier = out[OUT_Q];
    const p3 = p2 - (this.line * m * m) / out[OUT_RHO] - out[OUT_RHO] * GRAVITY * data.lift;
    if (p3 <= pLow) {
      this.pMetering = pLow;
      return 0;
    }
    fluid.setPressure(p3, block);
    fluid.state(block, this.hMetering, out);
    this.pMetering = p3;
    this.rhoMetering = out[OUT_RHO];
    this.tMetering = out[OUT_T];
    this.qMetering = out[OUT_Q];
    const bubble = out[OUT_Q] >= 0 ? p3 : fluid.pBubble(out[OUT_T]);
    const choked = data.throat * (bubble < p3 ? bubble : p3);
    const gap = choked - pLow;
    const throat = pLow + 0.5 * (gap + Math.sqrt(gap * gap + 1e9));
    this.pThroat = throat < p3 ? throat : p3;
    const drop = p3 - this.pThroat;
    const root = drop / Math.sqrt(Math.sqrt(drop * drop + LINEAR * LINEAR));
    return data.area * opening * Math.sqrt(2 * out[OUT_RHO]) * root;
  }
}
