/**
 * Small dense root finder: damped Newton with forward-difference Jacobian and Armijo halving, Levenberg–Marquardt when
 * halving fails. A trial point at which the model throws counts as infinitely bad, so the search backs away from the
 * ends of the tables.
 */
import { PhysicsError } from '../errors';

export interface Problem {
  readonly size: number;
  /** largest change of each unknown in one iteration */
  readonly caps: readonly number[];
  readonly lower: readonly number[];
  readonly upper: readonly number[];
  /** residuals at x; throws PhysicsError outside the model's range */
  residual(x: Float64Array, r: Float64Array): void;
}

export interface Outcome {
  readonly converged: boolean;
  readonly iterations: number;
  readonly evaluations: number;
  /** largest absolute residual */
  readonly defect: number;
  readonly error: PhysicsError | null;
}

const DIFFERENCE = 1e-6;

/**
 * Quasi-Newton with a Jacobian from before, kept up to date by Broyden's rank-one rule (Math. Comp. 19, 1965). For a time
 * step that starts next to its solution. False when it does not contract; `x` is then spoilt.
 * @param jacobian row by row, changed in place
 */
export function broyden(
  problem: Problem,
  x: Float64Array,
  jacobian: Float64Array,
  tolerance: number,
  maxIterations: number,
): boolean {
  const n = problem.size;
  const r = new Float64Array(n);
  const next = new Float64Array(n);
  const step = new Float64Array(n);
  try {
    problem.residual(x, r);
    let size = largest(r);
    for (let k = 0; k < maxIterations; k++) {
      if (!(size >= tolerance)) return size < tolerance;
      if (!direction(jacobian, r, step, n, 0)) return false;
      let square = 0;
      for (let i = 0; i < n; i++) {
        if (step[i] > problem.caps[i] || step[i] < -problem.caps[i]) return false;
        x[i] += step[i];
        square += step[i] * step[i];
      }
      problem.residual(x, next);
      const after = largest(next);
      if (!(after < 0.7 * size)) return false;
      for (let i = 0; i < n; i++) {
        // r + J·step is zero by construction of the step, so the update is next·stepᵀ / |step|²
        const scale = next[i] / square;
        for (let j = 0; j < n; j++) jacobian[i * n + j] += scale * step[j];
        r[i] = next[i];
      }
      size = after;
    }
    return size < tolerance;
  } catch (error) {
    if (!(error instanceof PhysicsError)) throw error;
    return false;
  }
}

