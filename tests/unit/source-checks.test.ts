import { expect, test } from 'vitest';
import { layerOf, objection } from '../../tools/directions.mjs';
import { impurities } from '../../tools/purity.mjs';

test.each([
  ['physics/solve/steady.ts', '../../src/attempt/types', 'physics → src/attempt runs back'],
  ['physics/solve/steady.ts', 'seedrandom', 'no package at all'],
  ['src/instruments/gauge.ts', '../attempt/types', 'src/instruments → src/attempt runs back'],
  ['src/attempt/replay.ts', '../examiner/score', 'src/attempt → src/examiner runs back'],
  ['src/examiner/score.ts', '../panels/Stakes', 'src/examiner → src/panels runs back'],
  ['src/panels/Stakes.tsx', '../bench/scene', 'src/panels → src/bench runs back'],
  ['src/bench/scene.ts', '../panels/Stakes', 'src/bench → src/panels runs back'],
  ['src/cli/main.ts', '../bench/scene', 'src/cli → src/bench runs back'],
  ['src/cli/main.ts', 'phaser', 'not "phaser"'],
  ['src/newcomer/a.ts', '../attempt/types', 'is in no table'],
])('%s may not import %s', (file, specifier, message) => {
  expect(objection(file, specifier)).toContain(message);
});

test.each([
  ['physics/solve/steady.ts', '../fluids/table'],
  ['src/instruments/gauge.ts', '../../physics/types'],
  ['src/instruments/gauge.ts', 'seedrandom/lib/alea'],
  ['src/attempt/replay.ts', '../instruments/types'],
  ['src/attempt/pack/shipped.ts', '../../../scenarios/first.json'],
  ['src/examiner/score.ts', '../attempt/replay'],
  ['src/cli/main.ts', 'node:fs'],
  ['src/main.tsx', './app/App'],
])('%s may import %s', (file, specifier) => {
  expect(objection(file, specifier)).toBeNull();
});

test('a file directly in src/ is a layer of its own', () => {
  expect(layerOf('src/main.tsx')).toBe('src/main');
});

test.each([
  ['Math.exp(x)', 'Math.exp differs'],
  ['Math.random()', 'no seed'],
  ['x ** 2', '** differs'],
  ['let y = 2; y **= 3', '** differs'],
  ['const { pow } = Math', 'as a whole'],
  ['Date.now()', 'no clock'],
  ['setTimeout(f, 1)', 'no clock'],
  ['globalThis.x = document.title', 'physics/ runs'],
  ['(1.5).toLocaleString()', 'language of the machine'],
])('the core may not contain: %s', (code, message) => {
  expect(impurities('physics/sample.ts', code).map(({ text }) => text)).toEqual([expect.stringContaining(message)]);
});

test.each([
  'Math.sqrt(x) + Math.abs(y) + Math.PI',
  'interface A { Date: number } const a: A = { Date: 1 }; use(a.Date)',
  '/* Math.exp in a comment */ const text = "Math.exp"',
])('the core may contain: %s', (code) => {
  expect(impurities('physics/sample.ts', code)).toEqual([]);
});
