/** What single rooms ask, and what the machine can give them. */
import type { OperatingMode, UnitDemand } from '../types';

/** What a room asks as found: what the mode says; where some are cooled and others heated, every second one is heated. */
export function usualDemand(mode: OperatingMode, index: number): UnitDemand {
  if (mode !== 'simultaneous') return mode;
  return index % 2 === 0 ? 'cooling' : 'heating';
}

/** What a room can ask: two pipes carry one mode, three carry both. */
export function possibleDemands(mode: OperatingMode, threePipes: boolean): readonly UnitDemand[] {
  if (threePipes) return ['off', 'cooling', 'heating'];
  return mode === 'simultaneous' ? ['off'] : ['off', mode];
}
