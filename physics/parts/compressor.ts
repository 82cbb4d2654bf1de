/**
 * Hermetic compressor: through-flow, power, discharge enthalpy, shell heat loss and internal leak-by.
 *
 * Equations
 * - volumetric efficiency 1 − c·(π^(1/n) − 1), n = 1.15, the clearance-volume form; for scrolls c is small
 *   (slope about −3…−4 % per unit pressure ratio, derived from a published ten-coefficient map, AHRI 540 form).
 * - overall efficiency (electrical power to isentropic work) η_peak / (1 + b·ln²(π/π_peak)) plus a constant loss;
 *   shape fitted to the same published map (0.72 at 2.3–2.8, 0.68 at 3.4).
 * - of wet suction gas a share of the liquid boils on hot metal before the pocket closes: it takes the place of gas, and
 *   its heat comes back from the discharge, so the first law over the compressor does not see it.
 * - leak-by is an area between discharge and suction inside the shell: ISO 6358 nozzle flow, so it grows with pressure
 *   and still passes gas in the off cycle. Its gas mixes ahead of the cylinder; the suction pipe does not feel it.
 * - the shell is one thermal mass between discharge gas and surrounding air.
 *
 * The cylinder's inlet enthalpy is the unknown of the circuit; that makes the leak explicit.
 */
import type { FluidTable } from '../fluids/fluid';
import * as layout from '../fluids/layout';
import { exp, ln } from '../math/elementary';

const { H_V, OUT_RHO, OUT_S, OUT_T, P } = layout;

export interface CompressorData {
  /** m3 a revolution */
  readonly displacement: number;
  /** rev/s at rated speed without slip */
  readonly ratedSpeed: number;
  readonly volumetricPeak: number;
  readonly volumetricLoss: number;
  readonly efficiencyPeak: number;
  readonly peakRatio: number;
  readonly efficiencyCurve: number;
  /** W at rated speed */
  readonly constantLoss: number;
  /** discharge gas to shell and shell to air, W/K */
  readonly gasToShell: number;
  readonly shellToAir: number;
  /** J/K */
  readonly shellCapacity: number;
  /** share of the liquid in wet suction gas that boils on hot metal before the pocket closes (ours, no source) */
  readonly wetBoiled: number;
  /** gas volume inside the shell on the suction side, m3 */
  readonly shellVolume: number;
}

/** Heat capacity of discharge gas, J/(kg K), nominal: the real one jumps where gas turns wet. */
const GAS_CP = 1300;
/** J/kg over which suction turns from dry to wet: droplets are seen a little before saturation, and a solver needs no kink. */
const MIST = 1500;
/** J/kg by which gas falls short of saturation; 0 where it does not, rounded off over `MIST`. */
export function short(below: number): number {
  return 0.5 * (below + Math.sqrt(below * below + MIST * MIST));
}

/** ISO 6358: critical pressure ratio and mass flux of a nozzle, kg/(s m2), for a gas of isentropic exponent near 1.2. */
const CRITICAL = 0.55;
export function nozzleFlux(pUp: number, rhoUp: number, pDown: number): number {
  if (pDown >= pUp) return 0;
  const choked = 0.65 * Math.sqrt(pUp * rhoUp);
  const r = pDown / pUp;
  if (r <= CRITICAL) return choked;
  const a = (r - CRITICAL) / (1 - CRITICAL);
  return choked * Math.sqrt(1 - a * a);
}

export class Compressor {
  /** kg/s through the cylinder, back through the leak, and net (cylinder − leak) */
  cylinderFlow = 0.5;
  leakFlow = 0.5;
  massFlow = 0.5;
  /** electrical power at nominal motor, W */
  power = 0.5;
  hDischarge = 0.5;
  tDischarge = 0.5;
  rhoDischarge = 0.5;
  /** enthalpy in the suction pipe, before the leak mixes in */
  hSuction = 0.5;
  shellHeat = 0.5;
  /** running speed over synchronous speed */
  speedShare = 0.5;
  shell = 0.5;
  private readonly out = new Float64Array(8);

  constructor(readonly data: CompressorData) {}

  /**
   * @param low block at cylinder suction pressure, `high` block at discharge pressure
   * @param hCylinder J/kg at the cylinder inlet
   * @param speed rev/s; @param leakArea m2
   * @param lossFactor multiplies the power (losses of a poorly fed motor)
   * @param slipPerWatt relative loss of speed per watt (induction motor), 0 for an inverter
   * @param shellOld shell temperature a step ago, K, or NaN for the steady state
   */
  run(
    fluid: FluidTable,
    low: Float64Array,
    high: Float64Array,
    hCylinder: number,
    speed: number,
    leakArea: number,
    lossFactor: number,
    slipPerWatt: number,
    ambient: number,
    shellOld: number,
    dt: number,
    volumetricFactor: number,
  ): void {
    const data = this.data;
    const out = this.out;
    const pLow = low[P];
    const pHigh = high[P];
    const ratio = pHigh > pLow ? pHigh / pLow : 1;
    const lnRatio = ln(ratio);
    const hV = low[H_V];
    const hTrapped = hCylinder + data.wetBoiled * short(hV - hCylinder);
    fluid.state(low, hTrapped, out);
    const rho = out[OUT_RHO];
    const s = out[OUT_S];
    const volumetric = data.volumetricPeak - data.volumetricLoss * (exp(lnRatio / 1.15) - 1);
    const swept = data.displacement * volumetricFactor * speed;
    const flowAtSync = swept * (volumetric > 0.05 ? volumetric : 0.05) * rho;
    const isentropic = ratio > 1 ? fluid.hOfS(high, s) - hTrapped : 0;
    const away = lnRatio - ln(data.peakRatio);
    const efficiency = data.efficiencyPeak / (1 + data.efficiencyCurve * away * away);
    const work = flowAtSync * (isentropic > 0 ? isentropic : 0);
    const powerAtSync = (work / efficiency + data.constantLoss * (speed / data.ratedSpeed)) * lossFactor;
    // flow and power both go with speed, so the slip that the power causes is closed-form
    this.speedShare = 1 / (1 + slipPerWatt * powerAtSync);
    this.power = powerAtSync * this.speedShare;
    const flow = flowAtSync * this.speedShare;

    const hAdiabatic = hCylinder + this.power / flow;
    fluid.state(high, hAdiabatic, out);
    const tAdiabatic = out[OUT_T];
    // series of gas stream and shell: never more heat than the stream can bring
    const gasToShell = data.gasToShell / (1 + data.gasToShell / (flow * GAS_CP));
    const held = !Number.isNaN(shellOld) ? data.shellCapacity / dt : 0;
    const before = held > 0 ? shellOld : 0;
    this.shell =
      (gasToShell * tAdiabatic + data.shellToAir * ambient + held * before) / (gasToShell + data.shellToAir + held);
    this.shellHeat = data.shellToAir * (this.shell - ambient);
    const intoShell = gasToShell * (tAdiabatic - this.shell);
    this.hDischarge = hAdiabatic - intoShell / flow;
    fluid.state(high, this.hDischarge, out);
    this.tDischarge = out[OUT_T];
    this.rhoDischarge = out[OUT_RHO];

    this.leakFlow = leakArea > 0 ? leakArea * nozzleFlux(pHigh, this.rhoDischarge, pLow) : 0;
    if (this.leakFlow > 0.9 * flow) this.leakFlow = 0.9 * flow;
    this.cylinderFlow = flow;
    this.massFlow = flow - this.leakFlow;
    this.hSuction = (flow * hCylinder - this.leakFlow * this.hDischarge) / this.massFlow;
  }
}
