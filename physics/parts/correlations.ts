/**
 * Other published correlations for what happens inside the tubes of a coil. A machine that follows them is no better and
 * no worse than ours; it is another model of the same machine, for finding out what conclusions hang on our choice.
 *
 * Single phase: Gnielinski, Int. Chem. Eng. 16 (1976). Condensing: Cavallini & Zecchin, 5th Int. Heat Transfer Conf.
 * (1974). Evaporating: Kandlikar, J. Heat Transfer 112 (1990), its two branches blended smoothly. Void fraction: Thom
 * (1964) in the form of Butterworth, Int. J. Multiphase Flow 1 (1975). Constants from memory.
 */
import * as layout from '../fluids/layout';
import { exp, ln } from '../math/elementary';
import { DRY_OUT, NOMINAL_FLUX, TubeFlow } from './tubeFlow';

const { CP_L, CP_V, H_L, H_V, K_L, K_V, MU_L, MU_V, RHO_L, RHO_V } = layout;

/** Which published correlations a machine follows: ours, or the others. */
export type Correlations = 'own' | 'other';

/** Fluid factor of Kandlikar's boiling term: 1.5…2.2 for common refrigerants, one for all here. */
const FLUID_FACTOR = 1.6;
/** How sharply the two branches of boiling give way to one another. */
const SHARPNESS = 6;

function power(base: number, exponent: number): number {
  return exp(exponent * ln(base));
}

function gnielinski(reynolds: number, prandtl: number): number {
  const re = reynolds > 3000 ? reynolds : 3000;
  const root = 0.79 * ln(re) - 1.64;
  const eighth = 1 / (8 * root * root);
  return (eighth * (re - 1000) * prandtl) / (1 + 12.7 * Math.sqrt(eighth) * (power(prandtl, 2 / 3) - 1));
}

class OtherTubeFlow extends TubeFlow {
  private condensingLiquid = 0.5;
  private densityRoot = 0.5;
  private allLiquid2 = 0.5;
  private boiling07 = 0.5;

  override prepare(
    block: Float64Array,
    massFlux: number,
    diameter: number,
    enhancement: number,
    reducedPressure: number,
  ): void {
    super.prepare(block, massFlux, diameter, enhancement, reducedPressure);
    const flux = massFlux > 5 ? massFlux : 5;
    const kLiquid = block[K_L];
    const kVapour = block[K_V];
    const prandtlLiquid = (block[CP_L] * block[MU_L]) / kLiquid;
    const prandtlVapour = (block[CP_V] * block[MU_V]) / kVapour;
    const reLiquid = (flux * diameter) / block[MU_L];
    const perNusselt = (enhancement * kLiquid) / diameter;
    this.liquid = perNusselt * gnielinski(reLiquid, prandtlLiquid);
    this.vapour = ((enhancement * kVapour) / diameter) * gnielinski((flux * diameter) / block[MU_V], prandtlVapour);
    this.condensingLiquid = perNusselt * 0.05 * power(reLiquid, 0.8) * power(prandtlLiquid, 1 / 3);
    this.densityRoot = Math.sqrt(block[RHO_L] / block[RHO_V]);
    this.allLiquid2 = perNusselt * 0.023 * power(reLiquid, 0.8) * power(prandtlLiquid, 0.4);
    this.boiling07 = power(NOMINAL_FLUX / (flux * (block[H_V] - block[H_L])), 0.7) * FLUID_FACTOR;
  }

  override condensing(quality: number): number {
    const x = quality < 0.02 ? 0.02 : quality > 0.95 ? 0.95 : quality;
    return this.condensingLiquid * power(1 - x + x * this.densityRoot, 0.8);
  }

  override evaporating(quality: number): number {
    const x = quality < 0.03 ? 0.03 : quality > DRY_OUT ? DRY_OUT : quality;
    const lnRest = ln(1 - x);
    const lnConvection = 0.8 * (lnRest - ln(x)) - ln(this.densityRoot);
    const rest = exp(0.8 * lnRest);
    const nucleate = 0.6683 * exp(-0.2 * lnConvection) + 1058 * this.boiling07;
    const convective = 1.136 * exp(-0.9 * lnConvection) + 667.2 * this.boiling07;
    const both = power(power(nucleate, SHARPNESS) + power(convective, SHARPNESS), 1 / SHARPNESS);
    const wet = this.allLiquid2 * rest * both;
    if (quality <= DRY_OUT) return wet;
    const dry = quality >= 1 ? 1 : (quality - DRY_OUT) / (1 - DRY_OUT);
    return wet + (this.vapour - wet) * dry;
  }
}

export function tubeFlowBy(correlations: Correlations = 'own'): TubeFlow {
  return correlations === 'own' ? new TubeFlow() : new OtherTubeFlow();
}

/** How much more room liquid takes for its share of the flow than without slip: the ratio that `meanVoid` asks for. */
export function slipRatio(block: Float64Array, correlations: Correlations = 'own'): number {
  const density = ln(block[RHO_V] / block[RHO_L]);
  if (correlations === 'own') return exp((2 / 3) * density);
  return exp(0.89 * density + 0.18 * ln(block[MU_L] / block[MU_V]));
}
