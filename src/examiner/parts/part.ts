/** What a part of the grade hands in: a share of its weight with reasons; null = there was nothing to measure. */
import type { Message } from '../types';

export interface Marked {
  readonly share: number | null;
  readonly reasons: readonly Message[];
}

export const clip = (x: number): number => Math.min(1, Math.max(0, x));
