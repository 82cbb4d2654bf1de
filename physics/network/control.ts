/** What the machine's own controller makes of its sensors: errors that drive speed and outdoor exchange. */
import type { UnitDemand } from '../types';
import type { NetworkRig } from './rig';
import { pressuresSeen } from './seen';

/** K that the side which does not set the speed may fall short before it does. */
export const PATIENCE = 2;

/** K by which the machine asks for more speed, capped by the step-down limits. */
export function speedError(rig: NetworkRig, target: SpeedTarget): number {
  const { network, data, fluid } = rig;
  const { control, limits } = data;
  const { compressor } = network;
  const { high: pHigh, low: pLow } = pressuresSeen(rig);
  const cooling = fluid.tDew(pLow) - control.evaporatingTarget;
  const heating = control.condensingTarget - fluid.tBubble(pHigh);
  let error = target.by === 'evaporating' ? cooling : heating;
  if (target.both) {
    const other = (target.by === 'evaporating' ? heating : cooling) - PATIENCE;
    if (other > error) error = other;
  }
  const drift = rig.effective.machine.drift.dischargeLine;
  const heat = (limits.slowDownTemp - (compressor.tDischarge + drift)) * 0.5;
  if (heat < error) error = heat;
  const pressure = (limits.slowDownPressure - pHigh) / 5e4;
  if (pressure < error) error = pressure;
  const low = (pLow - limits.slowDownLow) / 2e4;
  return low < error ? low : error;
}

/** Which side sets the speed: who cools by the evaporating, who only heats by the condensing temperature. */
export interface SpeedTarget {
  readonly by: 'evaporating' | 'condensing';
  /** rooms cool and heat at once: the other side is not left to itself */
  readonly both: boolean;
}

export function speedTarget(demands: readonly UnitDemand[], outdoorBoils: boolean): SpeedTarget {
  const heats = demands.includes('heating');
  const cools = demands.includes('cooling');
  if (heats && cools) return { by: outdoorBoils ? 'condensing' : 'evaporating', both: true };
  return { by: heats ? 'condensing' : 'evaporating', both: false };
}
