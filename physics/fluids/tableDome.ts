import {
  DOME_SIZE,
  H_L,
  INV_LATENT,
  OUT_DTDH,
  OUT_RHO,
  OUT_S,
  OUT_T,
  RHO_L,
  RHO_V,
  ROW,
  S_L,
  S_V,
  T_BUB,
  T_DEW,
  W0,
  W1,
  W2,
  W3,
} from './layout';

/**
 * What a blend's dome adds to straight lines between bubble and dew point: for temperature, volume (as a share of the
 * difference of both) and entropy a correction eta (1 - eta) (c0 + c1 xi + c2 xi^2), xi = 2 eta - 1, where eta is the share
 * of the way from h_l to h_v. The c are splines along the rows; see blend/domeRows.ts.
 */

const T = 0;
const V = 6;
const S = 12;

/** A coefficient on the block's isobar. */
function coefficient(dome: Float64Array, block: Float64Array, field: number): number {
  const a = ((block[ROW] * DOME_SIZE) | 0) + field;
  const b = a + DOME_SIZE;
  return block[W0] * dome[a] + block[W1] * dome[a + 1] + block[W2] * dome[b] + block[W3] * dome[b + 1];
}

/** Corrects T, rho, dT/dh and s of a state in the dome, which are in `out` as straight lines give them. */
export function bend(dome: Float64Array, block: Float64Array, eta: number, out: Float64Array): void {
  const k = eta * (1 - eta);
  const xi = 2 * eta - 1;
  const t1 = coefficient(dome, block, T + 2);
  const t2 = coefficient(dome, block, T + 4);
  const t = coefficient(dome, block, T) + xi * (t1 + xi * t2);
  const v = polynomial(dome, block, V, xi);
  const s = polynomial(dome, block, S, xi);
  out[OUT_T] += k * t;
  out[OUT_RHO] = 1 / (1 / out[OUT_RHO] + k * v * (1 / block[RHO_V] - 1 / block[RHO_L]));
  out[OUT_DTDH] += (2 * k * (t1 + 2 * xi * t2) - xi * t) * block[INV_LATENT];
  out[OUT_S] += k * s;
}

function polynomial(dome: Float64Array, block: Float64Array, field: number, xi: number): number {
  const c1 = coefficient(dome, block, field + 2);
  const c2 = coefficient(dome, block, field + 4);
  return coefficient(dome, block, field) + xi * (c1 + xi * c2);
}

/** Enthalpy in the dome at which the corrected entropy is s: Newton, whose slope ds/dh = 1/T is the straight line's. */
export function wetEnthalpy(dome: Float64Array, block: Float64Array, s: number): number {
  const span = block[S_V] - block[S_L];
  const slope = 1 / (block[INV_LATENT] * 0.5 * (block[T_BUB] + block[T_DEW]));
  let eta = (s - block[S_L]) / span;
  for (let i = 0; i < 30; i++) {
    const error = block[S_L] + eta * (span + (1 - eta) * polynomial(dome, block, S, 2 * eta - 1)) - s;
    eta -= error / slope;
    if (Math.abs(error) < 1e-11 * s) break;
  }
  return block[H_L] + eta / block[INV_LATENT];
}
