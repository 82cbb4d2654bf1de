import type { PhasePair } from './blend/equilibrium';

/** Both sides of the dome at one pressure. Mass basis, SI. */
export interface Saturation {
  p: number;
  tBubble: number;
  tDew: number;
  rhoLiquid: number;
  rhoVapour: number;
  /** dT/dp along the bubble and the dew line, K/Pa */
  tBubbleSlope: number;
  tDewSlope: number;
  /** Of a blend: each line with the other phase's composition, to start neighbours from. */
  pairs?: { readonly bubble: PhasePair; readonly dew: PhasePair };
}
