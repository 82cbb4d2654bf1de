/** The signal bus between the outdoor side and the units: what a meter shows on it, and whom the outdoor side hears. */
import type { UnitDemand, UnitState } from '../types';
import type { NetworkRig } from './rig';

/** V of direct current on a sound bus, and the share of it under which nothing is heard (ours, no source) */
const BUS_VOLTAGE = 16;
const HEARD = 0.5;

/** V on the clamps of one unit. */
export function busVoltage({ effective }: NetworkRig, unit: number): number {
  return BUS_VOLTAGE * (1 - effective.units[unit].busLost);
}

export function isSilent({ effective }: NetworkRig, unit: number): boolean {
  return 1 - effective.units[unit].busLost < HEARD;
}

/** What the units say of themselves where each room gets what it asks. */
export function unitStatesOf(rig: NetworkRig, demands: readonly UnitDemand[]): UnitState[] {
  return demands.map((demand, i) => (isSilent(rig, i) ? 'not-answering' : demand));
}
