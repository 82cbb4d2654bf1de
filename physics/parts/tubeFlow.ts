/**
 * Heat transfer coefficients inside the tubes of a coil, W/(m2 K).
 *
 * Single phase: Dittus–Boelter (1930), Nu = 0.023 Re^0.8 Pr^n. Condensing: Shah, Int. J. Heat Mass Transfer 22 (1979).
 * Evaporating: Gungor & Winterton, Chem. Eng. Res. Des. 65 (1987), with dry-out blended in above a quality of 0.85
 * (the blend is ours). An `enhancement` factor stands for microfins. Properties on the saturation lines.
 */
import * as layout from '../fluids/layout';
import { exp, ln } from '../math/elementary';

const { CP_L, CP_V, H_L, H_V, K_L, K_V, MU_L, MU_V, RHO_L, RHO_V } = layout;

/** Quality above which the wall begins to dry. */
export const DRY_OUT = 0.85;
/** Nominal heat flux of the boiling number, W/m2: the flux itself would make the march implicit. */
export const NOMINAL_FLUX = 9000;

function power(base: number, exponent: number): number {
  return exp(exponent * ln(base));
}

export class TubeFlow {
  vapour = 0.5;
  liquid = 0.5;
  private allLiquid = 0.5;
  private condensingFactor = 0.5;
  private boilingTerm = 0.5;
  private densityTerm = 0.5;

  /**
   * Prepare for one coil at one pressure. `block` needs its transport slots filled.
   * @param massFlux kg/(m2 s) in each tube; floored so that a trickle keeps a finite (small) coefficient
   * @param diameter inside diameter, m
   * @param reducedPressure p / p_critical
   */
  prepare(block: Float64Array, massFlux: number, diameter: number, enhancement: number, reducedPressure: number): void {
    const flux = massFlux > 5 ? massFlux : 5;
    const kLiquid = block[K_L];
    const kVapour = block[K_V];
    const prandtlLiquid = (block[CP_L] * block[MU_L]) / kLiquid;
    const prandtlVapour = (block[CP_V] * block[MU_V]) / kVapour;
    const nusseltLiquid = 0.023 * power((flux * diameter) / block[MU_L], 0.8) * power(prandtlLiquid, 0.4);
    const nusseltVapour = 0.023 * power((flux * diameter) / block[MU_V], 0.8) * power(prandtlVapour, 0.4);
    this.allLiquid = (enhancement * nusseltLiquid * kLiquid) / diameter;
    this.liquid = this.allLiquid;
    this.vapour = (enhancement * nusseltVapour * kVapour) / diameter;
    this.condensingFactor = 3.8 / power(reducedPressure, 0.38);
    const boiling = NOMINAL_FLUX / (flux * (block[H_V] - block[H_L]));
    this.boilingTerm = 3000 * power(boiling, 0.86);
    this.densityTerm = 1.12 * power(block[RHO_L] / block[RHO_V], 0.41);
  }

  condensing(quality: number): number {
    const x = quality < 0.02 ? 0.02 : quality > 0.95 ? 0.95 : quality;
    const lnRest = ln(1 - x);
    return this.allLiquid * (exp(0.8 * lnRest) + this.condensingFactor * exp(0.76 * ln(x) + 0.04 * lnRest));
  }

  evaporating(quality: number): number {
    const x = quality < 0.03 ? 0.03 : quality > DRY_OUT ? DRY_OUT : quality;
    const lnRest = ln(1 - x);
    const wet =
      this.allLiquid * exp(0.8 * lnRest) * (1 + this.boilingTerm + this.densityTerm * exp(0.75 * (ln(x) - lnRest)));
    if (quality <= DRY_OUT) return wet;
    const dry = quality >= 1 ? 1 : (quality - DRY_OUT) / (1 - DRY_OUT);
    return wet + (this.vapour - wet) * dry;
  }
}
