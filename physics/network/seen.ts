/** The pressures as the controller's own sensors tell them: what it regulates by, however wrong they are. */
import type { NetworkRig } from './rig';

/** Pa at the discharge and at the suction, as reported. */
export function pressuresSeen(rig: NetworkRig): { high: number; low: number } {
  const { network, fluid, effective } = rig;
  const { suctionPressure, dischargePressure } = effective.machine.drift;
  const within = (p: number): number => (p < fluid.pMin ? fluid.pMin : p > fluid.pMax ? fluid.pMax : p);
  return {
    high: dischargePressure === 0 ? network.high[0] : within(network.high[0] + dischargePressure),
    low: suctionPressure === 0 ? network.low[0] : within(network.low[0] + suctionPressure),
  };
}

/** K that it takes for the dew point at the suction, and for the bubble point at the discharge. */
export function evaporatingSeen(rig: NetworkRig): number {
  return rig.fluid.tDew(pressuresSeen(rig).low);
}

export function condensingSeen(rig: NetworkRig): number {
  return rig.fluid.tBubble(pressuresSeen(rig).high);
}
