import type { HelmholtzEquation } from '../refrigerantData';

/** R of the multi-fluid model, J/(mol K): CODATA 2018 (exact in the SI of 2019). */
export const GAS_CONSTANT = 8.31446261815324;

/** A component: its own equation, its share by mass, and what a first guess of its volatility needs. */
export interface BlendComponent {
  readonly equation: HelmholtzEquation;
  readonly massFraction: number;
  /** K */
  readonly tCritical: number;
  /** Pa */
  readonly pCritical: number;
  /** acentric factor */
  readonly acentric: number;
}

/** How two components mix; see mixingRules.ts. */
export interface BlendPair {
  readonly betaT: number;
  readonly gammaT: number;
  readonly betaV: number;
  readonly gammaV: number;
  /** Factor of the departure function. */
  readonly factor: number;
  /** n delta^d tau^t exp(-delta^l), as [n, d, t, l] */
  readonly departure: HelmholtzEquation['residualPower'];
}

/** A blend in the multi-fluid model: pairs in the order (0,1), (0,2), ..., (1,2), ... */
export interface BlendModel {
  readonly components: readonly BlendComponent[];
  readonly moleFractions: readonly number[];
  readonly pairs: readonly BlendPair[];
}

/** Molar composition of a blend given by mass. */
export function moleFractions(components: readonly BlendComponent[]): readonly number[] {
  const moles = components.map(({ massFraction, equation }) => massFraction / equation.molarMass);
  const sum = moles.reduce((a, b) => a + b, 0);
  return moles.map((n) => n / sum);
}
