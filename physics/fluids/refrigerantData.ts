import type { BlendModel } from './blend/blendModel';

/** Shape of a refrigerant's numbers: one data file a fluid, in the published equation's own (molar) units. */

export type RefrigerantId =
  | 'R-32'
  | 'R-410A'
  | 'R-134a'
  | 'R-290'
  | 'R-22'
  | 'R-1234yf'
  | 'R-125'
  | 'R-744'
  | 'R-407C'
  | 'R-404A'
  | 'R-454B'
  | 'R-448A'
  | 'R-513A';

export type SafetyClass = 'A1' | 'A2L' | 'A3';

type Pair = readonly [number, number];

/** Terms of the ideal-gas Helmholtz energy, tau = tReducing / T. */
export type IdealTerm =
  /** ln(delta) + a1 + a2 tau */
  | { readonly kind: 'lead'; readonly a1: number; readonly a2: number }
  /** a ln(tau) */
  | { readonly kind: 'logTau'; readonly a: number }
  /** sum n tau^t, as [n, t] */
  | { readonly kind: 'power'; readonly terms: readonly Pair[] }
  /** sum n ln(1 - exp(-t tau)), as [n, t] */
  | { readonly kind: 'planckEinstein'; readonly terms: readonly Pair[] }
  /** cp0/R = cpOverR, integrated from t0 (K) */
  | { readonly kind: 'cp0Constant'; readonly t0: number; readonly cpOverR: number }
  /** cp0/R = sum c T^t (T in K), integrated from t0 (K), as [c, t] */
  | { readonly kind: 'cp0Polynomial'; readonly t0: number; readonly terms: readonly Pair[] }
  /** a1 + a2 tau: moves the reference state only */
  | { readonly kind: 'offset'; readonly a1: number; readonly a2: number };

/** A saturation line as a function of theta = 1 - T/tReducing, S = sum n theta^t. */
export interface Ancillary {
  /** exp: scale exp(tReducing/T S); linear: scale (1 + S) */
  readonly form: 'exp' | 'linear';
  readonly tReducing: number;
  /** Pa or mol/m3 */
  readonly scale: number;
  /** [n, t] */
  readonly terms: readonly Pair[];
}

/** A published equation: a(T, rho)/(RT) = alpha0 + alphar, tau = tReducing / T, delta = rho / rhoReducing. */
export interface HelmholtzEquation {
  /** kg/mol */
  readonly molarMass: number;
  /** J/(mol K), as the paper uses it */
  readonly gasConstant: number;
  /** K */
  readonly tReducing: number;
  /** mol/m3 */
  readonly rhoReducing: number;
  readonly ideal: readonly IdealTerm[];
  /** n delta^d tau^t exp(-delta^l), the exponential only where l > 0, as [n, d, t, l] */
  readonly residualPower: readonly (readonly [number, number, number, number])[];
  /** n delta^d tau^t exp(-eta (delta-epsilon)^2 - beta (tau-gamma)^2), as [n, d, t, eta, epsilon, beta, gamma] */
  readonly residualGaussian: readonly (readonly [number, number, number, number, number, number, number])[];
  /** n delta^d tau^t exp(-delta^l - tau^m), as [n, d, t, l, m] */
  readonly residualDouble?: readonly (readonly [number, number, number, number, number])[];
  /** Terms of the critical region (criticalTerm.ts), as [n, a, b, beta, A, B, C, D] */
  readonly residualCritical?: readonly (readonly [number, number, number, number, number, number, number, number])[];
}

export interface RefrigerantData extends HelmholtzEquation {
  readonly id: RefrigerantId;
  /** A blend treated as one fluid with separate bubble and dew lines. */
  readonly pseudoPure: boolean;
  /** A blend by its components; its equation is theirs, strung together (blend/blendEquation.ts). */
  readonly blend?: BlendModel;
  /** ASHRAE Standard 34 / ISO 817 */
  readonly safetyClass: SafetyClass;
  /** Global warming potential over 100 years. */
  readonly gwp: { readonly value: number; readonly source: string };
  /** K */
  readonly tCritical: number;
  /** Pa */
  readonly pCritical: number;
  /** Acentric factor, where the fluid is a component of a blend: gives a first guess of its volatility only. */
  readonly acentric?: number;
  /** Published limits of the equation: K, K, Pa. */
  readonly validRange: { readonly tMin: number; readonly tMax: number; readonly pMax: number };
  /** Triple point, K, where a machine could reach it: nothing is carried on below it, there is dry ice. */
  readonly tTriple?: number;
  /** pS for a pure fluid; pL (bubble) and pV (dew) for a pseudo-pure one and for a blend. */
  readonly ancillaries: {
    readonly pS?: Ancillary;
    readonly pL?: Ancillary;
    readonly pV?: Ancillary;
    readonly rhoL: Ancillary;
    readonly rhoV: Ancillary;
  };
  readonly transport: {
    /** ln(property) = sum c_i theta^(i/2), theta = 1 - T/tCritical; Pa s and W/(m K) */
    readonly muLiquid: readonly number[];
    readonly muVapour: readonly number[];
    readonly kLiquid: readonly number[];
    readonly kVapour: readonly number[];
    /** sigma = sum a theta^n, N/m, as [a, n] */
    readonly sigma: { readonly tCritical: number; readonly terms: readonly Pair[] };
  };
}