export function solve(
  problem: Problem,
  x: Float64Array,
  tolerance: number,
  maxIterations: number,
  keep?: Float64Array,
): Outcome {
  const n = problem.size;
  const r = new Float64Array(n);
  const trialR = new Float64Array(n);
  const trial = new Float64Array(n);
  const jacobian = new Float64Array(n * n);
  const step = new Float64Array(n);
  let evaluations = 0;
  let lastError: PhysicsError | null = null;

  const attempt = (at: Float64Array, into: Float64Array): boolean => {
    evaluations++;
    try {
      problem.residual(at, into);
    } catch (error) {
      if (!(error instanceof PhysicsError)) throw error;
      lastError = error;
      return false;
    }
    for (let i = 0; i < n; i++) if (!(into[i] - into[i] === 0)) return false;
    return true;
  };

  if (!attempt(x, r)) return { converged: false, iterations: 0, evaluations, defect: 1e30, error: lastError };
  let merit = norm(r);
  let damping = 0;
  /** the Jacobian was carried over by Broyden's rule from an iteration that went well */
  let updated = false;

  for (let iteration = 0; iteration < maxIterations; iteration++) {
    if (largest(r) < tolerance)
      return { converged: true, iterations: iteration, evaluations, defect: largest(r), error: null };
    if (!updated) {
      for (let j = 0; j < n; j++) {
        for (let i = 0; i < n; i++) trial[i] = x[i];
        let d = DIFFERENCE;
        if (trial[j] + d > problem.upper[j]) d = -d;
        trial[j] += d;
        if (!attempt(trial, trialR)) {
          d = -d;
          trial[j] = x[j] + d;
          if (!attempt(trial, trialR))
            return { converged: false, iterations: iteration, evaluations, defect: largest(r), error: lastError };
        }
        for (let i = 0; i < n; i++) jacobian[i * n + j] = (trialR[i] - r[i]) / d;
      }
    }
    updated = false;

    if (keep) keep.set(jacobian);

    let accepted = false;
    for (let round = 0; round < 7 && !accepted; round++) {
      if (!direction(jacobian, r, step, n, damping)) {
        damping = damping > 0 ? damping * 10 : 1e-4;
        continue;
      }
      let scale = 1;
      for (let i = 0; i < n; i++) {
        const size = step[i] < 0 ? -step[i] : step[i];
        if (size * scale > problem.caps[i]) scale = problem.caps[i] / size;
      }
      const halvings = damping > 0 ? 3 : 9;
      for (let k = 0; k < halvings; k++) {
        for (let i = 0; i < n; i++) {
          const next = x[i] + scale * step[i];
          trial[i] = next < problem.lower[i] ? problem.lower[i] : next > problem.upper[i] ? problem.upper[i] : next;
        }
        if (attempt(trial, trialR)) {
          const trialMerit = norm(trialR);
          if (trialMerit < merit * (1 - 1e-4 * scale) || largest(trialR) < tolerance) {
            if (scale === 1 && damping === 0 && trialMerit < 0.04 * merit) {
              let square = 0;
              for (let i = 0; i < n; i++) square += (trial[i] - x[i]) * (trial[i] - x[i]);
              for (let i = 0; i < n; i++) {
                const change = trialR[i] / square;
                for (let j = 0; j < n; j++) jacobian[i * n + j] += change * (trial[j] - x[j]);
              }
              updated = true;
            }
            x.set(trial);
            r.set(trialR);
            merit = trialMerit;
            accepted = true;
            damping = damping > 1e-7 ? damping * 0.2 : 0;
            break;
          }
        }
        scale *= 0.5;
      }
      if (!accepted) damping = damping > 0 ? damping * 10 : 1e-4;
    }
    if (!accepted)
      return { converged: false, iterations: iteration, evaluations, defect: largest(r), error: lastError };
  }
  const defect = largest(r);
  return { converged: defect < tolerance, iterations: maxIterations, evaluations, defect, error: lastError };
}

/** Newton direction (damping 0) or the Levenberg–Marquardt one; false when singular. */
function direction(jacobian: Float64Array, r: Float64Array, step: Float64Array, n: number, damping: number): boolean {
  const a = new Float64Array(n * (n + 1));
  const w = n + 1;
  if (damping > 0) {
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        let sum = 0;
        for (let k = 0; k < n; k++) sum += jacobian[k * n + i] * jacobian[k * n + j];
        a[i * w + j] = sum;
      }
      a[i * w + i] *= 1 + damping;
      a[i * w + i] += damping * 1e-6;
      let rhs = 0;
      for (let k = 0; k < n; k++) rhs -= jacobian[k * n + i] * r[k];
      a[i * w + n] = rhs;
    }
  } else {
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) a[i * w + j] = jacobian[i * n + j];
      a[i * w + n] = -r[i];
    }
  }
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let i = c + 1; i < n; i++) if (Math.abs(a[i * w + c]) > Math.abs(a[pivot * w + c])) pivot = i;
    const value = a[pivot * w + c];
    if (!(Math.abs(value) > 1e-14)) return false;
    for (let j = c; j < w; j++) {
      const swap = a[c * w + j];
      a[c * w + j] = a[pivot * w + j];
      a[pivot * w + j] = swap;
    }
    for (let i = c + 1; i < n; i++) {
      const factor = a[i * w + c] / a[c * w + c];
      for (let j = c; j < w; j++) a[i * w + j] -= factor * a[c * w + j];
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = a[i * w + n];
    for (let j = i + 1; j < n; j++) sum -= a[i * w + j] * step[j];
    step[i] = sum / a[i * w + i];
  }
  return true;
}

function norm(r: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < r.length; i++) sum += r[i] * r[i];
  return sum;
}

function largest(r: Float64Array): number {
  let most = 0;
  for (let i = 0; i < r.length; i++) {
    const size = r[i] < 0 ? -r[i] : r[i];
    if (size > most) most = size;
  }
  return most;
}
