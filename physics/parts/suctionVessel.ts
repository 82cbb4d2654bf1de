/**
 * Liquid that gathers ahead of the cylinder when the suction gas is wet: in the sump of a shell with suction gas inside,
 * or in the accumulator of a rotary compressor. A hole returns liquid as the level rises, so in equilibrium the level
 * tells how much liquid arrives. It fills and empties in seconds to tens of seconds, fast against the coils, and is
 * therefore taken in equilibrium in time steps too. Geometry and law of the level are ours, no source.
 */
import { exp } from '../math/elementary';

export interface SuctionVesselData {
  /** liquid that it holds when full, kg */
  readonly capacity: number;
  /** liquid that it returns when about two thirds full, kg/s */
  readonly returned: number;
  /**
   * s in which the liquid boils off that a start leaves on the low side beyond what coils and vessel hold (chosen so that
   * subcooling comes in 2–6 min and superheat settles in 8–15)
   */
  readonly boilOff: number;
}

/** Liquid held, kg, while `arriving` kg/s of liquid come with the suction gas. */
export function liquidHeld(vessel: SuctionVesselData, arriving: number): number {
  return vessel.capacity * (1 - exp(-arriving / vessel.returned));
}
