import { ln } from '../../math/elementary';
import { IDEAL, IDEAL_SIZE, IdealTerms } from '../ideal';
import { RES, RES_SIZE, ResidualTerms } from '../residual';
import { type BlendModel, GAS_CONSTANT } from './blendModel';
import { MixingRules } from './mixingRules';

/**
 * The multi-fluid model at any composition: pressure, fugacities, enthalpy and entropy of one phase. Slow; for phase
 * equilibrium only (a phase of the blend's own composition is one flat equation, see blendEquation.ts).
 * alphar = sum x_i alphar_i(tau, delta) + sum_{i<j} x_i x_j F_ij alphar_ij(tau, delta); fugacities by
 * O. Kunz, W. Wagner, J. Chem. Eng. Data 57 (2012) 3032-3091, appendix B.
 */
export class Mixture {
  readonly count: number;
  readonly molarMasses: Float64Array;
  /** ln of each component's fugacity in Pa, of the last `evaluate`. */
  readonly lnFugacity: Float64Array;
  /** Pa, of the last `evaluate` */
  pressure = 0;
  private readonly rules: MixingRules;
  private readonly residual: readonly ResidualTerms[];
  private readonly ideal: readonly IdealTerms[];
  /** Departure terms of a pair, times its factor; null where there are none. */
  private readonly departures: readonly (ResidualTerms | null)[];
  private readonly tPure: Float64Array;
  private readonly rhoPure: Float64Array;
  private readonly res = new Float64Array(RES_SIZE);
  private readonly part = new Float64Array(IDEAL_SIZE);
  /** d alphar / d x_i at constant tau and delta */
  private readonly slopes: Float64Array;

  constructor(model: BlendModel) {
    const { components, pairs } = model;
    this.count = components.length;
    this.molarMasses = Float64Array.from(components, ({ equation }) => equation.molarMass);
    this.lnFugacity = new Float64Array(this.count);
    this.slopes = new Float64Array(this.count);
    this.rules = new MixingRules(model);
    this.residual = components.map(({ equation }) => new ResidualTerms(equation));
    this.ideal = components.map(({ equation }) => new IdealTerms(equation));
    this.departures = pairs.map(({ departure, factor }) => {
      if (departure.length === 0) return null;
      const residualPower = departure.map(([n, d, t, l]) => [factor * n, d, t, l] as const);
      return new ResidualTerms({ residualPower, residualGaussian: [] });
    });
    this.tPure = Float64Array.from(components, ({ equation }) => equation.tReducing);
    this.rhoPure = Float64Array.from(components, ({ equation }) => equation.rhoReducing);
  }

  /** Reducing volume of a composition, m3/mol. */
  volume(x: Float64Array): number {
    this.rules.set(x);
    return this.rules.vReducing;
  }

  /** Pressure and fugacities at T (K), rho (mol/m3) and a composition by moles. */
  evaluate(temperature: number, rho: number, x: Float64Array): void {
    const { count, rules, res, slopes, lnFugacity } = this;
    rules.set(x);
    const { tReducing, vReducing, tSlopes, vSlopes } = rules;
    const tau = tReducing / temperature;
    const lnTau = ln(tau);
    const delta = rho * vReducing;
    let a = 0;
    let ad = 0;
    let at = 0;
    for (let i = 0; i < count; i++) {
      this.residual[i].evaluate(tau, lnTau, delta, res);
      slopes[i] = res[RES.A];
      a += x[i] * res[RES.A];
      ad += x[i] * res[RES.AD];
      at += x[i] * res[RES.AT];
    }
    let k = 0;
    for (let i = 0; i < count; i++) {
      for (let j = i + 1; j < count; j++, k++) {
        const departure = this.departures[k];
        if (departure === null) continue;
        departure.evaluate(tau, lnTau, delta, res);
        const weight = x[i] * x[j];
        slopes[i] += x[j] * res[RES.A];
        slopes[j] += x[i] * res[RES.A];
        a += weight * res[RES.A];
        ad += weight * res[RES.AD];
        at += weight * res[RES.AT];
      }
    }
    let mean = 0;
    for (let i = 0; i < count; i++) mean += x[i] * slopes[i];
    const rt = GAS_CONSTANT * temperature;
    const lnIdeal = ln(rho * rt);
    for (let i = 0; i < count; i++) {
      const byVolume = ad * (1 + vSlopes[i] / vReducing);
      const byTemperature = (at * tSlopes[i]) / tReducing;
      lnFugacity[i] = ln(x[i]) + lnIdeal + a + byVolume + byTemperature + slopes[i] - mean;
    }
    this.pressure = rho * rt * (1 + ad);
    res[RES.A] = a;
    res[RES.AD] = ad;
    res[RES.AT] = at;
  }

  /** Enthalpy (J/mol) and entropy (J/(mol K)) of a phase, with the reference constants of the components' equations. */
  caloric(temperature: number, rho: number, x: Float64Array): { h: number; s: number } {
    this.evaluate(temperature, rho, x);
    const { part, tPure, rhoPure, res } = this;
    const a = res[RES.A];
    const ad = res[RES.AD];
    const at = res[RES.AT];
    let h = 1 + at + ad;
    let s = at - a;
    for (let i = 0; i < this.count; i++) {
      const tau = tPure[i] / temperature;
      this.ideal[i].evaluate(tau, ln(tau), ln(rho / rhoPure[i]), part);
      h += x[i] * part[IDEAL.AT];
      s += x[i] * (part[IDEAL.AT] - part[IDEAL.A] - ln(x[i]));
    }
    return { h: GAS_CONSTANT * temperature * h, s: GAS_CONSTANT * s };
  }
}
