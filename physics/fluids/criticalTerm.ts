import { exp, ln } from '../math/elementary';

/** Below this the damping factor makes the term vanish beside any other (e^-100). */
const NEGLIGIBLE = 100;
/** Keeps the powers of Delta finite at the critical point itself, where Delta is 0. */
const SMALLEST = 1e-60;

/**
 * Adds a nonanalytic term n Delta^b delta psi, which shapes the neighbourhood of the critical point, to `res` (see
 * `RES`). Form and derivatives: R. Span, W. Wagner, J. Phys. Chem. Ref. Data 25 (1996) 1509-1596, tables 31 and 32;
 * `c` holds n, a, b, beta, A, B, C, D from place `k` on. Powers of (delta - 1)^2 are gathered so that none is negative.
 */
export function addCriticalTerm(c: Float64Array, k: number, tau: number, delta: number, res: Float64Array): void {
  const a = c[k + 1];
  const b = c[k + 2];
  const beta = c[k + 3];
  const A = c[k + 4];
  const B = c[k + 5];
  const C = c[k + 6];
  const D = c[k + 7];
  const u = delta - 1;
  const v = tau - 1;
  const s = u * u;
  const exponent = C * s + D * v * v;
  if (exponent > NEGLIGIBLE) return;

  const psi = exp(-exponent);
  const psiD = -2 * C * u * psi;
  const psiT = -2 * D * v * psi;
  const psiDD = (2 * C * s - 1) * 2 * C * psi;
  const psiTT = (2 * D * v * v - 1) * 2 * D * psi;
  const psiDT = 4 * C * D * u * v * psi;

  // (s^(1/(2 beta) - 1)) and (s^(a - 1)); both exponents are positive in the published terms.
  const lnS = s > 0 ? ln(s) : 0;
  const sBeta = s > 0 ? exp((1 / (2 * beta) - 1) * lnS) : 0;
  const sA = s > 0 ? exp((a - 1) * lnS) : 0;
  const theta = -v + A * sBeta * s;
  const big = Math.max(theta * theta + B * sA * s, SMALLEST);
  /** d Delta / d delta, divided by delta - 1 */
  const bracket = (A * theta * 2 * sBeta) / beta + 2 * B * a * sA;
  const bigD = u * bracket;
  const bigDD =
    bracket +
    4 * B * a * (a - 1) * sA +
    (2 * A * A * s * sBeta * sBeta) / (beta * beta) +
    ((A * theta * 4) / beta) * (1 / (2 * beta) - 1) * sBeta;

  const power = exp(b * ln(big));
  const p1 = (b * power) / big;
  const p2 = ((b - 1) * p1) / big;
  const powerD = p1 * bigD;
  const powerT = -2 * theta * p1;
  const powerDD = p1 * bigDD + p2 * bigD * bigD;
  const powerTT = 2 * p1 + 4 * theta * theta * p2;
  const powerDT = -((A * 2) / beta) * p1 * u * sBeta - 2 * theta * p2 * bigD;

  const n = c[k];
  const edge = psi + delta * psiD;
  res[0] += n * power * delta * psi;
  res[1] += n * delta * (power * edge + powerD * delta * psi);
  res[2] += n * delta * tau * (powerT * psi + power * psiT);
  res[3] += n * delta * delta * (power * (2 * psiD + delta * psiDD) + 2 * powerD * edge + powerDD * delta * psi);
  res[4] +=
    n * delta * tau * (power * (psiT + delta * psiDT) + delta * powerD * psiT + powerT * edge + powerDT * delta * psi);
  res[5] += n * delta * tau * tau * (powerTT * psi + 2 * powerT * psiT + power * psiTT);
}
