import { exp, ln } from '../math/elementary';
import type { HelmholtzEquation } from './refrigerantData';

/** Places in the result of `IdealTerms.evaluate`: the ideal-gas Helmholtz energy alpha0 and its derivatives. */
export const IDEAL = {
  A: 0,
  /** tau d/d tau */
  AT: 1,
  /** tau^2 d2/d tau2 */
  ATT: 2,
} as const;
export const IDEAL_SIZE = 3;

/** The ideal-gas part of one equation. */
export class IdealTerms {
  private readonly power: Float64Array;
  private readonly planck: Float64Array;
  /** a1, a2 (tau), a (ln tau) */
  private readonly base: Float64Array;

  constructor(data: HelmholtzEquation) {
    const flat = flattenIdeal(data);
    this.power = Float64Array.from(flat.power);
    this.planck = Float64Array.from(flat.planck);
    this.base = Float64Array.from(flat.base);
  }

  /** Fills `out`, see `IDEAL`. */
  evaluate(tau: number, lnTau: number, lnDelta: number, out: Float64Array): void {
    const { base, power, planck } = this;
    let b = lnDelta + base[0] + base[1] * tau + base[2] * lnTau;
    let bt = base[1] * tau + base[2];
    let btt = -base[2];
    for (let i = 0; i < power.length; i += 2) {
      const e = power[i + 1];
      const term = power[i] * exp(e * lnTau);
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
    out[IDEAL.A] = b;
    out[IDEAL.AT] = bt;
    out[IDEAL.ATT] = btt;
  }
}

/** The ideal-gas terms of every published form, reduced to constants (a1, a2 tau, a ln tau), powers of tau
 * and Planck-Einstein terms (both as n, t, n, t, ...). */
export function flattenIdeal(data: HelmholtzEquation): { base: number[]; power: number[]; planck: number[] } {
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
