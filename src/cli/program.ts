/** The commands put together: what is done, and how it ends. JSON on stdout, words on stderr. */
import { Command, CommanderError } from 'commander';
import { PhysicsError } from '../../physics/errors';
import { registerCheck } from './check';
import { registerDifferential } from './differential';
import { CheckFailed, EXIT, RefusedInput, UsageError } from './exit';
import { registerFluid } from './fluid';
import { registerGrade } from './grade';
import type { Io } from './io';
import { registerQualify } from './qualify';
import { registerRound } from './round';
import { registerRun } from './run';

function buildProgram(io: Io): Command {
  const program = new Command('coldbench')
    .description('A practice bench for finding faults in refrigeration, air-conditioning and heat-pump systems.')
    .exitOverride()
    .configureOutput({ writeErr: (text) => io.stderr.write(text), writeOut: (text) => io.stdout.write(text) });
  registerFluid(program, io);
  registerRun(program, io);
  registerCheck(program, io);
  registerRound(program, io);
  registerGrade(program, io);
  registerDifferential(program, io);
  registerQualify(program, io);
  return program;
}

function exitCodeOf(error: unknown, io: Io): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.good : EXIT.usage;
  if (error instanceof UsageError) {
    io.stderr.write(`${error.message}\n`);
    return EXIT.usage;
  }
  if (error instanceof CheckFailed) {
    io.stderr.write(`${error.message}\n`);
    return EXIT.checkFailed;
  }
  if (error instanceof RefusedInput || error instanceof PhysicsError) {
    const code = error instanceof PhysicsError ? ` (${error.code})` : '';
    io.stderr.write(`refused${code}: ${error.message}\n`);
    return EXIT.refusedInput;
  }
  throw error;
}

/** Runs one command line and gives its exit code (see exit.ts). A mistake of the program itself is thrown. */
export async function runCli(args: readonly string[], io: Io): Promise<number> {
  try {
    await buildProgram(io).parseAsync(args, { from: 'user' });
    return EXIT.good;
  } catch (error) {
    return exitCodeOf(error, io);
  }
}
