/** Cubic Hermite cells: values and slopes (per cell) at both ends, t from 0 to 1. */

export function hermite(f0: number, d0: number, f1: number, d1: number, t: number): number {
  const t2 = t * t;
  const z = t2 * (t - 1);
  const v2 = t2 * (3 - 2 * t);
  return (1 - v2) * f0 + (z - t2 + t) * d0 + v2 * f1 + z * d1;
}

/** Fraction 0 ... 1 of a cell at which a monotonic Hermite cubic takes a value: Newton, kept inside the cell. */
export function invertHermite(f0: number, d0: number, f1: number, d1: number, value: number): number {
  const rise = f1 - f0;
  const c2 = 3 * rise - 2 * d0 - d1;
  const c3 = d0 + d1 - 2 * rise;
  const target = value - f0;
  let t = target / rise;
  if (!(t > 0)) return 0;
  if (t > 1) t = 1;
  for (let i = 0; i < 20; i++) {
    const step = (target - t * (d0 + t * (c2 + t * c3))) / (d0 + t * (2 * c2 + 3 * t * c3));
    t += step;
    if (t < 0) t = 0;
    else if (t > 1) t = 1;
    if (Math.abs(step) < 1e-13) break;
  }
  return t;
}
