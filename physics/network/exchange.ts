/**
 * How much the outdoor side exchanges while it only balances rooms that cool and heat at once: fans first; where it
 * condenses and even the slowest fans take too much, its valves, until the coils stand full of liquid and take nothing.
 */

import { PATIENCE } from './control';

/** slowest step of the outdoor fans, share of their speed */
const SLOWEST = 0.15;
/** exchange under which condensing coils are throttled by their valves */
const THROTTLED = 0.5;

export type OutdoorRole = 'condenser' | 'evaporator' | 'idle';

/** The least exchange that the controller goes down to: only the last of several modules is throttled by its valve. */
export function leastExchange({ role, count }: { readonly role: OutdoorRole; readonly count: number }): number {
  if (role !== 'condenser') return SLOWEST;
  return count > 1 ? THROTTLED : 0.02;
}

/** Share of the fans' speed. */
export function fanShare(role: OutdoorRole, exchange: number): number {
  if (role !== 'condenser') return exchange;
  const over = (exchange - THROTTLED) / (1 - THROTTLED);
  return over > 0 ? SLOWEST + (1 - SLOWEST) * over : SLOWEST;
}

/** Share of its opening by subcooling that a condensing module's valve has. */
export function valveShare(exchange: number): number {
  const share = exchange / THROTTLED;
  return share < 1 ? share * share : 1;
}

/** K: by how much the hot gas may stand over its target before a further module condenses, and under it before one rests. */
const TOO_HOT = 2;
const NOT_HOT_ENOUGH = -1;
/** K: by how much the suction may stand under its target before a further module boils, and over it before one rests. */
const TOO_COLD = 3;
const NOT_COLD_ENOUGH = -2;

/**
 * Where the outdoor side would go from here: 1 = a further module condenses or one boils less, -1 = the other way, 0 = it
 * stays. The one rule for the controller over time and for the steady state, which is where it would rest.
 * @param hot K of the hot gas over its target @param cold K of the suction under its target
 */
export function outdoorsWish(
  outdoors: { readonly role: OutdoorRole; readonly count: number },
  exchange: number,
  hot: number,
  cold: number,
): -1 | 0 | 1 {
  const least = exchange < leastExchange(outdoors) + 1e-6;
  const most = exchange > 1 - 1e-6;
  if (outdoors.role === 'condenser') {
    if (least && (outdoors.count > 1 ? hot < NOT_HOT_ENOUGH : cold > PATIENCE)) return -1;
    return most && hot > TOO_HOT ? 1 : 0;
  }
  if (least && cold < NOT_COLD_ENOUGH) return 1;
  return most && cold > TOO_COLD ? -1 : 0;
}
