/** `qualify` as a command, and the report that is kept with the documents. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, test, vi } from 'vitest';
import { familiesOf, PLANTS } from '../../physics';
import { type Finding, listedMisses, SECTIONS, SWEPT, sweeps, VARIANTS, verdictOf } from '../../physics/qualification';
import { countRows } from '../../src/cli/qualify/report';
import { sheet } from '../../src/cli/qualify/sheet';
import { cli, jsonLines } from '../support/cli';

const folder = mkdtempSync(join(tmpdir(), 'qualify-'));
afterAll(() => rmSync(folder, { recursive: true }));

interface Report {
  readonly sections: readonly string[];
  readonly plants: readonly { plant: string | null; tests: number; held: number; missed: number; failed: number }[];
  readonly total: { tests: number; held: number; missed: number; failed: number };
  readonly findings: readonly (Omit<Finding, 'low' | 'high' | 'ours' | 'holds'> & {
    readonly section: string;
    readonly plant: string | null;
    readonly low: number | null;
    readonly high: number | null;
    readonly ours: number | null;
    readonly verdict: string;
    readonly reason: string | null;
  })[];
}

/** Run by tests of their own. */
const SLOW = ['time', 'random', 'abuse', 'coldRoomTime', 'networkTime', 'heatRecovery', 'multiSplit', 'heatPump'];
const CHEAP = Object.keys(SECTIONS).filter((name) => !SLOW.includes(name));

describe('qualify', () => {
  test('--json: every finding of the chosen sections with its verdict; counts add up; misses have reasons', async () => {
    const { code, out, err } = await cli(['qualify', '--sections', 'slopes,envelopes', '--json']);
    const [report] = jsonLines<Report>(out);
    expect([code, err]).toEqual([0, '']);
    expect(report.sections).toEqual(['slopes', 'envelopes']);
    const expected = [...SECTIONS.slopes(), ...SECTIONS.envelopes()];
    expect(report.findings.map(({ id, ours, verdict }) => ({ id, ours, verdict }))).toEqual(
      expected.map((one) => ({ id: one.id, ours: one.ours, verdict: verdictOf(one) })),
    );
    for (const name of ['tests', 'held', 'missed', 'failed'] as const) {
      expect(report.plants.reduce((sum, each) => sum + each[name], 0)).toBe(report.total[name]);
    }
    const missed = report.findings.filter(({ verdict }) => verdict === 'missed');
    expect(missed.length).toBeGreaterThan(0);
    expect(missed.every(({ id, reason }) => listedMisses().includes(id) && (reason?.length ?? 0) > 10)).toBe(true);
    expect(report.findings.find(({ high }) => high === null)?.low).not.toBeNull();
  });

  test('a plant: its own findings and none of another; the Markdown names source, range, figure and verdict', async () => {
    const all = await cli(['qualify', '--sections', 'envelopes', '--json']);
    const one = await cli(['qualify', 'inverter-split', '--sections', 'envelopes', '--json']);
    const [whole] = jsonLines<Report>(all.out);
    const [part] = jsonLines<Report>(one.out);
    expect(part.findings).toEqual(whole.findings.filter(({ plant }) => plant === 'inverter-split'));
    expect(part.findings.length).toBeLessThan(whole.findings.length);
    const { out } = await cli(['qualify', 'inverter-split', '--sections', 'envelopes']);
    expect(out).not.toContain('orifice-r410a');
    for (const { id, what, verdict } of part.findings) expect(out).toContain(`| ${id} | ${what} | ${verdict} |`);
    for (const source of new Set(part.findings.map(({ source: name }) => name))) expect(out).toContain(`. ${source}`);
  });

  test('--report writes the document and prints the counts; the same twice', async () => {
    const path = join(folder, 'new', 'report.md');
    const args = ['qualify', '--sections', 'healthy', '--report', path];
    const first = await cli(args);
    const written = readFileSync(path, 'utf8');
    const second = await cli(args);
    expect([first.code, second.code, readFileSync(path, 'utf8')]).toEqual([0, 0, written]);
    expect(first.out).toBe(second.out);
    expect(first.out.split('\n')[0].split(/\s{2,}/)).toEqual(['plant', 'tests', 'hold', 'miss', 'fail']);
    for (const line of countRows('healthy', SECTIONS.healthy())) expect(written).toContain(line);
  });

  test.each([
    [['qualify', 'steam-engine'], 1],
    [['qualify', '--sections', 'weather'], 2],
    [['qualify', '--without', 'weather'], 2],
    [['qualify', '--sections', 'slopes', '--without', 'time'], 2],
  ])('%j ends with %i and says why', async (args, expected) => {
    const { code, out, err } = await cli(args);
    expect([code, out]).toEqual([expected, '']);
    expect(err).toMatch(/steam-engine|weather|both/);
  });

  test('a report that cannot be written is refused by its path', async () => {
    const blocked = join(folder, 'file');
    writeFileSync(blocked, '');
    const { code, err } = await cli(['qualify', '--sections', 'slopes', '--report', join(blocked, 'report.md')]);
    expect(code).toBe(1);
    expect(err).toContain(join(blocked, 'report.md'));
  });
});

