/** What keeps a machine from starting at all, in its controller's own words. */
import { isImpossible } from '../parts/thermistor';
import type { ControllerState } from '../types';
import type { Rig } from './compile';
import { reported, type Sensed } from './control';

/** Share of the condensate pan at which its float switch opens (ours). */
export const PAN_FLOAT = 0.85;

/** Share of the condensate pan that water fills: a machine called to heat has a dry one. */
export function panWater({ conditions, effective }: Rig): number {
  return conditions.mode === 'heating' ? 0 : effective.panWater;
}

/** What the sensors feel of a machine that has stood for hours. */
export function feltAtRest({ conditions }: Rig): Sensed {
  const { outdoor, indoor } = conditions;
  return { suctionLine: outdoor, evaporatorCoil: indoor, dischargeLine: outdoor };
}

/** Why the controller starts nothing while its sensors feel that, or null where it may. */
export function heldBy(rig: Rig, sensed: Sensed): ControllerState | null {
  if (panWater(rig) >= PAN_FLOAT) return 'held-by-safety-circuit';
  if (rig.data.control.metering !== 'electronic') return null;
  const { suctionLine, evaporatorCoil } = reported(rig.circuit, rig.env.outdoor, sensed);
  return isImpossible(suctionLine) || isImpossible(evaporatorCoil) ? 'held-by-sensor' : null;
}
