import { ln } from '../math/elementary';
import { IDEAL, IDEAL_SIZE, IdealTerms } from './ideal';
import type { HelmholtzEquation } from './refrigerantData';
import { RES, RES_SIZE, ResidualTerms } from './residual';

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

export class Helmholtz {
  readonly data: HelmholtzEquation;
  /** Result of the last `evaluate`, see `EOS`. */
  readonly out = new Float64Array(13);
  private readonly residual: ResidualTerms;
  private readonly res = new Float64Array(RES_SIZE);
  private readonly ideal: IdealTerms;
  private readonly part = new Float64Array(IDEAL_SIZE);

  constructor(data: HelmholtzEquation) {
    this.data = data;
    this.residual = new ResidualTerms(data);
    this.ideal = new IdealTerms(data);
  }

  /** Fills `out` at T (K) and rho (kg/m3). No check of range: callers do that. */
  evaluate(temperature: number, rho: number): Float64Array {
    const { data, out } = this;
    const tau = data.tReducing / temperature;
    const delta = rho / (data.rhoReducing * data.molarMass);
    const lnTau = ln(tau);

    const { res } = this;
    this.residual.evaluate(tau, lnTau, delta, res);
    const a = res[RES.A];
    const ad = res[RES.AD];
    const at = res[RES.AT];
    const add = res[RES.ADD];
    const adt = res[RES.ADT];
    const att = res[RES.ATT];

    const { part } = this;
    this.ideal.evaluate(tau, lnTau, ln(delta), part);
    const b = part[IDEAL.A];
    const bt = part[IDEAL.AT];
    const btt = part[IDEAL.ATT];

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
