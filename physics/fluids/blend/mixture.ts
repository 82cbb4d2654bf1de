import { ln } from '../../math/elementary';
import { IDEAL, IDEAL_SIZE, IdealTerms } from '../ideal';
import { RES, RES_SIZE, ResidualTerms } from '../residual';
import { type BlendModel, GAS_CONSTANT } from './blendModel';
import { MixingRules } from './mixingRules';

/** Step of a composition in finite differences of the mixing rules; they are smooth and of order one. */
const NUDGE = 1e-6;

/**
 * The multi-fluid model at any composition: pressure and fugacities of one phase with their derivatives, enthalpy and
 * entropy. For phase equilibrium only (a phase of the blend's own composition is one flat equation, see
 * blendEquation.ts).
 * alphar = sum x_i alphar_i(tau, delta) + sum_{i<j} x_i x_j F_ij alphar_ij(tau, delta); fugacities by
 * O. Kunz, W. Wagner, J. Chem. Eng. Data 57 (2012) 3032-3091, appendix B.
 */
export class Mixture {
  readonly count: number;
  readonly molarMasses: Float64Array;
  /** Results of the last `evaluate`: Pa */
  pressure = 0;
  /** p/(rho R T), and its derivatives by ln rho and ln T */
  z = 0;
  zRho = 0;
  zT = 0;
  readonly zX: Float64Array;
  /** ln of each component's fugacity in Pa, and its derivatives by ln rho, ln T and (i * count + j) by x_j */
  readonly lnFugacity: Float64Array;
  readonly fRho: Float64Array;
  readonly fT: Float64Array;
  readonly fX: Float64Array;
  private readonly rules: MixingRules;
  private readonly residual: readonly ResidualTerms[];
  private readonly ideal: readonly IdealTerms[];
  /** Departure terms of a pair, times its factor; null where there are none. */
  private readonly departures: readonly (ResidualTerms | null)[];
  private readonly tPure: Float64Array;
  private readonly rhoPure: Float64Array;
  private readonly res = new Float64Array(RES_SIZE);
  /** The sum of all parts of alphar. */
  private readonly total = new Float64Array(RES_SIZE);
  private readonly part = new Float64Array(IDEAL_SIZE);
  /** d/dx_i at constant tau and delta of alphar, of delta alphar_delta and of tau alphar_tau */
  private readonly a: Float64Array;
  private readonly ad: Float64Array;
  private readonly at: Float64Array;
  /** departure of each pair, d2 alphar/(dx_i dx_j) */
  private readonly mixed: Float64Array;
  /** n dv/dn_i over v and n dT/dn_i over T, and their derivatives by x_j */
  private readonly byVolume: Float64Array;
  private readonly byTemperature: Float64Array;
  private readonly byVolumeX: Float64Array;
  private readonly byTemperatureX: Float64Array;
  private readonly shifted: Float64Array;

  constructor(model: BlendModel) {
    const { components, pairs } = model;
    const n = components.length;
    this.count = n;
    this.molarMasses = Float64Array.from(components, ({ equation }) => equation.molarMass);
    this.rules = new MixingRules(model);
    this.residual = components.map(({ equation }) => new ResidualTerms(equation));
    this.ideal = components.map(({ equation }) => new IdealTerms(equation));
    this.departures = pairs.map(({ departure, factor }) => {
      if (departure.length === 0) return null;
      const residualPower = departure.map(([c, d, t, l]) => [factor * c, d, t, l] as const);
      return new ResidualTerms({ residualPower, residualGaussian: [] });
    });
    this.tPure = Float64Array.from(components, ({ equation }) => equation.tReducing);
    this.rhoPure = Float64Array.from(components, ({ equation }) => equation.rhoReducing);
    const vector = () => new Float64Array(n);
    const matrix = () => new Float64Array(n * n);
    [this.zX, this.lnFugacity, this.fRho, this.fT] = [vector(), vector(), vector(), vector()];
    [this.a, this.ad, this.at, this.shifted] = [vector(), vector(), vector(), vector()];
    [this.byVolume, this.byTemperature] = [vector(), vector()];
    [this.fX, this.mixed, this.byVolumeX, this.byTemperatureX] = [matrix(), matrix(), matrix(), matrix()];
  }

  /** Reducing volume of a composition, m3/mol. */
  volume(x: Float64Array): number {
    this.rules.set(x);
    return this.rules.vReducing;
  }

