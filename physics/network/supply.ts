/** Three phases: what a meter shows between them, and the phase monitor that watches them. */
import type { ControllerState } from '../types';
import type { NetworkRig } from './rig';

/** Lowest voltage between two phases over that between the sound ones at which the monitor opens (ours; 8…10 % is common practice). */
const MONITOR = 0.9;

/** V between the two phases that have the least between them: `1 − lost` of one phase's voltage is left, at 120°. */
export function lowestBetweenPhases({ effective }: NetworkRig): number {
  const { voltage } = effective.machine;
  return voltage * lowestShare(effective.machine.phaseLost);
}

function lowestShare(lost: number): number {
  const left = 1 - lost;
  return lost === 0 ? 1 : Math.sqrt((left * left + left + 1) / 3);
}

/** Why the controller starts nothing, or null where it may. */
export function heldBy({ effective }: NetworkRig): ControllerState | null {
  return lowestShare(effective.machine.phaseLost) < MONITOR ? 'held-by-safety-circuit' : null;
}
