/**
 * How much the outdoor side exchanges while it only balances rooms that cool and heat at once: fans first; where it
 * condenses and even the slowest fans take too much, its valves, until the coils stand full of liquid and take nothing.
 */

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
