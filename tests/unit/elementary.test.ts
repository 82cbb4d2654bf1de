import { expect, test } from 'vitest';
import { exp, ln, pow, tanh } from '../../physics/math/elementary';
import { stream } from './fluids/reference';

const BITS = new BigInt64Array(1);
const VALUE = new Float64Array(BITS.buffer);

/** Distance in units in the last place. */
function ulps(a: number, b: number): number {
  if (Object.is(a, b)) return 0;
  if (Number.isNaN(a) || Number.isNaN(b)) return Infinity;
  VALUE[0] = a;
  const x = BITS[0];
  VALUE[0] = b;
  const d = Number(x - BITS[0]);
  return Math.abs(d);
}

function worst(count: number, seed: number, sample: (random: () => number) => [number, number]): number {
  const random = stream(seed);
  let most = 0;
  for (let i = 0; i < count; i++) most = Math.max(most, ulps(...sample(random)));
  return most;
}

// The engine's own functions are good to about 1 ulp themselves, so 1 is the best that can be asked of a comparison.
test('exp agrees with the engine to 1 ulp over its whole range', () => {
  expect(worst(50_000, 1, (r) => both((r() - 0.5) * 1490, exp, Math.exp))).toBeLessThanOrEqual(1);
  expect(worst(50_000, 2, (r) => both((r() - 0.5) * 4, exp, Math.exp))).toBeLessThanOrEqual(1);
});

test('ln agrees with the engine to 1 ulp, near 1 and over its whole range', () => {
  expect(worst(50_000, 3, (r) => both(0.5 + r(), ln, Math.log))).toBeLessThanOrEqual(1);
  expect(worst(50_000, 4, (r) => both(Math.exp((r() - 0.5) * 1490), ln, Math.log))).toBeLessThanOrEqual(1);
});

test('pow agrees with the engine to 1 ulp', () => {
  const check = (x: number, y: number): [number, number] => [pow(x, y), x ** y];
  expect(worst(50_000, 5, (r) => check(Math.exp((r() - 0.5) * 20), (r() - 0.5) * 60))).toBeLessThanOrEqual(1);
  expect(worst(50_000, 6, (r) => check(Math.exp((r() - 0.5) * 600), (r() - 0.5) * 2.3))).toBeLessThanOrEqual(1);
  expect(worst(50_000, 7, (r) => check(0.9 + 0.2 * r(), (r() - 0.5) * 4000))).toBeLessThanOrEqual(1);
});

test('tanh agrees with the engine to 3 ulp', () => {
  expect(worst(50_000, 8, (r) => both((r() - 0.5) * 50, tanh, Math.tanh))).toBeLessThanOrEqual(3);
  expect(worst(50_000, 9, (r) => both((r() - 0.5) * 1.2, tanh, Math.tanh))).toBeLessThanOrEqual(3);
});

function both(x: number, ours: (x: number) => number, engine: (x: number) => number): [number, number] {
  return [ours(x), engine(x)];
}

test.each([
  ['exp', exp, Math.exp],
  ['ln', ln, Math.log],
  ['tanh', tanh, Math.tanh],
] as const)('%s at its edges', (_name, ours, engine) => {
  for (const x of [
    0,
    -0,
    1,
    -1,
    5e-324,
    1e-310,
    1e308,
    -1e308,
    709.78,
    709.79,
    -745.1,
    -745.2,
    Infinity,
    -Infinity,
    NaN,
  ]) {
    expect(ulps(ours(x), engine(x))).toBeLessThanOrEqual(1);
  }
});

test.each([
  [2, 10, 1024],
  [0, 2, 0],
  [0, -2, Infinity],
  [0, 0, 1],
  [1, 1e300, 1],
  [2, -1074, 5e-324],
  [2, 1024, Infinity],
  [2, -1080, 0],
  [Infinity, -1, 0],
  [Infinity, 2, Infinity],
  [0.5, 1e21, 0],
  [0.5, -1e21, Infinity],
  [2, Infinity, Infinity],
  [3, Number.NaN, Number.NaN],
  [-2, 0.5, Number.NaN],
])('pow(%d, %d) = %d', (x, y, result) => {
  expect(pow(x, y)).toBe(result);
});

// Bits pinned, so that a change of method, or an engine that rounds differently, is seen at once.
test('the same bits everywhere', () => {
  expect([exp(1.2), ln(7), pow(10, 0.3), pow(1.5, -7.25), tanh(0.7)]).toEqual([
    3.3201169227365472, 1.9459101490553132, 1.9952623149688795, 0.05288571397442164, 0.6043677771171635,
  ]);
});
