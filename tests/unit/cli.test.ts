import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { familiesOf, PROBES, steady } from '../../physics';
import type { SteadyResult } from '../../physics/types';
import { apply, encode, start, toFile } from '../../src/attempt';
import { parseCsv } from '../../src/attempt/csv';
import type { PackProblem } from '../../src/attempt/pack/problems';
import { cli, jsonLines } from '../support/cli';
import { samplePack } from '../support/pack-fixture';

const folder = mkdtempSync(join(tmpdir(), 'cli-'));
const file = (name: string, text: string) => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};
let packFile = '';
beforeAll(() => {
  packFile = file('sample.pack.json', JSON.stringify(samplePack()));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('exit codes', () => {
  test.each([
    [['--help'], 0],
    [[], 2],
    [['polish'], 2],
    [['run'], 2],
    [['run', 'orifice-split', '--outdoor', 'warm'], 2],
    [['run', 'orifice-split', '--fault', 'undercharge'], 2],
    [['run', 'orifice-split', '--fault', 'undercharge=0.1', '--fault', 'undercharge=0.2'], 2],
    [['run', 'orifice-split', '--json', '--csv'], 2],
    [['run', 'orifice-split', '--steady', '--for', '60'], 2],
    [['run', 'orifice-split', '--every', '5'], 2],
    [['run', 'orifice-split', '--jobs', '-'], 2],
    [['run', 'steam-engine'], 1],
    [['run', 'inverter-split', '--refrigerant', 'R-22'], 1],
    [['run', 'orifice-split', '--fault', 'ghost=1'], 1],
    [['run', 'orifice-split', '--mode', 'heating'], 1],
    [['check', 'no-such.pack.json'], 1],
    [['differential', 'no-such-callout'], 1],
    [['grade', 'no-such.attempt.json'], 1],
  ])('%j ends with %i', async (args, expected) => {
    const { code, out, err } = await cli(args);
    expect(code).toBe(expected);
    if (expected === 0) expect(err).toBe('');
    else {
      expect(out).toBe('');
      expect(err).not.toBe('');
    }
  });

  test('the program as it is started from a shell passes its exit code on', () => {
    const run = (...args: string[]) =>
      spawnSync('node_modules/.bin/tsx', ['src/cli/main.ts', ...args], { encoding: 'utf8' });
    const good = run('run', 'orifice-split', '--json');
    expect([good.status, good.stderr]).toEqual([0, '']);
    expect(JSON.parse(good.stdout).plant).toBe('orifice-split');
    expect(run('run', 'steam-engine').status).toBe(1);
  });
});

describe('run', () => {
  test('--json gives the documented shape: every probe with its unit, what was asked, the balance', async () => {
    const args = [
      'orifice-split',
      '--outdoor',
      '305',
      '--indoor',
      '299',
      '--wet-bulb',
      '291',
      '--fault',
      'undercharge=0.2',
    ];
    const { code, out } = await cli(['run', ...args, '--steady', '--json']);
    expect(code).toBe(0);
    const [answer] = jsonLines<SteadyResult>(out);
    expect(Object.keys(answer).sort()).toEqual(['balance', 'conditions', 'faults', 'plant', 'probes', 'refrigerant']);
    expect(answer.conditions).toEqual({ outdoor: 305, indoor: 299, wetBulb: 291, mode: 'cooling', altitude: 0 });
    expect(answer.faults).toEqual({ undercharge: 0.2 });
    expect(Object.fromEntries(Object.entries(answer.probes).map(([name, { unit }]) => [name, unit]))).toEqual(PROBES);
    for (const { value } of Object.values(answer.probes)) expect(value).toBeTypeOf('number');
    expect(answer.balance).toEqual({ energy: expect.any(Number), mass: expect.any(Number) });
  });

  test('prints what the model computes, to the last bit', async () => {
    const { out } = await cli([
      'run',
      'inverter-split',
      '--fixed-speed',
      '--fault',
      'thermistor-drift:suctionLine=-3',
      '--json',
    ]);
    const [answer] = jsonLines<SteadyResult>(out);
    const { plant, refrigerant, conditions, faults } = answer;
    const own = steady({ plant, refrigerant, conditions, faults }, { fixedSpeed: true });
    expect(answer.probes).toEqual(JSON.parse(JSON.stringify(own.probes)));
    expect(answer.faults).toEqual({ 'thermistor-drift:suctionLine': -3 });
  });

  test('a heat pump heats at its rating point, and says what it cannot be asked for', async () => {
    const { code, out } = await cli(['run', 'thermostatic-heat-pump', '--mode', 'heating', '--json']);
    expect(code).toBe(0);
    const [{ conditions, probes }] = jsonLines<SteadyResult>(out);
    expect(conditions).toEqual({ outdoor: 280.15, indoor: 293.15, wetBulb: 287.15, mode: 'heating', altitude: 0 });
    expect(probes.supplyAirTemp.value).toBeGreaterThan(probes.returnAirTemp.value + 10);
    expect(probes.outdoorLeavingAirTemp.value).toBeLessThan(probes.outdoorAirTemp.value - 2);
    expect(probes.capacityTotal.value).toBeGreaterThan(8000);
    const refused = await cli(['run', 'thermostatic-heat-pump', '--mode', 'simultaneous', '--json']);
    expect(refused.code).toBe(1);
  });

  test('two faults together act together', async () => {
    const one = async (...faults: string[]) => {
      const { out } = await cli(['run', 'orifice-split', ...faults.flatMap((each) => ['--fault', each]), '--json']);
      return jsonLines<SteadyResult>(out)[0].probes;
    };
    const [healthy, dirty, both] = [
      await one(),
      await one('filter-dirty=0.3'),
      await one('filter-dirty=0.3', 'undercharge=0.15'),
    ];
    expect(dirty.supplyAirFlow.value).toBeLessThan(healthy.supplyAirFlow.value);
    expect(both.subcooling.value).toBeLessThan(dirty.subcooling.value - 1);
    expect(both.supplyAirFlow.value).toBeLessThan(healthy.supplyAirFlow.value);
  });

  test('text and CSV show the same numbers as JSON', async () => {
    const probes = jsonLines<SteadyResult>((await cli(['run', 'orifice-split', '--json'])).out)[0].probes;
    const csv = (await cli(['run', 'orifice-split', '--csv'])).out.trimEnd().split('\r\n');
    expect(csv).toHaveLength(2);
    const [names, values] = csv.map((line) => line.split(','));
    expect(Object.fromEntries(names.map((name, index) => [name, Number(values[index])]))).toEqual(
      Object.fromEntries(Object.entries(probes).map(([name, { value, unit }]) => [`${name} (${unit})`, value])),
    );
    const text = (await cli(['run', 'orifice-split'])).out;
    expect(text).toMatch(new RegExp(`^superheat +${Number(probes.superheat.value.toPrecision(6))} +K$`, 'm'));
  });

  test('--for shows the machine in time, the last second included, the same whatever the spacing', async () => {
    const run = async (every: string) =>
      jsonLines<{ time: number; probes: SteadyResult['probes'] }>(
        (await cli(['run', 'orifice-split', '--for', '100', '--every', every, '--json'])).out,
      );
    const [coarse, fine] = [await run('40'), await run('20')];
    expect(coarse.map(({ time }) => time)).toEqual([0, 40, 80, 100]);
    expect(fine.map(({ time }) => time)).toEqual([0, 20, 40, 60, 80, 100]);
    expect(coarse).toEqual([fine[0], fine[2], fine[4], fine[5]]);
    expect(coarse[3].probes.refrigerantMassFlow.value).toBeGreaterThan(0.01);
    expect(coarse[0].probes.suctionPressure).toEqual(coarse[0].probes.dischargePressure);
  });

  test('--jobs answers each line in order with its id; a bad line gets an error and stops nothing', async () => {
    const lines = [
      '{"id":"a","plant":"orifice-split","faults":{"undercharge":0.2}}',
      'not json',
      '{"id":3,"plant":"steam-engine"}',
      '{"id":"d","plant":"inverter-split","refrigerant":"R-22"}',
      '{"id":"e","plant":"orifice-split","outdoor":"warm"}',
      '{"id":"f","plant":"orifice-split","typo":1}',
      '[]',
      '{"id":"h","plant":"inverter-split"}',
    ];
    const { code, out } = await cli(['run', '--jobs', '-'], lines.join('\n'));
    expect(code).toBe(0);
    const answers = jsonLines<SteadyResult & { id: unknown; error?: { code: string; message: string } }>(out);
    expect(answers.map(({ id, error }) => [id, error?.code ?? 'good'])).toEqual([
      ['a', 'good'],
      [null, 'bad-json'],
      [3, 'bad-input'],
      ['d', 'bad-input'],
      ['e', 'bad-input'],
      ['f', 'bad-input'],
      [null, 'bad-input'],
      ['h', 'good'],
    ]);
    expect(answers[1].error?.message).toContain('line 2');
    expect(answers[4].error?.message).toContain('outdoor');
    expect(answers[5].error?.message).toContain('typo');
    const alone = jsonLines<SteadyResult>(
      (await cli(['run', 'orifice-split', '--fault', 'undercharge=0.2', '--json'])).out,
    );
    expect(answers[0]).toEqual({ id: 'a', ...alone[0] });
  });
});

describe('check', () => {
  test('a pack in order passes, from a file and from standard input', async () => {
    expect(await cli(['check', packFile, '--without-proof'])).toEqual({
      code: 0,
      out: 'sample-street version 1: 2 callouts, in order\n',
      err: '',
    });
    const piped = await cli(['check', '-', '--json', '--without-proof'], JSON.stringify(samplePack()));
    expect(jsonLines(piped.out)).toEqual([
      {
        pack: 'sample-street',
        version: 1,
        ok: true,
        problems: [],
        failed: [],
        doubtful: [],
        callouts: [],
        routine: null,
      },
    ]);
  });

  test('every mistake is told with its place; --json gives them as data too', async () => {
    const pack = structuredClone(samplePack()) as unknown as { version: unknown; callouts: { budget: unknown }[] };
    pack.version = 'one';
    pack.callouts[1].budget = 2;
    const path = file('bad.pack.json', JSON.stringify(pack));
    const { code, out, err } = await cli(['check', path, '--json']);
    expect(code).toBe(1);
    expect(err).toContain(`${path}: version: found "one", expected whole number`);
    expect(err).toContain('callout front-shop, budget: found 2, expected simulated minutes, from 5 to 480');
    const [report] = jsonLines<{ ok: boolean; problems: PackProblem[] }>(out);
    expect(report.ok).toBe(false);
    expect(report.problems.map(({ pointer }) => pointer)).toEqual(['/version', '/callouts/1/budget']);
  });

  test('a machine that has no steady state fails the check', async () => {
    const pack = structuredClone(samplePack());
    const hot = {
      ...pack.callouts[0],
      conditions: { ...pack.callouts[0].conditions, outdoor: 328.15 },
      faults: { 'condenser-dirty': 0.65, overcharge: 0.45 },
      tally: { 'condenser-dirty': 50, overcharge: 50 },
    };
    const path = file(
      'hot.pack.json',
      JSON.stringify({
        ...pack,
        callouts: [hot, pack.callouts[1], { ...pack.callouts[0], id: 'front-shop-2' }],
      }).replace('"lookAlike":"front-shop"', '"lookAlike":"front-shop-2"'),
    );
    const { code, err, out } = await cli(['check', path, '--json']);
    expect(code).toBe(3);
    expect(err).toContain('callout back-office: the machine has no steady state');
    expect(jsonLines<{ failed: { callout: string; rule: string }[] }>(out)[0].failed).toEqual([
      {
        callout: 'back-office',
        rule: 'runs',
        why: expect.stringContaining('nothing can be read'),
        mend: expect.stringContaining('other weather'),
        message: expect.any(String),
      },
    ]);
  });
});

describe('differential and grade', () => {
  const attempt = () => {
    let state = start(samplePack(), 'back-office', 'seed-1');
    state = apply(state, { kind: 'look', place: state.site.plant.places.find(({ kind }) => kind === 'look')!.id });
    state = apply(state, {
      kind: 'verdict',
      cause: 'undercharge',
      size: 'clear',
      rival: 'drier-restriction',
      cites: [],
    });
    return state.attempt;
  };

  test('a differential names every rival of the plant, with a spread, in every state', async () => {
    const { code, out, err } = await cli(['differential', `${packFile}#back-office`, '--csv']);
    expect(code, err).toBe(0);
    const [header, ...rows] = parseCsv(out);
    expect(header).toEqual(['fault', 'severity', 'state', 'channel', 'unit', 'mean', 'spread']);
    const at = (fault: string, channel: string) =>
      rows.filter((row) => row[0] === fault && row[2] === 'running' && row[3] === channel).map((row) => Number(row[5]));
    expect(new Set(rows.map(([fault]) => fault)).size).toBe(familiesOf('orifice-split').length + 1);
    const healthy = at('no-fault', 'suctionPressure')[0];
    expect(Math.max(...at('undercharge', 'suctionPressure'))).toBeLessThan(healthy);
    expect(Math.min(...at('compressor-leak-by', 'suctionPressure'))).toBeGreaterThan(healthy);
    expect(rows.every((row) => row.length === 7 && Number.isFinite(Number(row[5])) && Number(row[6]) >= 0)).toBe(true);
  }, 120_000);

  test('codes, files and lines of either give the same verified score; what cannot be graded says why', async () => {
    const code = encode(attempt());
    const saved = file('one.attempt.json', toFile(attempt()));
    const stranger = encode({ ...attempt(), pack: 'elsewhere' });
    const edited = encode({ ...attempt(), actions: attempt().actions.map((each) => ({ ...each, t: each.t + 7 })) });
    const lines = [code, JSON.stringify(attempt()), `${code.slice(0, -3)}xyz`, stranger, edited].join('\n');
    const graded = await cli(['grade', code, saved, '-', '--pack', packFile, '--json'], lines);
    expect(graded.code).toBe(1);
    expect(graded.err).toContain('3 of 7 attempts could not be graded');
    const rows = jsonLines<{ source: string; total?: number; error?: { code: string } }>(graded.out);
    expect(rows.map(({ source, error }) => [source, error?.code ?? 'good'])).toEqual([
      ['code 1', 'good'],
      [saved, 'good'],
      ['standard input:1', 'good'],
      ['standard input:2', 'good'],
      ['standard input:3', 'damaged'],
      ['standard input:4', 'wrong-pack'],
      ['standard input:5', 'time-differs'],
    ]);
    const scores = rows.slice(0, 4).map(({ source: _source, ...rest }) => rest);
    expect(scores[0].total).toBeGreaterThanOrEqual(0);
    expect(scores[0].total).toBeLessThan(30);
    for (const score of scores) expect(score).toEqual(scores[0]);
  }, 120_000);

  test('the CSV has one row an attempt and a column for every part', async () => {
    const { code, out } = await cli(['grade', encode(attempt()), 'bench1.0.0.0', '--pack', packFile, '--csv']);
    expect(code).toBe(1);
    const [header, good, bad] = parseCsv(out);
    expect(header).toEqual(
      expect.arrayContaining(['total', 'cause', 'belief', 'evidence', 'working', 'repair', 'economy']),
    );
    expect(good).toHaveLength(header.length);
    expect(bad).toHaveLength(header.length);
    expect(good[header.indexOf('verdict')]).toBe('undercharge');
    expect(bad[header.indexOf('errorCode')]).toBe('damaged');
  }, 120_000);
});
