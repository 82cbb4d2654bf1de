/**
 * Liquid receiver after the condenser. Gas and liquid stand in it side by side only while what arrives is all but saturated,
 * so in equilibrium its level follows from how far that lies from saturation: wet – empty, clearly subcooled – full, and all
 * levels between within a kelvin. The steep but smooth law stands in for a level that would be free, and keeps charge the
 * only thing that decides it. What leaves is what arrives (no heat loss). Width and place of the law are ours, no source.
 */
import { exp } from '../math/elementary';

export interface ReceiverData {
  /** m3 up to the top of the outlet's dip tube's range: all of it can fill */
  readonly volume: number;
}

/** K of subcooling at which it is half full, and by which the level changes e-fold toward either end. */
const MIDDLE = 0.6;
const WIDTH = 0.12;

/** Share of the volume that liquid fills, 0…1, for liquid that arrives `subcooled` kelvin under saturation (< 0 wet). */
export function liquidLevel(subcooled: number): number {
  const z = (subcooled - MIDDLE) / WIDTH;
  if (z > 40) return 1;
  if (z < -40) return exp(-40);
  return 1 / (1 + exp(-z));
}