describe('a test that fails', () => {
  afterEach(() => {
    vi.restoreAllMocks();
  });

  test('ends with 3 and is told, the results all the same', async () => {
    const [good, ...rest] = SECTIONS.slopes();
    const bad = { ...good, holds: false, ours: 99 };
    vi.spyOn(SECTIONS as Record<string, () => readonly Finding[]>, 'slopes').mockReturnValue([bad, ...rest]);
    const { code, out, err } = await cli(['qualify', '--sections', 'slopes', '--json']);
    expect(code).toBe(3);
    expect(err).toContain(bad.id);
    expect(jsonLines<Report>(out)[0].total.failed).toBe(1);
  });
});

describe('sheets', () => {
  test('one a machine of the plant: every fault, every curve of numbers, nothing from outside', async () => {
    const path = join(folder, 'sheets');
    const { code } = await cli(['qualify', 'orifice-split', '--sections', 'slopes', '--sheets', path]);
    const machines = VARIANTS.filter(({ plant }) => plant === 'orifice-split');
    expect(code).toBe(0);
    expect(readdirSync(path).sort()).toEqual(machines.map(({ id }) => `${id}.html`).sort());
    const html = readFileSync(join(path, `${machines[0].id}.html`), 'utf8');
    for (const { id } of familiesOf('orifice-split')) expect(html).toContain(`<code>${id}</code>`);
    const curves = html.match(/class="curve" d="([^"]*)"/g) ?? [];
    // what goes both ways is drawn both ways
    const drawn = familiesOf('orifice-split').reduce((count, { signed }) => count + (signed ? 2 : 1), 0);
    const quiet = html.match(/Nothing that is read here moves/g) ?? [];
    expect(curves.length).toBe(16 * (drawn - quiet.length));
    expect(curves.length).toBeGreaterThan(12 * drawn);
    expect(html).not.toMatch(/NaN|Infinity|undefined|<script|https?:|src=|url\(/);
  });

  test('a sweep: starts sound, ends at the end of the range, is broken where the machine stops and says on what', () => {
    const fixed = SWEPT.find(({ id }) => id === 'inverter-fixed');
    const all = sweeps(fixed!, 12);
    const closing = all.find(({ key }) => key === 'metering-valve-stuck-closing');
    const drift = all.filter(({ family }) => family === 'thermistor-drift');
    expect(all.map(({ points }) => JSON.stringify(points[0].readings))).toEqual(
      all.map(() => JSON.stringify(all[0].points[0].readings)),
    );
    expect(closing?.points.at(-1)).toMatchObject({ severity: closing?.max, readings: null, stop: 'discharge-heat' });
    // held at its rated speed it cannot be slowed, however hot its discharge
    expect(closing?.corners.map(({ name }) => name)).not.toContain('slowed by its controller');
    expect(drift.map(({ key, max }) => [key, Math.sign(max)])).toEqual([
      ['thermistor-drift:suctionLine', 1],
      ['thermistor-drift:suctionLine', -1],
      ['thermistor-drift:evaporatorCoil', 1],
      ['thermistor-drift:evaporatorCoil', -1],
    ]);
  });
});

describe('sheets of many units', () => {
  const machine = SWEPT.find(({ id }) => id === 'multi-r410a-cooling');
  const only = (...keys: string[]) => ({
    ...machine!,
    faults: machine!.faults.filter(({ key }) => keys.includes(key)),
  });

  test('every plant has a sheet in each of its modes', () => {
    const sheets = SWEPT.map(({ plant, mode }) => `${plant} ${mode}`);
    for (const { id, modes } of Object.values(PLANTS)) {
      for (const mode of Object.keys(modes)) expect(sheets).toContain(`${id} ${mode}`);
    }
  });

  test('a fault of one unit stands beside a sibling, and only its own readings move much', () => {
    const chosen = only('metering-valve-stuck-closing@unit3');
    const [sweep] = sweeps(chosen, 4);
    const change = (name: string): number =>
      (sweep.points.at(-1)?.readings?.[name] ?? Number.NaN) - (sweep.points[0].readings?.[name] ?? Number.NaN);
    expect([sweep.unitWith, sweep.unitWithout]).toEqual(['unit3', 'unit5']);
    expect(change('SH@unit3')).toBeGreaterThan(6);
    expect(Math.abs(change('SH@unit5'))).toBeLessThan(1);
    const html = sheet(chosen, [sweep]);
    expect(html.match(/class="beside" d="M/g)).toHaveLength(5);
    expect(html).not.toMatch(/NaN|Infinity|undefined/);
  });

  test('what has no size is a table, and what shows nothing says so', () => {
    const chosen = only('unit-address-crossed@unit3', 'supply-voltage-low');
    const [voltage, crossed] = sweeps(chosen, 4);
    const quiet = {
      ...voltage,
      points: voltage.points.map((point) => ({ ...point, readings: voltage.points[0].readings })),
    };
    expect(crossed.points).toHaveLength(2);
    expect(sheet(chosen, [crossed])).toContain('<table>');
    expect(sheet(chosen, [voltage])).toContain('<svg');
    expect(sheet(chosen, [quiet])).toContain('Nothing that is read here moves');
    expect(sheet(chosen, [quiet])).not.toContain('<svg');
  });
});

describe('docs/qualification.md', () => {
  const kept = readFileSync('docs/qualification.md', 'utf8');

  test.each(CHEAP)('counts of %s are those of the machines as they are', { timeout: 120_000 }, (name) => {
    for (const line of countRows(name, SECTIONS[name]())) expect(kept.split('\n')).toContain(line);
  });

  test('holds every section, and no failure', () => {
    for (const name of Object.keys(SECTIONS)) expect(kept).toContain(`| ${name} |`);
    expect(kept).not.toContain('## What fails');
  });
});
