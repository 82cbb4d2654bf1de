// Draws packs from blueprints: npm run draw [-- <blueprint.json> …] writes scenarios/<id>.pack.json of each, all if none
// is named.
// Formatted by the project's formatter, so that a drawn pack reads as if written by hand.
// With --seek it first looks for the next seed whose draw fulfils the blueprint's wishes (each
// fault clear, each callout with a look-alike, each machine running), and writes that seed into it.
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { machineFacts } from '../src/attempt/pack/facts';
import { checkPack } from '../src/attempt/pack/load';
import { type Blueprint, checkBlueprint } from '../src/packs/blueprint';
import { drawFault, drawPack, isClear } from '../src/packs/draw';
import { unprovable } from '../src/packs/proof/callout';

const MOST_SEEDS = 5_000_000;
const BLUEPRINTS = 'scenarios/blueprints';
const seek = process.argv.includes('--seek');
const named = process.argv.slice(2).filter((word) => word !== '--seek');
const files = named.length > 0 ? named : readdirSync(BLUEPRINTS).map((file) => `${BLUEPRINTS}/${file}`);

for (const file of files) {
  const outcome = checkBlueprint(JSON.parse(readFileSync(file, 'utf8')));
  if (!outcome.ok) fail(file, outcome.problems);
  const blueprint = seek ? withSoughtSeed(outcome.blueprint) : outcome.blueprint;
  if (seek) write(file, blueprint);
  const drawn = checkPack(drawPack(blueprint), machineFacts);
  if (!drawn.ok) fail(file, drawn.problems);
  const target = `scenarios/${blueprint.id}.pack.json`;
  write(target, { $schema: './pack.schema.json', ...drawn.pack });
  console.log(`${target}: drawn with seed "${blueprint.seed}"`);
}

/** Seeds are the pack's id and a number; the search goes on after the number that is there. */
function withSoughtSeed(blueprint: Blueprint): Blueprint {
  const start = Number(/-(\d+)$/.exec(blueprint.seed)?.[1] ?? 0);
  for (let n = start + 1; n <= start + MOST_SEEDS; n++) {
    const seed = `${blueprint.id}-${n}`;
    if (!blueprint.callouts.every((order) => wished(blueprint, order, seed))) continue;
    const { callouts } = drawPack({ ...blueprint, seed });
    if (!callouts.every(({ lookAlike }) => lookAlike)) continue;
    if (callouts.every((callout) => unprovable(callout).length === 0)) return { ...blueprint, seed };
  }
  throw new RangeError(`no seed in ${MOST_SEEDS} fulfils the wishes of ${blueprint.id}`);
}

function wished({ wishes }: Blueprint, order: Blueprint['callouts'][number], seed: string): boolean {
  const drawn = drawFault(order, seed);
  return (wishes.causes[order.id] ?? drawn.cause) === drawn.cause && isClear(drawn);
}

function write(file: string, value: unknown): void {
  writeFileSync(file, `${JSON.stringify(value, null, 2)}\n`);
  execFileSync('biome', ['format', '--write', file], { stdio: 'ignore' });
}

function fail(file: string, problems: readonly { readonly message: string }[]): never {
  console.error(problems.map(({ message }) => `${file}: ${message}`).join('\n'));
  process.exit(1);
}
