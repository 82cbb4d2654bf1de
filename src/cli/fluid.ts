/** `fluid`: properties of a refrigerant straight from its equation of state: one state, a batch, a saturation table. */
import process from 'node:process';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { PhysicsError } from '../../physics/errors';
import { fluidEos, REFRIGERANTS } from '../../physics/fluids/fluid';
import type { FluidEos } from '../../physics/fluids/fluidEos';
import { type FluidPoint, fluidPoint, type PointInput } from '../../physics/fluids/point';
import { UsageError } from './exit';
import { type Io, readLines, write, writeJsonLine } from './io';
import { textTable } from './table';

interface FluidOptions {
  p?: number;
  h?: number;
  t?: number;
  q?: number;
  table?: boolean;
  points?: string;
  json?: boolean;
}

const KEYS = ['p', 'h', 't', 'q'] as const;
const PAIRS = 'p and h, t and q, or p and t';
const UNITS = { t: 'K', p: 'Pa', h: 'J/kg', s: 'J/(kg K)', rho: 'kg/m3', q: '-', phase: '' } as const;

export function registerFluid(program: Command, io: Io = process): void {
  program
    .command('fluid')
    .argument('<refrigerant>', REFRIGERANTS.join(', '))
    .description(`properties of a refrigerant, SI, IIR reference state; give ${PAIRS}`)
    .option('--p <Pa>', 'absolute pressure', number)
    .option('--h <J/kg>', 'enthalpy', number)
    .option('--t <K>', 'temperature', number)
    .option('--q <share>', 'vapour quality: 0 bubble line, 1 dew line', number)
    .addOption(new Option('--table', 'a saturation table').conflicts(['points', ...KEYS]))
    .addOption(
      new Option('--points <file>', 'a batch: NDJSON points from a file or - ; one answer a line').conflicts([...KEYS]),
    )
    .option('--json', 'JSON')
    .action((refrigerant: string, options: FluidOptions) => runFluid(refrigerant, options, io));
}

async function runFluid(refrigerant: string, options: FluidOptions, io: Io): Promise<void> {
  const fluid = fluidEos(refrigerant);
  if (options.points !== undefined) return runPoints(fluid, options.points, io);
  if (options.table) return printTable(fluid, options.json === true, io);
  const given = KEYS.filter((key) => options[key] !== undefined);
  const input = pairOf(Object.fromEntries(given.map((key) => [key, options[key]])));
  if (input === null) throw new UsageError(`fluid: give ${PAIRS}; or --table, or --points`);
  const point = fluidPoint(fluid, input);
  if (options.json) return writeJsonLine(io, point);
  const rows = Object.entries(UNITS).map(([name, unit]) => [name, plain(point[name as keyof FluidPoint]), unit]);
  return write(io.stdout, textTable(['', 'value', 'unit'], rows));
}

/** One answer a line, a refusal included, so that answers stay in step with questions. */
async function runPoints(fluid: FluidEos, source: string, io: Io): Promise<void> {
  for await (const { number: line, text } of readLines(source, io)) await writeJsonLine(io, answer(fluid, text, line));
}

export type PointAnswer = FluidPoint | { readonly error: { readonly code: string; readonly message: string } };

/** The answer to one line of a batch. */
export function answer(fluid: FluidEos, text: string, line: number): PointAnswer {
  try {
    return fluidPoint(fluid, parsePoint(text));
  } catch (error) {
    if (!(error instanceof PhysicsError)) throw error;
    return { error: { code: error.code, message: `line ${line}: ${error.message}` } };
  }
}

function parsePoint(text: string): PointInput {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw new PhysicsError('bad-input', 'not JSON');
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw new PhysicsError('bad-input', `expected an object with ${PAIRS}`);
  }
  const input = pairOf(value);
  if (input === null) {
    const found = Object.keys(value).slice(0, 8).join(', ').slice(0, 80) || 'nothing';
    throw new PhysicsError('bad-input', `expected ${PAIRS}, found ${found}`);
  }
  return input;
}

/** The values as a pair that fixes a state, or null. Whether they are numbers in range is the physics' business. */
function pairOf(value: object): PointInput | null {
  const keys = Object.keys(value).sort().join();
  return keys === 'h,p' || keys === 'q,t' || keys === 'p,t' ? (value as PointInput) : null;
}

export interface SaturationRow {
  readonly t: number;
  readonly pBubble: number;
  readonly pDew: number;
  readonly rhoLiquid: number;
  readonly rhoVapour: number;
  readonly hLiquid: number;
  readonly hVapour: number;
  readonly sLiquid: number;
  readonly sVapour: number;
}

const TABLE_START = 223.15;
const TABLE_STEP = 5;

/** Bubble and dew points every 5 K from -50 °C to 0.97 of the critical temperature. */
export function saturationTable(fluid: FluidEos): SaturationRow[] {
  const rows: SaturationRow[] = [];
  for (let t = TABLE_START; t <= 0.97 * fluid.data.tCritical; t += TABLE_STEP) {
    const liquid = fluidPoint(fluid, { t, q: 0 });
    const vapour = fluidPoint(fluid, { t, q: 1 });
    rows.push({
      t,
      pBubble: liquid.p,
      pDew: vapour.p,
      rhoLiquid: liquid.rho,
      rhoVapour: vapour.rho,
      hLiquid: liquid.h,
      hVapour: vapour.h,
      sLiquid: liquid.s,
      sVapour: vapour.s,
    });
  }
  return rows;
}

function printTable(fluid: FluidEos, json: boolean, io: Io): Promise<void> {
  const rows = saturationTable(fluid);
  if (json) return writeJsonLine(io, { refrigerant: fluid.data.id, rows });
  const header = 't (K),pBubble (Pa),pDew (Pa),rhoLiquid (kg/m3),rhoVapour (kg/m3),hLiquid (J/kg),hVapour (J/kg)';
  const columns = [...header.split(','), 'sLiquid (J/(kg K))', 'sVapour (J/(kg K))'];
  return write(
    io.stdout,
    textTable(
      columns,
      rows.map((row) => Object.values(row).map(plain)),
    ),
  );
}

function plain(value: number | string | null): string {
  if (typeof value !== 'number') return value ?? '-';
  return String(Number(value.toPrecision(7)));
}

function number(text: string): number {
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value)) throw new InvalidArgumentError('expected a number');
  return value;
}
