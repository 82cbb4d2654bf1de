import * as L from './layout';

// Local copies, as in table.ts: a test runner's module wrapper makes every imported name a function call.
const { H_L, INV_LATENT, RHO_L, RHO_V, ROW, S_L, S_V, T_BUB, T_DEW, W0, W1, W2, W3 } = L;
const { DOME_SIZE, OUT_DTDH, OUT_RHO, OUT_S, OUT_T } = L;

/**
 * What a blend's dome adds to straight lines between bubble and dew point: for temperature, volume (as a share of the
 * difference of both) and entropy a correction eta (1 - eta) (c0 + c1 xi + c2 xi^2), xi = 2 eta - 1, where eta is the share
 * of the way from h_l to h_v. The c are splines along the rows; see blend/domeRows.ts.
 */

/** Place of the entropy's coefficients in a row. */
const S = 12;

/** Corrects T, rho, dT/dh and s of a state in the dome, which are in `out` as straight lines give them. */
export function bend(dome: Float64Array, block: Float64Array, eta: number, out: Float64Array): void {
  const w0 = block[W0];
  const w1 = block[W1];
  const w2 = block[W2];
  const w3 = block[W3];
  const a = (block[ROW] * DOME_SIZE) | 0;
  const b = (a + DOME_SIZE) | 0;
  const t0 = w0 * dome[a] + w1 * dome[a + 1] + w2 * dome[b] + w3 * dome[b + 1];
  const t1 = w0 * dome[a + 2] + w1 * dome[a + 3] + w2 * dome[b + 2] + w3 * dome[b + 3];
  const t2 = w0 * dome[a + 4] + w1 * dome[a + 5] + w2 * dome[b + 4] + w3 * dome[b + 5];
  const v0 = w0 * dome[a + 6] + w1 * dome[a + 7] + w2 * dome[b + 6] + w3 * dome[b + 7];
  const v1 = w0 * dome[a + 8] + w1 * dome[a + 9] + w2 * dome[b + 8] + w3 * dome[b + 9];
  const v2 = w0 * dome[a + 10] + w1 * dome[a + 11] + w2 * dome[b + 10] + w3 * dome[b + 11];
  const k = eta * (1 - eta);
  const xi = 2 * eta - 1;
  const t = t0 + xi * (t1 + xi * t2);
  const v = v0 + xi * (v1 + xi * v2);
  out[OUT_T] += k * t;
  out[OUT_RHO] = 1 / (1 / out[OUT_RHO] + k * v * (1 / block[RHO_V] - 1 / block[RHO_L]));
  out[OUT_DTDH] += (2 * k * (t1 + 2 * xi * t2) - xi * t) * block[INV_LATENT];
  out[OUT_S] += k * entropy(dome, block, xi);
}

/** The entropy's correction over eta (1 - eta). */
function entropy(dome: Float64Array, block: Float64Array, xi: number): number {
  const w0 = block[W0];
  const w1 = block[W1];
  const w2 = block[W2];
  const w3 = block[W3];
  const a = (block[ROW] * DOME_SIZE + S) | 0;
  const b = (a + DOME_SIZE) | 0;
  const s0 = w0 * dome[a] + w1 * dome[a + 1] + w2 * dome[b] + w3 * dome[b + 1];
  const s1 = w0 * dome[a + 2] + w1 * dome[a + 3] + w2 * dome[b + 2] + w3 * dome[b + 3];
  const s2 = w0 * dome[a + 4] + w1 * dome[a + 5] + w2 * dome[b + 4] + w3 * dome[b + 5];
  return s0 + xi * (s1 + xi * s2);
}

/** Enthalpy in the dome at which the corrected entropy is s: Newton, whose slope ds/dh = 1/T is the straight line's. */
export function wetEnthalpy(dome: Float64Array, block: Float64Array, s: number): number {
  const span = block[S_V] - block[S_L];
  const slope = 1 / (block[INV_LATENT] * 0.5 * (block[T_BUB] + block[T_DEW]));
  let eta = (s - block[S_L]) / span;
  for (let i = 0; i < 30; i++) {
    const error = block[S_L] + eta * (span + (1 - eta) * entropy(dome, block, 2 * eta - 1)) - s;
    eta -= error / slope;
    if (Math.abs(error) < 1e-11 * s) break;
  }
  return block[H_L] + eta / block[INV_LATENT];
}
