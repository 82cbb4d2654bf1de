/**
 * What the scripted trainees should earn, written down before the weights and rules were touched again. Tests and the
 * command `npm run trainees` hold the score to it; what does not come out is mended in the scoring or told, never here.
 * The reasons are in docs/scoring-expectations.md.
 */
import type { PartName } from './types';

export const HABITS = [
  'greedy',
  'careful-slow',
  'hoses-first',
  'unproved',
  'unverified',
  'slapdash',
  'band-aid',
  'gauge-for-absolute',
  'wrong-line',
  'no-sums',
  'hasty',
  'unmoved',
  'overbets',
  'cites-blindly',
  'hazardous',
  'first-hunch',
  'carpet',
  'base-rate',
  'random-clicker',
  'idle',
] as const;
export type HabitId = (typeof HABITS)[number];

export interface Expectation {
  /** the part in which it must lose most; care = the cap; null = nothing to lose */
  readonly own: PartName | 'care' | null;
  /**
   * the same work without the habit; against it the share lost in `own` is at least `APART` times the share lost in
   * any other part. null where the habit spoils the reasoning itself, so that several parts rightly fall
   */
  readonly against: 'careful-slow' | 'greedy' | null;
  /** bounds of the mean total over all callouts, points */
  readonly least?: number;
  readonly most?: number;
}

/** Times more that a habit loses in its own part than in any other. */
export const APART = 5;
/** Points between neighbours where an order is claimed. */
export const GAP = 10;
/** Most that doing nothing, guessing or clicking may earn, points. */
export const NULLS = 20;

export const EXPECTED: Readonly<Record<HabitId, Expectation>> = {
  greedy: { own: null, against: null, least: 90 },
  'careful-slow': { own: 'economy', against: 'greedy', least: 70 },
  'hoses-first': { own: 'economy', against: 'greedy', least: 70 },
  unproved: { own: 'cause', against: 'greedy', least: 70 },
  unverified: { own: 'repair', against: 'careful-slow', least: 60, most: 90 },
  slapdash: { own: 'repair', against: 'careful-slow', least: 60, most: 90 },
  'band-aid': { own: 'repair', against: 'careful-slow', least: 60, most: 85 },
  'gauge-for-absolute': { own: 'working', against: 'careful-slow', least: 60, most: 85 },
  'wrong-line': { own: 'working', against: 'careful-slow', least: 60, most: 90 },
  'no-sums': { own: 'working', against: 'careful-slow', least: 60, most: 85 },
  hasty: { own: 'working', against: 'careful-slow', least: 55, most: 85 },
  unmoved: { own: 'belief', against: 'careful-slow', least: 60, most: 85 },
  overbets: { own: 'belief', against: 'careful-slow', least: 60, most: 90 },
  'cites-blindly': { own: 'evidence', against: 'careful-slow', least: 55, most: 85 },
  hazardous: { own: 'care', against: 'careful-slow', most: 40 },
  'first-hunch': { own: 'belief', against: null, least: 20, most: 60 },
  carpet: { own: 'cause', against: null, most: NULLS },
  'base-rate': { own: 'cause', against: null, most: NULLS },
  'random-clicker': { own: 'cause', against: null, most: NULLS },
  idle: { own: 'cause', against: null, most: NULLS },
};

/** Chains from better to worse; each neighbour at least `GAP` points under the one before. */
export const ORDERS: readonly (readonly HabitId[])[] = [
  ['greedy', 'cites-blindly', 'first-hunch', 'carpet'],
  ['greedy', 'unmoved', 'first-hunch', 'base-rate'],
  ['greedy', 'gauge-for-absolute', 'first-hunch', 'random-clicker'],
  ['greedy', 'band-aid', 'first-hunch', 'idle'],
  ['greedy', 'no-sums', 'hazardous', 'idle'],
  ['greedy', 'hasty', 'first-hunch'],
];
