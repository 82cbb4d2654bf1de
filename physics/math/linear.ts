/**
 * Solves a x = b in place by elimination with row exchange; `a` holds n rows of n numbers and is destroyed, the answer
 * comes in `b`. Returns false for a matrix without an inverse.
 */
export function solveLinear(a: Float64Array, b: Float64Array, n: number): boolean {
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i * n + k]) > Math.abs(a[pivot * n + k])) pivot = i;
    const largest = a[pivot * n + k];
    if (!(Math.abs(largest) > 0) || !Number.isFinite(largest)) return false;
    if (pivot !== k) {
      for (let j = k; j < n; j++) [a[k * n + j], a[pivot * n + j]] = [a[pivot * n + j], a[k * n + j]];
      [b[k], b[pivot]] = [b[pivot], b[k]];
    }
    for (let i = k + 1; i < n; i++) {
      const factor = a[i * n + k] / largest;
      if (factor === 0) continue;
      for (let j = k; j < n; j++) a[i * n + j] -= factor * a[k * n + j];
      b[i] -= factor * b[k];
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    let sum = b[k];
    for (let j = k + 1; j < n; j++) sum -= a[k * n + j] * b[j];
    b[k] = sum / a[k * n + k];
  }
  return true;
}
