/** Bounds between the words that tell of a number; each word holds below its bound. */

type Scale = readonly (readonly [number, string])[];

const KELVIN = 273.15;

/** Bounds in °C, each with the word for what lies below it. */
export const WARMTH: Scale = [
  [0, 'freezing'],
  [12, 'cold'],
  [20, 'cool'],
  [30, 'mild'],
  [42, 'warm'],
  [60, 'hot'],
  [Number.POSITIVE_INFINITY, 'scalding'],
];
/** Share of gas by volume. */
export const CONTENT: Scale = [
  [0.001, 'liquid'],
  [0.3, 'liquid-with-bubbles'],
  [0.9, 'mixed'],
  [0.999, 'gas-with-drops'],
  [Number.POSITIVE_INFINITY, 'gas'],
];
/** Speed in the pipe, m/s. */
export const PACE: Scale = [
  [0.01, 'still'],
  [0.5, 'slow'],
  [3, 'steady'],
  [Number.POSITIVE_INFINITY, 'fast'],
];
/** Share of rated fan speed. */
export const TURN: Scale = [
  [0.02, 'stopped'],
  [0.75, 'slow'],
  [0.93, 'somewhat'],
  [Number.POSITIVE_INFINITY, 'full'],
];
/** Share covered, or share of air taken away. */
export const AMOUNT: Scale = [
  [0.02, 'none'],
  [0.12, 'trace'],
  [0.4, 'some'],
  [0.8, 'much'],
  [Number.POSITIVE_INFINITY, 'all'],
];
/** Share of gas by volume behind the sight glass. */
export const GLASS: Scale = [
  [0.005, 'clear'],
  [0.15, 'few'],
  [0.7, 'many'],
  [Number.POSITIVE_INFINITY, 'foam'],
];
/** Water off the drain, kg/s. */
export const DRIP: Scale = [
  [2e-5, 'dry'],
  [4e-4, 'slow'],
  [Number.POSITIVE_INFINITY, 'fast'],
];

export function word(scale: Scale, value: number): string {
  return (scale.find(([bound]) => value < bound) ?? scale[scale.length - 1])[1];
}

export const warmthOf = (kelvin: number) => `bench.warmth.${word(WARMTH, kelvin - KELVIN)}`;
export const contentOf = (gas: number) => `bench.content.${word(CONTENT, gas)}`;
