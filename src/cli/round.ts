/** `round`: so many callouts, these causes, this hard, drawn from a word and proven before they are written. */
import { writeFileSync } from 'node:fs';
import { type Command, InvalidArgumentError } from 'commander';
import { PLANTS } from '../../physics';
import type { CauseId, PlantId } from '../../physics/types';
import { machineFacts } from '../attempt/pack/facts';
import { checkPack } from '../attempt/pack/load';
import { CAUSES } from '../attempt/pack/schema';
import type { Callout, Pack } from '../attempt/pack/types';
import type { Order } from '../packs/blueprint';
import { drawRound, NoRound, ordersOf } from '../packs/round';
import { differentialOf } from './differentials';
import { CheckFailed, RefusedInput, UsageError } from './exit';
import { type Io, write } from './io';
import { loadPack, shippedIds } from './packs';

/** Levels in words; the bounds part the shipped callouts into three about as large. */
const LEVELS = { easy: [0, 7], middle: [6.5, 8.5], hard: [8, 99], any: [0, 99] } as const;

interface Options {
  readonly callouts: number;
  readonly causes?: string;
  readonly plants?: string;
  readonly difficulty: string;
  readonly word: string;
  readonly from?: string;
  readonly out?: string;
}

export function registerRound(program: Command, io: Io): void {
  program
    .command('round')
    .description('draw a round of callouts from a word; it passes the same proof as a pack before it is written')
    .option('--callouts <count>', 'how many, 1 to 100', wholeNumber, 10)
    .option('--causes <list>', 'what may be wrong, with commas: undercharge,no-fault,…; all if left out')
    .option('--plants <list>', 'on which machines, with commas; all if left out')
    .option('--difficulty <range>', `${Object.keys(LEVELS).join(', ')}, or two figures such as 6..8`, 'any')
    .requiredOption('--word <word>', 'the same word gives the same round: a–z, 0–9 and hyphens, at most 16')
    .option('--from <packs>', 'packs whose work orders are drawn from, with commas; all shipped ones if left out')
    .option('--out <file>', 'write the pack there instead of to standard output')
    .action((options: Options) => round(options, io));
}

async function round(options: Options, io: Io): Promise<void> {
  if (!/^[a-z0-9-]{1,16}$/.test(options.word)) throw new UsageError('--word: a–z, 0–9 and hyphens, 1 to 16 of them');
  const ids = options.from?.split(',') ?? shippedIds();
  const packs = await Promise.all(ids.map((id) => loadPack(id, io)));
  const shelf = new Map<string, { readonly pack: Pack; readonly callout: Callout }>();
  for (const pack of packs) for (const callout of pack.callouts) shelf.set(callout.id, { pack, callout });
  const orders = ordersOf([...shelf.values()].map(({ callout }) => callout));
  const request = {
    count: options.callouts,
    causes: listOf<CauseId>(options.causes, CAUSES, '--causes'),
    plants: listOf(options.plants, Object.keys(PLANTS) as PlantId[], '--plants'),
    levels: levelsOf(options.difficulty),
    word: options.word,
  };
  const differential = ({ id }: Order) => {
    const { pack, callout } = shelf.get(id)!;
    return differentialOf(pack, callout, io);
  };
  try {
    const { pack, proof, thrown } = drawRound(request, { orders, differentialOf: differential });
    const outcome = checkPack(pack, machineFacts);
    if (!outcome.ok) throw new CheckFailed(outcome.problems.map(({ message }) => message).join('\n'));
    const text = `${JSON.stringify(pack, null, 2)}\n`;
    if (options.out) writeFileSync(options.out, text);
    else await write(io.stdout, text);
    const levels = proof.callouts.map(({ telling }) => telling!.difficulty.level);
    io.stderr.write(
      `${pack.id}: ${levels.length} callouts, difficulty ${Math.min(...levels).toFixed(1)} to ${Math.max(...levels).toFixed(1)}, ` +
        `proven; drawn again ${thrown.level} times for its difficulty, ${thrown.proof} for its proof\n`,
    );
  } catch (error) {
    if (error instanceof NoRound) throw new RefusedInput(error.message);
    throw error;
  }
}

function wholeNumber(text: string): number {
  const value = Number(text);
  if (!Number.isInteger(value) || value < 1 || value > 100) throw new InvalidArgumentError('a whole number, 1 to 100');
  return value;
}

function listOf<Name extends string>(text: string | undefined, known: readonly Name[], option: string): Name[] {
  const names = text === undefined ? [] : text.split(',');
  const wrong = names.find((name) => !known.some((each) => each === name));
  if (wrong !== undefined) throw new UsageError(`${option}: "${wrong}" is none of ${known.join(', ')}`);
  return names as Name[];
}

function levelsOf(text: string): readonly [number, number] {
  const word = Object.entries(LEVELS).find(([name]) => name === text);
  if (word) return word[1];
  const figures = /^(\d+(?:\.\d+)?)\.\.(\d+(?:\.\d+)?)$/.exec(text);
  if (!figures || Number(figures[1]) >= Number(figures[2])) {
    throw new UsageError(`--difficulty: ${Object.keys(LEVELS).join(', ')}, or two figures such as 6..8`);
  }
  return [Number(figures[1]), Number(figures[2])];
}
