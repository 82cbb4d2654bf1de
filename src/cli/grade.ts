/** `grade`: attempts run again from their record, and what they score. A grade is proven by replay, not trusted. */
import type { Command } from 'commander';
import { PHYSICS_VERSION } from '../../physics';
import { PhysicsError } from '../../physics/errors';
import { ReplayError, replay } from '../attempt';
import { AttemptCodeError } from '../attempt/codes';
import type { Pack } from '../attempt/pack/types';
import type { Attempt } from '../attempt/types';
import { grade } from '../examiner';
import type { Grade, PartName } from '../examiner/types';
import { handedIn } from './attempts';
import { csvLine } from './csv';
import { differentialOf } from './differentials';
import { RefusedInput } from './exit';
import { type Io, write, writeJsonLine } from './io';
import { loadPack, shippedIds } from './packs';
import { startProgress } from './progress';

interface GradeOptions {
  pack: string[];
  json?: boolean;
  csv?: boolean;
}

export function registerGrade(program: Command, io: Io): void {
  program
    .command('grade')
    .argument('<attempts...>', 'attempt codes, attempt files, or - : one attempt a line')
    .description('run attempts again from their record and print their verified scores')
    .option(
      '--pack <file>',
      'a pack that does not ship with Coldbench; repeat for more',
      (one, all: string[]) => [...all, one],
      [],
    )
    .option('--json', 'one JSON object a line')
    .option('--csv', 'a table for spreadsheets')
    .action((attempts: string[], options: GradeOptions) => gradeAll(attempts, options, io));
}

const PARTS: readonly PartName[] = ['cause', 'belief', 'evidence', 'working', 'repair', 'economy'];

interface Row {
  readonly source: string;
  readonly pack: string;
  readonly packVersion: number;
  readonly callout: string;
  readonly seed: string;
  /** version of the physics that the attempt was made with, and the one it was graded with */
  readonly physics: { readonly recorded: string; readonly graded: string };
  readonly actions: number;
  /** simulated minutes */
  readonly minutes: number;
  readonly verdict: string | null;
  readonly right: number;
  readonly scored: boolean;
  readonly total: number;
  readonly uncapped: number;
  readonly cap: number;
  readonly parts: Readonly<Record<PartName, { readonly points: number | null; readonly weight: number }>>;
}

interface RefusedRow {
  readonly source: string;
  readonly error: { readonly code: string; readonly message: string };
}

async function gradeAll(args: string[], options: GradeOptions, io: Io): Promise<void> {
  const packs = await loadPacks(options.pack, io);
  const progress = startProgress(io, 'grade');
  if (options.csv) await write(io.stdout, csvLine(CSV_HEADER));
  let done = 0;
  let refused = 0;
  for await (const { source, read } of handedIn(args, io)) {
    const row = rowOf(source, read, packs, io);
    if ('error' in row) refused += 1;
    if (options.json) await writeJsonLine(io, row);
    else if (options.csv) await write(io.stdout, csvLine(csvCells(row)));
    else await write(io.stdout, sentence(row));
    done += 1;
    progress.at(done, undefined, `(${refused} refused)`);
  }
  progress.end();
  if (done === 0) throw new RefusedInput('no attempt found in what was given');
  if (refused > 0)
    throw new RefusedInput(`${refused} of ${done} attempts could not be graded; each says why in its place`);
}

async function loadPacks(files: readonly string[], io: Io): Promise<ReadonlyMap<string, Pack>> {
  const packs = new Map<string, Pack>();
  for (const source of [...shippedIds(), ...files]) {
    const pack = await loadPack(source, io);
    packs.set(pack.id, pack);
  }
  return packs;
}

function rowOf(source: string, read: () => Attempt, packs: ReadonlyMap<string, Pack>, io: Io): Row | RefusedRow {
  try {
    const attempt = read();
    const pack = packs.get(attempt.pack);
    if (!pack) throw new ReplayError(-1, 'wrong-pack', `pack "${attempt.pack}" is not known here; give it with --pack`);
    if (pack.version !== attempt.packVersion) {
      const versions = `made with version ${attempt.packVersion}, version ${pack.version} is here`;
      throw new ReplayError(-1, 'wrong-pack', `pack "${pack.id}": ${versions}`);
    }
    const state = replay(attempt, pack);
    const result = grade(state, differentialOf(pack, state.site.callout, io));
    return row(source, attempt, state.clock, state.verdicts.at(-1)?.cause ?? null, result);
  } catch (error) {
    const known =
      error instanceof AttemptCodeError || error instanceof ReplayError || error instanceof PhysicsError ? error : null;
    if (!known) throw error;
    return { source, error: { code: known.code, message: known.message } };
  }
}

function row(source: string, attempt: Attempt, clock: number, verdict: string | null, result: Grade): Row {
  const { total, uncapped, cap, right, scored } = result;
  const { pack, packVersion, callout, seed } = attempt;
  return {
    source,
    pack,
    packVersion,
    callout,
    seed,
    physics: { recorded: attempt.physics, graded: PHYSICS_VERSION },
    actions: attempt.actions.length,
    minutes: clock / 60,
    verdict,
    right,
    scored,
    total,
    uncapped,
    cap,
    parts: Object.fromEntries(
      result.parts.map(({ part, points, weight }) => [part, { points, weight }]),
    ) as Row['parts'],
  };
}

const CSV_HEADER = [
  ...['source', 'pack', 'packVersion', 'callout', 'seed', 'physicsRecorded', 'physicsGraded', 'actions', 'minutes'],
  ...['verdict', 'right', 'scored', 'total', 'uncapped', 'cap', ...PARTS, 'errorCode', 'errorMessage'],
];

function csvCells(row: Row | RefusedRow): (string | number | null)[] {
  if ('error' in row) {
    const empty = Array<null>(CSV_HEADER.length - 3).fill(null);
    return [row.source, ...empty, row.error.code, row.error.message];
  }
  const { source, pack, packVersion, callout, seed, physics, actions, minutes, verdict, right, scored } = row;
  return [
    ...[source, pack, packVersion, callout, seed, physics.recorded, physics.graded, actions, rounded(minutes)],
    ...[verdict, right, String(scored), rounded(row.total), rounded(row.uncapped), row.cap],
    ...PARTS.map((part) => (row.parts[part].points === null ? null : rounded(row.parts[part].points))),
    ...[null, null],
  ];
}

function sentence(row: Row | RefusedRow): string {
  if ('error' in row) return `${row.source}: refused (${row.error.code}): ${row.error.message}\n`;
  const parts = PARTS.map((part) => {
    const { points, weight } = row.parts[part];
    return points === null ? `${part} not measured` : `${part} ${rounded(points)} of ${rounded(weight)}`;
  });
  const capped = row.total < row.uncapped ? ` (capped at ${row.cap}, ${rounded(row.uncapped)} without)` : '';
  const other =
    row.physics.recorded === row.physics.graded
      ? ''
      : `; made under physics ${row.physics.recorded}, graded under ${row.physics.graded}`;
  return `${row.source}: ${row.callout}: ${rounded(row.total)}${capped}; ${parts.join(', ')}${other}\n`;
}

function rounded(value: number): number {
  return Math.round(value * 10) / 10;
}
