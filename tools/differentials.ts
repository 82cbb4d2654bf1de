// Writes scenarios/differentials: what every rival of each callout of the shipped packs would show, precomputed.
// npm run differentials [-- --all] [pack[#callout] …] computes those that are missing or out of date, or all; files of no callout
// go. With packs named only theirs are seen to, so that several may be computed side by side.
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { REAL_WORLD } from '../src/attempt';
import { loadPack, shippedIds } from '../src/cli/packs';
import { computeDifferential, differentialInput, encodeDifferential } from '../src/examiner';
import { differentialFile, isCurrent } from '../src/examiner/shipped';

const FOLDER = 'scenarios/differentials';
const all = process.argv.includes('--all');
const named = process.argv.slice(2).filter((word) => word !== '--all');
const kept = new Set<string>();
mkdirSync(FOLDER, { recursive: true });

const asked = (id: string, callout: string) =>
  named.length === 0 || named.includes(id) || named.includes(`${id}#${callout}`);
for (const id of shippedIds()) {
  const pack = await loadPack(id, process);
  for (const callout of pack.callouts.filter((each) => asked(id, each.id))) {
    const file = differentialFile(pack.id, callout.id);
    const path = join(FOLDER, file);
    kept.add(file);
    const input = differentialInput(callout);
    if (!all && existsSync(path) && isCurrent(JSON.parse(readFileSync(path, 'utf8')), input, REAL_WORLD)) continue;
    const text = JSON.stringify(encodeDifferential(computeDifferential(input)));
    writeFileSync(path, text);
    console.log(`${path}: ${(gzipSync(text, { level: 9 }).length / 1024).toFixed(1)} KB gz`);
  }
}
for (const file of readdirSync(FOLDER)) if (named.length === 0 && !kept.has(file)) rmSync(join(FOLDER, file));
