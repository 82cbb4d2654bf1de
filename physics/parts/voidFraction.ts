/**
 * Mass held by a two-phase zone. Void fraction by Zivi (J. Heat Transfer 86, 1964): slip (rho_l/rho_v)^(1/3),
 * integrated in closed form over a zone in which quality runs linearly along the length.
 */
import { ln } from '../math/elementary';

/**
 * Mean void fraction (share of gas by volume, 0…1) between two qualities.
 * @param ratio (rho_v / rho_l)^(2/3), see `slipRatio`
 */
export function meanVoid(x1: number, x2: number, ratio: number): number {
  const low = x1 < 0 ? 0 : x1 > 1 ? 1 : x1;
  const high = x2 < 0 ? 0 : x2 > 1 ? 1 : x2;
  const rest = 1 - ratio;
  const span = high - low;
  if (span < 1e-6 && span > -1e-6) {
    const x = 0.5 * (low + high);
    return x / (ratio + x * rest);
  }
  const logarithm = ln((ratio + high * rest) / (ratio + low * rest));
  return (1 - ((ratio / rest) * logarithm) / span) / rest;
}
