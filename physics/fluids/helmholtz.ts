import { exp, ln } from '../math/elementary';
import type { RefrigerantData } from './refrigerantData';

/**
 * Evaluator of multiparameter Helmholtz-energy equations of state, a(T, rho)/(RT) = alpha0 + alphar.
 * Relations between the derivatives and the properties: R. Span, "Multiparameter Equations of State", Springer (2000),
 * table 3.9. Mass basis, SI; the reference state is the published equation's own (the offsets are added elsewhere).
 */

/** Places in the result of `evaluate`. */
export const EOS = {
  /** Pa */
  P: 0,
  /** J/kg, raw reference state */
  H: 1,
  /** J/(kg K), raw reference state */
  S: 2,
  CV: 3,
  CP: 4,
  /** speed of sound, m/s (NaN where the fluid is unstable) */
  W: 5,
  /** (dp/drho)_T */
  P_RHO: 6,
  /** (dp/dT)_rho */
  P_T: 7,
  ALPHA0: 8,
  /** d alpha0 / d tau */
  ALPHA0_TAU: 9,
  ALPHAR: 10,
  /** d alphar / d delta */
  ALPHAR_DELTA: 11,
  /** d alphar / d tau */
  ALPHAR_TAU: 12,
} as const;

const MAX_D = 16;
const MAX_L = 8;

interface PowerTerms {
  readonly count: number;
  readonly n: Float64Array;
  readonly d: Float64Array;
  readonly t: Float64Array;
  readonly l: Float64Array;
  /** which of the distinct tau powers a term uses */
  readonly tau: Int32Array;
}

export class Helmholtz {
  readonly data: RefrigerantData;
  /** Result of the last `evaluate`, see `EOS`. */
  readonly out = new Float64Array(13);
  private readonly power: PowerTerms;
  private readonly tauExponents: Float64Array;
  private readonly tauPowers: Float64Array;
  private readonly gaussian: Float64Array;
  private readonly gaussianCount: number;
  private readonly idealPower: Float64Array;
  private readonly planck: Float64Array;
  /** a1, a2 (tau), a (ln tau) */
  private readonly idealBase: Float64Array;
  private readonly deltaPowers = new Float64Array(MAX_D);
  private readonly damping = new Float64Array(MAX_L);
  private readonly maxL: number;

  constructor(data: RefrigerantData) {
    this.data = data;
    const rows = data.residualPower;
    const exponents = [...new Set([...rows.map((r) => r[2]), ...data.residualGaussian.map((g) => g[2])])];
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
    this.maxL = Math.max(...rows.map((r) => r[3]));
    this.gaussian = Float64Array.from(data.residualGaussian.flatMap((g) => [...g, exponents.indexOf(g[2])]));
    this.gaussianCount = data.residualGaussian.length;
    const ideal = flattenIdeal(data);
    this.idealPower = Float64Array.from(ideal.power);
    this.planck = Float64Array.from(ideal.planck);
    this.idealBase = Float64Array.from(ideal.base);
  }

  /** Fills `out` at T (K) and rho (kg/m3). No check of range: callers do that. */
  evaluate(temperature: number, rho: number): Float64Array {
    const { data, out } = this;
    const tau = data.tReducing / temperature;
    const delta = rho / (data.rhoReducing * data.molarMass);
    const lnTau = ln(tau);

    const { tauExponents, tauPowers, deltaPowers, damping, maxL } = this;
    for (let i = 0; i < tauExponents.length; i++) tauPowers[i] = exp(tauExponents[i] * lnTau);
    deltaPowers[0] = 1;
    for (let i = 1; i < MAX_D; i++) deltaPowers[i] = deltaPowers[i - 1] * delta;
    damping[0] = 1;
    for (let i = 1; i <= maxL; i++) damping[i] = exp(-deltaPowers[i]);

    // Residual part: a, delta a_d, tau a_t, delta^2 a_dd, delta tau a_dt, tau^2 a_tt.
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
      const k = i * 8;
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

    // Ideal part: alpha0, tau alpha0_t, tau^2 alpha0_tt.
    const base = this.idealBase;
    let b = ln(delta) + base[0] + base[1] * tau + base[2] * lnTau;
    let bt = base[1] * tau + base[2];
    let btt = -base[2];
    const { idealPower, planck } = this;
    for (let i = 0; i < idealPower.length; i += 2) {
      const e = idealPower[i + 1];
      const term = idealPower[i] * exp(e * lnTau);
      b += term;
      bt += term * e;
      btt += term * e * (e - 1);
    }
    for (let i = 0; i < planck.length; i += 2) {
      const x = planck[i + 1] * tau;
      const q = exp(-x);
      const f = x / (1 - q);
      b += planck[i] * ln(1 - q);
      bt += planck[i] * f * q;
      btt -= planck[i] * f * f * q;
    }

    const r = data.gasConstant / data.molarMass;
    const rt = r * temperature;
    const pT = 1 + ad - adt;
    const pRho = 1 + 2 * ad + add;
    const cv = -r * (att + btt);
    const cp = cv + (r * pT * pT) / pRho;
    out[EOS.P] = rho * rt * (1 + ad);
    out[EOS.H] = rt * (1 + bt + at + ad);
    out[EOS.S] = r * (bt + at - b - a);
    out[EOS.CV] = cv;
    out[EOS.CP] = cp;
    out[EOS.W] = Math.sqrt((cp / cv) * rt * pRho);
    out[EOS.P_RHO] = rt * pRho;
    out[EOS.P_T] = rho * r * pT;
    out[EOS.ALPHA0] = b;
    out[EOS.ALPHA0_TAU] = bt / tau;
    out[EOS.ALPHAR] = a;
    out[EOS.ALPHAR_DELTA] = ad / delta;
    out[EOS.ALPHAR_TAU] = at / tau;
    return out;
  }
}

/** The ideal-gas terms of every published form, reduced to constants, powers of tau and Planck-Einstein terms. */
function flattenIdeal(data: RefrigerantData): { base: number[]; power: number[]; planck: number[] } {
  const base = [0, 0, 0];
  const power: number[] = [];
  const planck: number[] = [];
  const tr = data.tReducing;
  for (const term of data.ideal) {
    switch (term.kind) {
      case 'lead':
      case 'offset':
        base[0] += term.a1;
        base[1] += term.a2;
        break;
      case 'logTau':
        base[2] += term.a;
        break;
      case 'power':
        for (const pair of term.terms) power.push(...pair);
        break;
      case 'planckEinstein':
        for (const pair of term.terms) planck.push(...pair);
        break;
      case 'cp0Constant': {
        // c (1 - tau/tau0 + ln(tau/tau0))
        const tau0 = tr / term.t0;
        base[0] += term.cpOverR * (1 - ln(tau0));
        base[1] -= term.cpOverR / tau0;
        base[2] += term.cpOverR;
        break;
      }
      case 'cp0Polynomial':
        // c [(T^(t+1) - T0^(t+1)) / ((t+1) T) - (T^t - T0^t) / t]
        for (const [c, t] of term.terms) {
          const trT = exp(t * ln(tr));
          const t0T = exp(t * ln(term.t0));
          power.push(c * trT * (1 / (t + 1) - 1 / t), -t);
          base[0] += (c * t0T) / t;
          base[1] -= (c * t0T * term.t0) / ((t + 1) * tr);
        }
        break;
    }
  }
  return { base, power, planck };
}
