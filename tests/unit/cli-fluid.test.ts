import { PassThrough, Readable } from 'node:stream';
import { text } from 'node:stream/consumers';
import { Command } from 'commander';
import { expect, test } from 'vitest';
import { fluidEos } from '../../physics/fluids/fluid';
import { fluidPoint } from '../../physics/fluids/point';
import { registerFluid } from '../../src/cli/fluid';
import { FLUIDS, reference, saturated, Worst } from './fluids/reference';

async function run(args: readonly string[], input = ''): Promise<{ out: string; err: string }> {
  const stdout = new PassThrough();
  const stderr = new PassThrough();
  const program = new Command().exitOverride().configureOutput({ writeErr: () => undefined });
  registerFluid(program, { stdin: Readable.from([Buffer.from(input)]), stdout, stderr });
  for (const command of program.commands) command.copyInheritedSettings(program);
  const out = text(stdout);
  const err = text(stderr);
  try {
    await program.parseAsync(['fluid', ...args], { from: 'user' });
  } finally {
    stdout.end();
    stderr.end();
  }
  return { out: await out, err: await err };
}

const lines = (out: string) => out.trimEnd().split('\n');

test('one point as JSON has the promised fields and nothing else', async () => {
  const { out } = await run(['R-32', '--p', '1.0e6', '--h', '4.2e5', '--json']);
  const point = JSON.parse(out);
  expect(Object.keys(point)).toEqual(['t', 'p', 'h', 's', 'rho', 'q', 'phase']);
  expect(point).toEqual(fluidPoint(fluidEos('R-32'), { p: 1e6, h: 4.2e5 }));
  expect(point.phase).toBe('two-phase');
});

test('without --json a person reads values with units', async () => {
  const { out } = await run(['R-32', '--p', '1e6', '--t', '300']);
  expect(out).toMatch(/^t +300 +K$/m);
  expect(out).toMatch(/^q +- +-$/m);
  expect(out).toMatch(/^phase +vapour$/m);
});

// Tolerances of the design: 0.05 % on p, 0.1 % on rho, 0.1 K, 150 J/kg.
test.each(FLUIDS)('a batch answers every row of the reference tables of %s within tolerance', async (id) => {
  const { superheated, subcooled } = reference(id);
  const { bubble, dew } = saturated(id);
  const asked: { ask: object; expected: Record<string, number> }[] = [];
  for (const row of bubble) {
    const expected = { p: row.p_bubble, rho: row.rho_liq, h: row.h_liq, s: row.s_liq };
    asked.push({ ask: { t: row.T, q: 0 }, expected });
  }
  for (const row of dew) {
    const expected = { p: row.p_dew, rho: row.rho_vap, h: row.h_vap, s: row.s_vap };
    asked.push({ ask: { t: row.T, q: 1 }, expected });
  }
  for (const row of [...superheated, ...subcooled]) {
    const { T: t, p, h, rho, s } = row;
    asked.push({ ask: { p, t }, expected: { h, rho, s } }, { ask: { p, h }, expected: { t, rho, s } });
  }
  const { out } = await run([id, '--points', '-'], asked.map(({ ask }) => `${JSON.stringify(ask)}\n`).join(''));
  const answers = lines(out).map((line) => JSON.parse(line));
  expect(answers).toHaveLength(asked.length);
  const worst = new Worst();
  asked.forEach(({ expected }, i) => {
    for (const [name, value] of Object.entries(expected)) {
      const relative = name === 'p' || name === 'rho';
      worst.note(name, relative ? answers[i][name] / value - 1 : answers[i][name] - value);
    }
  });
  expect(worst.over({ p: 5e-4, rho: 1e-3, t: 0.1, h: 150, s: 0.5 })).toEqual([]);
});

test('a refused line is answered in its place, with the line number, and the batch goes on', async () => {
  const batch = [
    '{"p":1e6,"h":4.2e5}',
    'no json',
    '',
    '{"p":1e6}',
    '{"p":1e6,"t":300,"h":3e5}',
    '[1,2]',
    '{"p":"1e6","t":300}',
    '{"t":5000,"q":1}',
    '{"t":300,"q":0.5}',
  ];
  const answers = lines((await run(['R-410A', '--points', '-'], batch.join('\n'))).out).map((line) => JSON.parse(line));
  expect(answers.map((answer) => answer.error?.code ?? answer.phase)).toEqual([
    'two-phase',
    'bad-input',
    'bad-input',
    'bad-input',
    'bad-input',
    'bad-input',
    'range',
    'two-phase',
  ]);
  expect(answers[1].error.message).toBe('line 2: not JSON');
  expect(answers[2].error.message).toContain('line 4: expected p and h, t and q, or p and t, found p');
  expect(answers[3].error.message).toContain('found p, t, h');
});

test('the saturation table holds the equilibrium lines', async () => {
  const { refrigerant, rows } = JSON.parse((await run(['R-410A', '--table', '--json'])).out);
  expect(refrigerant).toBe('R-410A');
  const row = rows.find(({ t }: { t: number }) => t === 273.15);
  expect(row.pBubble).toBeGreaterThan(row.pDew);
  expect(row.hLiquid).toBeCloseTo(200e3, 6);
  expect(lines((await run(['R-410A', '--table'])).out)).toHaveLength(rows.length + 1);
});

test.each([
  [['R-32']],
  [['R-32', '--t', '300']],
  [['R-32', '--h', '3e5', '--q', '1']],
  [['R-32', '--t', '300', '--q', '1', '--p', '1e6']],
])('%j does not say what is asked', async (args) => {
  await expect(run(args)).rejects.toThrow('give p and h, t and q, or p and t');
});

test.each([
  [['R-32', '--t', 'warm', '--q', '1'], 'expected a number'],
  [['R-32', '--table', '--t', '300'], 'cannot be used with'],
  [['R-999', '--t', '300', '--q', '1'], 'unknown refrigerant'],
  [['R-32', '--t', '30', '--q', '1'], 'R-32: t 30 is outside'],
  [['R-32', '--points', 'no-such-file'], 'no-such-file: no such file'],
])('%j is refused: %s', async (args, message) => {
  await expect(run(args)).rejects.toThrow(message);
});
