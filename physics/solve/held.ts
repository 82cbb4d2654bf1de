/** What keeps a machine from starting at all, in its controller's own words. */
import type { ControllerState } from '../types';
import type { Rig } from './compile';

/** Share of the condensate pan at which its float switch opens (ours). */
export const PAN_FLOAT = 0.85;

/** Share of the condensate pan that water fills: a machine called to heat has a dry one. */
export function panWater({ conditions, effective }: Rig): number {
  return conditions.mode === 'heating' ? 0 : effective.panWater;
}

/** Why the controller starts nothing, or null where it may. */
export function heldBy(rig: Rig): ControllerState | null {
  return panWater(rig) >= PAN_FLOAT ? 'held-by-safety-circuit' : null;
}
