/** `check`: is a pack in order? Its shape and rules first, then whether each machine in it can be computed. */
import type { Command } from 'commander';
import { steady } from '../../physics';
import { machineNuisance } from '../attempt';
import type { Callout } from '../attempt/pack/types';
import { CheckFailed } from './exit';
import { type Io, write, writeJsonLine } from './io';
import { jobError } from './job';
import { loadPack, RefusedPack } from './packs';

interface Finding {
  readonly callout: string;
  readonly rule: string;
  readonly message: string;
}

export function registerCheck(program: Command, io: Io): void {
  program
    .command('check')
    .argument('<pack>', 'a pack file, - for standard input, or the id of a shipped pack')
    .description('check a pack: schema, rules between fields, and that every machine in it can be computed')
    .option('--json', 'the report as JSON')
    .action((source: string, options: { json?: boolean }) => check(source, options.json === true, io));
}

async function check(source: string, json: boolean, io: Io): Promise<void> {
  const pack = await loadPack(source, io).catch(async (error: unknown) => {
    if (json && error instanceof RefusedPack) {
      await writeJsonLine(io, { pack: null, version: null, ok: false, problems: error.problems, failed: [] });
    }
    throw error;
  });
  const { id, version, callouts } = pack;
  const failed = callouts.flatMap(findingsOf);
  const ok = failed.length === 0;
  if (json) await writeJsonLine(io, { pack: id, version, ok, problems: [], failed });
  else if (ok) await write(io.stdout, `${id} version ${version}: ${callouts.length} callouts, in order\n`);
  if (!ok) throw new CheckFailed(failed.map(({ callout, message }) => `callout ${callout}: ${message}`).join('\n'));
}

/** A machine that has no steady state, with its own differences, cannot be read: it trips or lies outside the model. */
function findingsOf({ id, plant, refrigerant, conditions, faults, machineSeed }: Callout): Finding[] {
  try {
    steady({ plant, refrigerant, conditions, faults, nuisance: machineNuisance(machineSeed) });
    return [];
  } catch (error) {
    const known = jobError(error);
    if (!known) throw error;
    return [
      { callout: id, rule: 'solvable', message: `the machine has no steady state: ${known.message} (${known.code})` },
    ];
  }
}
