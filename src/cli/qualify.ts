/** `qualify`: what published figures and the trade ask of the machines, and what the machines give. */
import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Command } from 'commander';
import { PHYSICS_VERSION, type PlantId, plantDescription } from '../../physics';
import {
  count,
  type Finding,
  plantOf,
  reasonFor,
  reportTable,
  SECTIONS,
  SWEPT,
  sweeps,
  verdictOf,
} from '../../physics/qualification';
import { CheckFailed, RefusedInput, UsageError } from './exit';
import { type Io, write, writeJsonLine } from './io';
import { type Progress, startProgress } from './progress';
import { byPlant, markdownReport, rowName, type Sections } from './qualify/report';
import { sheet } from './qualify/sheet';
import { textTable } from './table';

interface QualifyOptions {
  sections?: readonly string[];
  without?: readonly string[];
  report?: string;
  sheets?: string;
  json?: boolean;
}

const NAMES = Object.keys(SECTIONS);
const list = (text: string): string[] => text.split(',').map((each) => each.trim());

export function registerQualify(program: Command, io: Io): void {
  program
    .command('qualify')
    .argument('[plant]', 'one plant; left out = all')
    .description('every test of the machines: source, what it allows, our figure, verdict; exit code 3 where one fails')
    .option('--sections <names>', `only these, separated by commas: ${NAMES.join(', ')}`, list)
    .option('--without <names>', 'all but these (the slow ones are time, random and abuse)', list)
    .option('--report <file>', 'write the report to this file (Markdown); counts alone go to standard output')
    .option(
      '--sheets <folder>',
      'write one HTML sheet a machine and mode: every fault, the telling readings against severity',
    )
    .option('--json', 'counts and findings as one JSON object; an open end of a range is null')
    .action((plant: string | undefined, options: QualifyOptions) => qualify(plant, options, io));
}

async function qualify(name: string | undefined, options: QualifyOptions, io: Io): Promise<void> {
  const plant = name === undefined ? null : plantDescription(name).id;
  const chosen = chooseSections(options);
  const machines = options.sheets === undefined ? [] : SWEPT.filter((each) => plant === null || each.plant === plant);
  const progress = startProgress(io, 'qualify');
  const steps = chosen.length + machines.length;
  const sections = await runSections(chosen, plant, steps, progress);
  if (options.sheets !== undefined) {
    for (const [i, machine] of machines.entries()) {
      await announce(progress, chosen.length + i, steps, `sheet ${machine.id}`);
      await save(join(options.sheets, `${machine.id}.html`), sheet(machine, sweeps(machine)));
    }
  }
  progress.end();

  const report = markdownReport(sections, commandLine(name, options));
  if (options.report !== undefined) await save(options.report, report);
  if (options.json) await writeJsonLine(io, jsonReport(sections));
  else await write(io.stdout, options.report === undefined ? report : countsTable(sections));

  const failed = sections.flatMap(([, findings]) => findings.filter((one) => verdictOf(one) === 'failed'));
  if (failed.length > 0) throw new CheckFailed(reportTable(failed));
}

function chooseSections({ sections, without }: QualifyOptions): string[] {
  if (sections && without) throw new UsageError('qualify: either --sections or --without, not both');
  for (const each of [...(sections ?? []), ...(without ?? [])]) {
    if (!NAMES.includes(each)) throw new UsageError(`qualify: no section "${each}"; known are ${NAMES.join(', ')}`);
  }
  return NAMES.filter((each) => (sections ? sections.includes(each) : !without?.includes(each)));
}

/** What is drawn over all plants together counts for each of them. */
async function runSections(
  names: readonly string[],
  plant: PlantId | null,
  steps: number,
  progress: Progress,
): Promise<Sections> {
  const done: [string, readonly Finding[]][] = [];
  for (const [i, name] of names.entries()) {
    await announce(progress, i, steps, `now: ${name}`);
    const findings = SECTIONS[name]();
    done.push([name, plant === null ? findings : findings.filter((one) => [plant, null].includes(plantOf(one)))]);
  }
  return done;
}

/** Says where the work stands, and lets the line out before the next long computation. */
async function announce(progress: Progress, done: number, total: number, what: string): Promise<void> {
  progress.at(done, total, `steps, ${what},`);
  await new Promise((resolve) => setImmediate(resolve));
}

function countsTable(sections: Sections): string {
  const all = sections.flatMap(([, findings]) => findings);
  const cells = (name: string, findings: readonly Finding[]): string[] => {
    const { tests, held, missed, failed } = count(findings);
    return [name, ...[tests, held, missed, failed].map(String)];
  };
  return textTable(
    ['plant', 'tests', 'hold', 'miss', 'fail'],
    [...byPlant(all).map(([plant, group]) => cells(rowName(plant), group)), cells('all', all)],
  );
}

const bounded = (value: number): number | null => (Number.isFinite(value) ? value : null);

function jsonReport(sections: Sections): object {
  const all = sections.flatMap(([, findings]) => findings);
  return {
    physics: PHYSICS_VERSION,
    sections: sections.map(([name]) => name),
    plants: byPlant(all).map(([plant, group]) => ({ plant, ...count(group) })),
    total: count(all),
    findings: sections.flatMap(([section, findings]) =>
      findings.map((one) => ({
        section,
        plant: plantOf(one),
        id: one.id,
        what: one.what,
        source: one.source,
        unit: one.unit,
        low: bounded(one.low),
        high: bounded(one.high),
        ours: bounded(one.ours),
        verdict: verdictOf(one),
        reason: verdictOf(one) === 'missed' ? reasonFor(one.id) : null,
      })),
    ),
  };
}

function commandLine(plant: string | undefined, { sections, without, report }: QualifyOptions): string {
  const parts = ['npm run -s cli -- qualify'];
  if (plant !== undefined) parts.push(plant);
  if (sections) parts.push(`--sections ${sections.join(',')}`);
  if (without) parts.push(`--without ${without.join(',')}`);
  if (report !== undefined) parts.push(`--report ${report}`);
  return parts.join(' ');
}

async function save(path: string, text: string): Promise<void> {
  try {
    await mkdir(dirname(path), { recursive: true });
    await writeFile(path, text);
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    throw new RefusedInput(`${path}: cannot be written (${message})`);
  }
}
