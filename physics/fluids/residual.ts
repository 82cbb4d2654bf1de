import { exp } from '../math/elementary';
import { addCriticalTerm } from './criticalTerm';
import type { HelmholtzEquation } from './refrigerantData';

/** Places in the result of `ResidualTerms.evaluate`: the residual Helmholtz energy alphar and its derivatives. */
export const RES = {
  A: 0,
  /** delta d/d delta */
  AD: 1,
  /** tau d/d tau */
  AT: 2,
  /** delta^2 d2/d delta2 */
  ADD: 3,
  /** delta tau d2/(d delta d tau) */
  ADT: 4,
  /** tau^2 d2/d tau2 */
  ATT: 5,
} as const;
export const RES_SIZE = 6;

const MAX_D = 16;
const MAX_L = 8;
const GAUSSIAN_SIZE = 8;
const DOUBLE_SIZE = 6;

interface PowerTerms {
  readonly count: number;
  readonly n: Float64Array;
  readonly d: Float64Array;
  readonly t: Float64Array;
  readonly l: Float64Array;
  /** which of the distinct tau powers a term uses */
  readonly tau: Int32Array;
}

/** The residual part of one equation: sums of the published kinds of terms, at given tau and delta. */
export class ResidualTerms {
  private readonly power: PowerTerms;
  private readonly tauExponents: Float64Array;
  private readonly tauPowers: Float64Array;
  private readonly gaussian: Float64Array;
  private readonly gaussianCount: number;
  private readonly double: Float64Array;
  private readonly critical: Float64Array;
  private readonly deltaPowers = new Float64Array(MAX_D);
  private readonly damping = new Float64Array(MAX_L);
  private readonly maxD: number;
  private readonly maxL: number;

  constructor(
    data: Pick<HelmholtzEquation, 'residualPower' | 'residualGaussian' | 'residualDouble' | 'residualCritical'>,
  ) {
    const rows = data.residualPower;
    const double = data.residualDouble ?? [];
    const exponents = [...new Set([...rows, ...data.residualGaussian, ...double].map((r) => r[2]))];
    this.tauExponents = Float64Array.from(exponents);
    this.tauPowers = new Float64Array(exponents.length);
    this.power = {
      count: rows.length,
      n: Float64Array.from(rows, (r) => r[0]),
      d: Float64Array.from(rows, (r) => r[1]),
      t: Float64Array.from(rows, (r) => r[2]),
      l: Float64Array.from(rows, (r) => r[3]),
      tau: Int32Array.from(rows, (r) => exponents.indexOf(r[2])),
    };
    const powers = [...rows, ...double];
    this.maxL = Math.max(0, ...powers.map((r) => r[3]));
    this.maxD = Math.max(this.maxL, ...[...powers, ...data.residualGaussian].map((r) => r[1]));
    this.gaussian = Float64Array.from(data.residualGaussian.flatMap((g) => [...g, exponents.indexOf(g[2])]));
    this.gaussianCount = data.residualGaussian.length;
    this.double = Float64Array.from(double.flatMap((r) => [...r, exponents.indexOf(r[2])]));
    this.critical = Float64Array.from((data.residualCritical ?? []).flat());
  }

  /** Fills `res`, see `RES`. `lnTau` is ln(tau), which callers need too. */
  evaluate(tau: number, lnTau: number, delta: number, res: Float64Array): void {
    const { tauExponents, tauPowers, deltaPowers, damping, maxD, maxL } = this;
    for (let i = 0; i < tauExponents.length; i++) tauPowers[i] = exp(tauExponents[i] * lnTau);
    deltaPowers[0] = 1;
    for (let i = 1; i <= maxD; i++) deltaPowers[i] = deltaPowers[i - 1] * delta;
    damping[0] = 1;
    for (let i = 1; i <= maxL; i++) damping[i] = exp(-deltaPowers[i]);

    let a = 0;
    let ad = 0;
    let at = 0;
    let add = 0;
    let adt = 0;
    let att = 0;
    const { count, n, d, t, l, tau: tauIndex } = this.power;
    for (let i = 0; i < count; i++) {
      const li = l[i];
      const ti = t[i];
      const term = n[i] * deltaPowers[d[i] | 0] * tauPowers[tauIndex[i]] * damping[li | 0];
      const w = li > 0 ? li * deltaPowers[li | 0] : 0;
      const di = d[i] - w;
      a += term;
      ad += term * di;
      at += term * ti;
      add += term * (di * (di - 1) - li * w);
      adt += term * di * ti;
      att += term * ti * (ti - 1);
    }
    const g = this.gaussian;
    for (let i = 0; i < this.gaussianCount; i++) {
      const k = i * GAUSSIAN_SIZE;
      const dd = delta - g[k + 4];
      const dt = tau - g[k + 6];
      const eta = g[k + 3];
      const beta = g[k + 5];
      const term = g[k] * deltaPowers[g[k + 1] | 0] * tauPowers[g[k + 7] | 0] * exp(-eta * dd * dd - beta * dt * dt);
      const fd = g[k + 1] - 2 * eta * delta * dd;
      const ft = g[k + 2] - 2 * beta * tau * dt;
      a += term;
      ad += term * fd;
      at += term * ft;
      add += term * (fd * fd - g[k + 1] - 2 * eta * delta * delta);
      adt += term * fd * ft;
      att += term * (ft * ft - g[k + 2] - 2 * beta * tau * tau);
    }
    res[RES.A] = a;
    res[RES.AD] = ad;
    res[RES.AT] = at;
    res[RES.ADD] = add;
    res[RES.ADT] = adt;
    res[RES.ATT] = att;
    if (this.double.length > 0) this.addDouble(lnTau, res);
    const critical = this.critical;
    for (let k = 0; k < critical.length; k += 8) addCriticalTerm(critical, k, tau, delta, res);
  }

  /** Terms damped in density and in temperature; uses the powers that `evaluate` has just made. */
  private addDouble(lnTau: number, res: Float64Array): void {
    const { double, deltaPowers, damping, tauPowers } = this;
    for (let k = 0; k < double.length; k += DOUBLE_SIZE) {
      const d = double[k + 1];
      const t = double[k + 2];
      const l = double[k + 3];
      const m = double[k + 4];
      const tauM = exp(m * lnTau);
      const w = l > 0 ? l * deltaPowers[l | 0] : 0;
      const fd = d - w;
      const ft = t - m * tauM;
      const term = double[k] * deltaPowers[d | 0] * tauPowers[double[k + 5] | 0] * damping[l | 0] * exp(-tauM);
      res[RES.A] += term;
      res[RES.AD] += term * fd;
      res[RES.AT] += term * ft;
      res[RES.ADD] += term * (fd * (fd - 1) - l * w);
      res[RES.ADT] += term * fd * ft;
      res[RES.ATT] += term * (ft * (ft - 1) - m * m * tauM);
    }
  }
}
