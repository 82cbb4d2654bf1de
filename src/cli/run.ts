/** `run`: a machine's readings, steady or in time, one or a batch. */
import { type Command, InvalidArgumentError, Option } from 'commander';
import { PLANTS } from '../../physics';
import { PROBES, type ProbeName, type Probes, type Snapshot } from '../../physics/types';
import { csvLine } from './csv';
import { UsageError } from './exit';
import { type Io, readLines, write, writeJsonLine } from './io';
import { type Job, jobError, prepareJob, steadyAnswer, transient } from './job';
import { startProgress } from './progress';
import { textTable } from './table';

interface RunOptions {
  refrigerant?: string;
  outdoor?: number;
  indoor?: number;
  wetBulb?: number;
  altitude?: number;
  mode?: string;
  fault?: Record<string, number>;
  fixedSpeed?: boolean;
  setPoint?: number;
  indoorFan?: 'low' | 'high';
  steady?: boolean;
  for?: number;
  every?: number;
  from: 'settled' | 'standing';
  jobs?: string;
  json?: boolean;
  csv?: boolean;
}

const PROBE_NAMES = Object.keys(PROBES) as ProbeName[];

export function registerRun(program: Command, io: Io): void {
  program
    .command('run')
    .argument('[plant]', Object.keys(PLANTS).join(', '))
    .description('readings of every probe of a machine: true values, SI')
    .option('--refrigerant <id>', 'one that the plant is made for')
    .option('--outdoor <K>', 'outdoor air', number)
    .option('--indoor <K>', 'return air', number)
    .option('--wet-bulb <K>', 'return air wet bulb', number)
    .option('--altitude <m>', 'height of the site', number)
    .option('--mode <mode>', 'cooling, heating or simultaneous, as far as the plant can')
    .option('--fault <key=severity>', 'e.g. undercharge=0.2 or thermistor-drift:suctionLine=3; repeat for more', fault)
    .option('--fixed-speed', 'variable-speed machine held at rated speed')
    .option('--set-point <K>', 'room set-point', number)
    .addOption(new Option('--indoor-fan <step>', 'step of the indoor fan').choices(['low', 'high']))
    .option('--steady', 'the steady state (what happens without --for)')
    .option('--for <s>', 'run for this many seconds and show the machine in time', wholeSeconds)
    .option('--every <s>', 'with --for: a sample every so many seconds', wholeSeconds)
    .addOption(
      new Option('--from <start>', 'with --for: how the machine is found')
        .choices(['standing', 'settled'])
        .default('standing'),
    )
    .option('--jobs <file>', 'a batch: NDJSON requests from a file or - ; one steady answer a line')
    .addOption(new Option('--json', 'JSON; with --for one line a sample').conflicts('csv'))
    .option('--csv', 'CSV, names with units in the first line')
    .action((plant: string | undefined, options: RunOptions) => run(plant, options, io));
}

async function run(plant: string | undefined, options: RunOptions, io: Io): Promise<void> {
  if (options.jobs !== undefined) {
    if (plant !== undefined) throw new UsageError('run: either a plant or --jobs, not both');
    return runJobs(options.jobs, io);
  }
  if (plant === undefined) throw new UsageError('run: name a plant, or give --jobs');
  if (options.steady && options.for !== undefined) throw new UsageError('run: either --steady or --for, not both');
  if (options.every !== undefined && options.for === undefined) throw new UsageError('run: --every needs --for');
  const prepared = prepareJob(jobOf(plant, options));
  if (options.for !== undefined) {
    const { from, every = 5 } = options;
    return printTransient(transient(prepared, from, options.for, every), options.for, options.json === true, io);
  }
  const answer = steadyAnswer(prepared);
  if (options.json) return writeJsonLine(io, answer);
  if (options.csv) {
    const names = PROBE_NAMES.map((name) => `${name} (${PROBES[name]})`);
    return write(io.stdout, csvLine(names) + csvLine(valuesOf(answer.probes)));
  }
  const rows = PROBE_NAMES.map((name) => [name, plain(answer.probes[name].value), answer.probes[name].unit]);
  return write(io.stdout, textTable(['probe', 'value', 'unit'], rows));
}

async function printTransient(samples: Iterable<Snapshot>, duration: number, json: boolean, io: Io): Promise<void> {
  const progress = startProgress(io, 'run');
  if (!json) {
    const names = PROBE_NAMES.map((name) => `${name} (${PROBES[name]})`);
    await write(io.stdout, csvLine(['time (s)', 'regime', 'controller', ...names]));
  }
  for (const { time, regime, controller, probes, balance } of samples) {
    if (json) await writeJsonLine(io, { time, regime, controller, probes, balance });
    else await write(io.stdout, csvLine([time, regime, controller, ...valuesOf(probes)]));
    progress.at(time, duration, 'simulated seconds');
  }
  progress.end();
}

/** Each line gets its own answer or its own error; a bad line stops nothing. */
async function runJobs(source: string, io: Io): Promise<void> {
  const progress = startProgress(io, 'run --jobs');
  let done = 0;
  let refused = 0;
  for await (const line of readLines(source, io)) {
    const answer = answerLine(line.text, line.number);
    if ('error' in answer) refused += 1;
    await writeJsonLine(io, answer);
    done += 1;
    progress.at(done, undefined, `(${refused} refused)`);
  }
  progress.end();
}

function answerLine(text: string, lineNumber: number): object {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { id: null, error: { code: 'bad-json', message: `line ${lineNumber} is not JSON` } };
  }
  const given = typeof value === 'object' && value !== null && 'id' in value ? value.id : null;
  const id = typeof given === 'string' || typeof given === 'number' ? given : null;
  try {
    return { id, ...steadyAnswer(prepareJob(value)) };
  } catch (error) {
    const known = jobError(error);
    if (!known) throw error;
    return { id, error: known };
  }
}

function jobOf(plant: string, options: RunOptions): Job {
  const { refrigerant, outdoor, indoor, wetBulb, altitude, mode, fixedSpeed, setPoint, indoorFan } = options;
  return {
    plant,
    refrigerant,
    outdoor,
    indoor,
    wetBulb,
    altitude,
    mode,
    fixedSpeed,
    setPoint,
    indoorFan,
    faults: options.fault,
  };
}

function valuesOf(probes: Probes): number[] {
  return PROBE_NAMES.map((name) => probes[name].value);
}

/** Six significant digits: more than any instrument shows, short enough to read. */
function plain(value: number): string {
  return Number.isFinite(value) ? String(Number(value.toPrecision(6))) : '–';
}

function number(text: string): number {
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value)) throw new InvalidArgumentError(`"${text}" is not a number.`);
  return value;
}

function wholeSeconds(text: string): number {
  const value = number(text);
  if (!Number.isInteger(value) || value < 1 || value > 1_000_000) {
    throw new InvalidArgumentError(`"${text}" is not a whole number of seconds from 1 to 1000000.`);
  }
  return value;
}

function fault(text: string, earlier: Record<string, number> = {}): Record<string, number> {
  const [key, severity, ...more] = text.split('=');
  if (!key || severity === undefined || more.length > 0) {
    throw new InvalidArgumentError(`"${text}" has not the form key=severity.`);
  }
  if (Object.hasOwn(earlier, key)) throw new InvalidArgumentError(`"${key}" is given twice.`);
  return { ...earlier, [key]: number(severity) };
}
