/**
 * `check`: is a pack in order? Its shape and rules first, then its proof: that each machine runs, shows its fault, can be
 * told with what may be read and in the time given, and that no routine solves the pack.
 */
import type { Command } from 'commander';
import { type CalloutProof, type Finding, inWords, type PackProof, provePack } from '../packs/proof';
import { unprovable } from '../packs/proof/callout';
import { differentialOf } from './differentials';
import { CheckFailed } from './exit';
import { type Io, write, writeJsonLine } from './io';
import { loadPack, RefusedPack } from './packs';
import { textTable } from './table';

export function registerCheck(program: Command, io: Io): void {
  program
    .command('check')
    .argument('<pack>', 'a pack file, - for standard input, or the id of a shipped pack')
    .description('check a pack: schema, rules between fields, and the proof that each callout can be told')
    .option('--json', 'the report as JSON')
    .option('--without-proof', 'only its shape, its rules, its words and that each machine runs (a second)')
    .action((source: string, options: Options) => check(source, options, io));
}

interface Options {
  readonly json?: boolean;
  readonly withoutProof?: boolean;
}

async function check(source: string, { json, withoutProof }: Options, io: Io): Promise<void> {
  const pack = await loadPack(source, io).catch(async (error: unknown) => {
    if (json && error instanceof RefusedPack) {
      await writeJsonLine(io, { pack: null, version: null, ok: false, problems: error.problems, failed: [] });
    }
    throw error;
  });
  const { id, version, callouts } = pack;
  const early = callouts.flatMap(unprovable);
  // Nothing can be told of a machine that does not run, and a differential takes its time.
  const proof = withoutProof || early.length > 0 ? null : provePack(pack, (each) => differentialOf(pack, each, io));
  const findings = proof?.findings ?? early;
  const failed = findings.filter(({ weight }) => weight === 'refused');
  const doubtful = findings.filter(({ weight }) => weight === 'doubtful');
  const ok = failed.length === 0;
  if (json) {
    await writeJsonLine(io, {
      pack: id,
      version,
      ok,
      problems: [],
      failed: failed.map(told),
      doubtful: doubtful.map(told),
      callouts: proof?.callouts.flatMap(figures) ?? [],
      routine: proof?.routine ?? null,
    });
  } else {
    if (proof) await write(io.stdout, table(proof));
    if (ok) await write(io.stdout, `${id} version ${version}: ${callouts.length} callouts, in order\n`);
  }
  for (const each of doubtful) io.stderr.write(`look again: ${inWords(each)}\n`);
  if (!ok) throw new CheckFailed(failed.map(inWords).join('\n'));
}

function told(finding: Finding): Omit<Finding, 'weight'> & { readonly message: string } {
  const { callout, rule, why, mend } = finding;
  return { callout, rule, why, mend, message: inWords(finding) };
}

function figures({ opened, telling }: CalloutProof) {
  if (!telling) return [];
  const { path, twins, difficulty } = telling;
  const reading = ({ channel, state, instrument }: (typeof path.steps)[number]['candidate']) => ({
    channel,
    state,
    instrument,
  });
  return [
    { callout: opened.callout.id, twins, path: path.steps.map(({ candidate }) => reading(candidate)), ...difficulty },
  ];
}

function table({ callouts, routine }: PackProof): string {
  const rows = callouts.flatMap(({ opened, telling }) => {
    if (!telling) return [];
    const { bits, minutes, rival, telling: share, level } = telling.difficulty;
    const readings = telling.path.steps.map(({ candidate }) => candidate.channel).join(', ');
    return [
      [
        opened.callout.id,
        opened.truths.join(', '),
        level.toFixed(1),
        bits.toFixed(1),
        minutes.toFixed(0),
        rival === null ? '–' : `${rival} (${(100 * share).toFixed(0)} %)`,
        readings,
      ],
    ];
  });
  const header = ['callout', 'truth', 'difficulty', 'bits', 'minutes', 'hardest rival (telling)', 'shortest path'];
  const tells = routine
    ? `${routine.foreseen.length} of ${callouts.length} callouts fall to a routine made for the others\n`
    : '';
  return `${textTable(header, rows)}${tells}`;
}
