/** The little mathematics of belief: Gaussians, sums of logarithms, Cholesky factors. Same bits in every engine. */
import { exp, ln } from '../../physics/math/elementary';

export const LN2 = Math.LN2;
export const LN3 = 1.0986122886681098;
const LN_2PI = 1.8378770664093453;

export function log2(x: number): number {
  return ln(x) / LN2;
}

/** ln(Σ exp(v)); −Infinity for nothing. */
export function logSumExp(values: ArrayLike<number>): number {
  let top = -Infinity;
  for (let i = 0; i < values.length; i++) if (values[i] > top) top = values[i];
  if (top === -Infinity) return -Infinity;
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += exp(values[i] - top);
  return top + ln(sum);
}

/** ln of the normal density. */
export function logNormal(x: number, mean: number, variance: number): number {
  const d = x - mean;
  return -0.5 * (LN_2PI + ln(variance) + (d * d) / variance);
}

/** Cumulative normal distribution: Abramowitz and Stegun 26.2.17, error below 7.5e-8. */
export function normalCdf(z: number): number {
  const a = Math.abs(z);
  const t = 1 / (1 + 0.2316419 * a);
  const poly = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = 0.3989422804014327 * exp(-0.5 * a * a) * poly;
  return z >= 0 ? 1 - tail : tail;
}

/** Half-width in standard deviations of the middle 80 % of a normal distribution. */
export const Z80 = 1.2815515655446004;

/** KL(p ‖ q) in bits over the keys of p. */
export function klBits<K extends string>(
  p: Readonly<Partial<Record<K, number>>>,
  q: Readonly<Partial<Record<K, number>>>,
): number {
  let sum = 0;
  for (const key in p) {
    const a = p[key] ?? 0;
    if (a <= 0) continue;
    sum += a * ln(a / Math.max(q[key] ?? 0, 1e-12));
  }
  return Math.max(0, sum / LN2);
}

/** Entropy of a distribution, bits. */
export function entropyBits(p: readonly number[]): number {
  let sum = 0;
  for (const a of p) if (a > 0) sum -= a * ln(a);
  return sum / LN2;
}

/** Lower Cholesky factor of a symmetric matrix (n × n, row by row), in place. Throws where it is not positive. */
export function cholesky(matrix: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * n + j];
      for (let k = 0; k < j; k++) sum -= matrix[i * n + k] * matrix[j * n + k];
      if (i === j) {
        if (!(sum > 0)) throw new RangeError(`covariance is not positive at row ${i} of ${n}: ${sum}`);
        matrix[i * n + i] = Math.sqrt(sum);
      } else matrix[i * n + j] = sum / matrix[j * n + j];
    }
  }
}

/** Solves L x = b for a lower factor; writes into `out`. */
export function forwardSolve(lower: Float64Array, n: number, b: ArrayLike<number>, out: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let sum = b[i];
    for (let k = 0; k < i; k++) sum -= lower[i * n + k] * out[k];
    out[i] = sum / lower[i * n + i];
  }
}

/** Solves Lᵀ x = b for a lower factor; writes into `out`. */
export function backSolve(lower: Float64Array, n: number, b: ArrayLike<number>, out: Float64Array): void {
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i];
    for (let k = i + 1; k < n; k++) sum -= lower[k * n + i] * out[k];
    out[i] = sum / lower[i * n + i];
  }
}

/** Diagonal of (L Lᵀ)⁻¹. */
export function inverseDiagonal(lower: Float64Array, n: number): Float64Array {
  const diagonal = new Float64Array(n);
  const column = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    column.fill(0);
    column[j] = 1 / lower[j * n + j];
    for (let i = j + 1; i < n; i++) {
      let sum = 0;
      for (let k = j; k < i; k++) sum -= lower[i * n + k] * column[k];
      column[i] = sum / lower[i * n + i];
    }
    for (let i = j; i < n; i++) diagonal[j] += column[i] * column[i];
  }
  return diagonal;
}

export const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