  /** Pressure, fugacities and all their derivatives at T (K), rho (mol/m3) and a composition by moles. */
  evaluate(temperature: number, rho: number, x: Float64Array): void {
    const { count, total, a, ad, at, mixed, byVolume, byTemperature } = this;
    const { tReducing, vReducing } = this.sumTerms(temperature, rho, x);
    const { tSlopes, vSlopes } = this.rules;
    const A = total[RES.A];
    const AD = total[RES.AD];
    const AT = total[RES.AT];
    const ADD = total[RES.ADD];
    const ADT = total[RES.ADT];
    const ATT = total[RES.ATT];
    const rt = GAS_CONSTANT * temperature;
    this.pressure = rho * rt * (1 + AD);
    this.z = 1 + AD;
    this.zRho = AD + ADD;
    this.zT = -ADT;
    let mean = 0;
    let meanD = 0;
    let meanT = 0;
    for (let i = 0; i < count; i++) {
      mean += x[i] * a[i];
      meanD += x[i] * ad[i];
      meanT += x[i] * at[i];
    }
    const lnIdeal = ln(rho * rt);
    for (let i = 0; i < count; i++) {
      const v = 1 + byVolume[i];
      const w = byTemperature[i];
      this.lnFugacity[i] = ln(x[i]) + lnIdeal + A + AD * v + AT * w + a[i] - mean;
      // By ln delta and ln tau at constant composition, without the ideal part.
      const byDelta = AD + (AD + ADD) * v + ADT * w + ad[i] - meanD;
      const byTau = AT + ADT * v + (AT + ATT) * w + at[i] - meanT;
      this.fRho[i] = 1 + byDelta;
      this.fT[i] = 1 - byTau;
      for (let j = 0; j < count; j++) {
        const k = i * count + j;
        let spread = 0;
        for (let l = 0; l < count; l++) spread += x[l] * mixed[l * count + j];
        const explicit =
          a[j] +
          ad[j] * v +
          AD * this.byVolumeX[k] +
          at[j] * w +
          AT * this.byTemperatureX[k] +
          mixed[k] -
          (a[j] + spread);
        this.fX[k] =
          explicit + (i === j ? 1 / x[i] : 0) + (byDelta * vSlopes[j]) / vReducing + (byTau * tSlopes[j]) / tReducing;
      }
      this.zX[i] = ad[i] + ((AD + ADD) * vSlopes[i]) / vReducing + (ADT * tSlopes[i]) / tReducing;
    }
  }

  /** Enthalpy (J/mol) and entropy (J/(mol K)) of a phase, with the reference constants of the components' equations. */
  caloric(temperature: number, rho: number, x: Float64Array): { h: number; s: number } {
    this.evaluate(temperature, rho, x);
    const { part, tPure, rhoPure, total } = this;
    let h = 1 + total[RES.AT] + total[RES.AD];
    let s = total[RES.AT] - total[RES.A];
    for (let i = 0; i < this.count; i++) {
      const tau = tPure[i] / temperature;
      this.ideal[i].evaluate(tau, ln(tau), ln(rho / rhoPure[i]), part);
      h += x[i] * part[IDEAL.AT];
      s += x[i] * (part[IDEAL.AT] - part[IDEAL.A] - ln(x[i]));
    }
    return { h: GAS_CONSTANT * temperature * h, s: GAS_CONSTANT * s };
  }

  /** Sets the mixing rules, `total`, and what of it belongs to each component and pair. */
  private sumTerms(temperature: number, rho: number, x: Float64Array): MixingRules {
    const { count, rules, res, total, a, ad, at, mixed } = this;
    this.setRules(x);
    const tau = rules.tReducing / temperature;
    const lnTau = ln(tau);
    const delta = rho * rules.vReducing;
    total.fill(0);
    for (let i = 0; i < count; i++) {
      this.residual[i].evaluate(tau, lnTau, delta, res);
      a[i] = res[RES.A];
      ad[i] = res[RES.AD];
      at[i] = res[RES.AT];
      for (let k = 0; k < RES_SIZE; k++) total[k] += x[i] * res[k];
    }
    let pair = 0;
    for (let i = 0; i < count; i++) {
      for (let j = i + 1; j < count; j++, pair++) {
        const departure = this.departures[pair];
        if (departure === null) continue;
        departure.evaluate(tau, lnTau, delta, res);
        a[i] += x[j] * res[RES.A];
        a[j] += x[i] * res[RES.A];
        ad[i] += x[j] * res[RES.AD];
        ad[j] += x[i] * res[RES.AD];
        at[i] += x[j] * res[RES.AT];
        at[j] += x[i] * res[RES.AT];
        mixed[i * count + j] = res[RES.A];
        mixed[j * count + i] = res[RES.A];
        const weight = x[i] * x[j];
        for (let k = 0; k < RES_SIZE; k++) total[k] += weight * res[k];
      }
    }
    return rules;
  }

  /** The mixing rules at x, with the relative changes by amounts and how these change with the composition. */
  private setRules(x: Float64Array): void {
    const { count, rules, shifted, byVolume, byTemperature, byVolumeX, byTemperatureX } = this;
    const relative = (composition: Float64Array, i: number, slopes: Float64Array, value: number): number => {
      let mean = 0;
      for (let k = 0; k < count; k++) mean += composition[k] * slopes[k];
      return (slopes[i] - mean) / value;
    };
    rules.set(x);
    for (let i = 0; i < count; i++) {
      byVolume[i] = relative(x, i, rules.vSlopes, rules.vReducing);
      byTemperature[i] = relative(x, i, rules.tSlopes, rules.tReducing);
    }
    for (let j = 0; j < count; j++) {
      shifted.set(x);
      shifted[j] += NUDGE;
      rules.set(shifted);
      for (let i = 0; i < count; i++) {
        const v = relative(shifted, i, rules.vSlopes, rules.vReducing);
        const t = relative(shifted, i, rules.tSlopes, rules.tReducing);
        byVolumeX[i * count + j] = (v - byVolume[i]) / NUDGE;
        byTemperatureX[i * count + j] = (t - byTemperature[i]) / NUDGE;
      }
    }
    rules.set(x);
  }
}
