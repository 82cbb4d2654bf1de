// Keeps the built page small enough for a weak phone on a slow network. Reads dist/ and Vite's manifest.
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join, posix } from 'node:path';
import { gzipSync } from 'node:zlib';

const KB = 1024;
const BUDGET = { shell: 90 * KB, phaser: 370 * KB, differential: 96 * KB, total: 3 * KB * KB, kept: 30 * KB * KB };
// `kept` is what lies on a device: nine tenths of it are differentials, which travel at a tenth of their size (about 33 KB a
// callout). Keeping all of them means that whoever has once been here can play every pack in a basement; fetching them
// only with their pack would save a phone 2 MB of traffic and cost exactly that.
const dist = process.argv[2] ?? 'dist';

const manifestPath = join(dist, '.vite', 'manifest.json');
if (!existsSync(manifestPath)) {
  console.error(`size budget: ${manifestPath} is not there; run "npm run build" first`);
  process.exit(2);
}
const manifest = JSON.parse(readFileSync(manifestPath, 'utf8'));
const gz = (file) => gzipSync(readFileSync(join(dist, file)), { level: 9 }).length;

/** The files that the page loads before it can show anything: the entry and what it imports statically. */
function shellFiles() {
  const files = new Set();
  const visit = (key) => {
    const chunk = manifest[key];
    if (files.has(chunk.file)) return;
    files.add(chunk.file);
    for (const next of chunk.imports ?? []) visit(next);
  };
  // The keeper of files is no part of the page: the browser fetches it when the page stands.
  for (const [key, chunk] of Object.entries(manifest)) if (chunk.isEntry && chunk.file !== 'offline.js') visit(key);
  return files;
}

function allFiles(folder, prefix = '') {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = posix.join(prefix, entry.name);
    return entry.isDirectory() ? allFiles(join(folder, entry.name), path) : [path];
  });
}

const shell = shellFiles();
const shipped = allFiles(dist).filter((file) => !file.startsWith('.vite/'));
const scripts = shipped.filter((file) => file.endsWith('.js'));
const isPhaser = (file) => /^assets\/phaser-/.test(file);
const isWorker = (file) => /^assets\/worker-/.test(file);
const isDifferential = (file) => /^assets\/[^/]+\.differential-/.test(file);

let shellSize = 0;
let phaserSize = 0;
let largestDifferential = 0;
for (const file of scripts) {
  const size = gz(file);
  const part = partOf(file);
  if (part === 'phaser') phaserSize += size;
  if (part === 'expect') largestDifferential = Math.max(largestDifferential, size);
  if (part === 'shell') shellSize += size;
  console.log(`  ${part.padEnd(7)} ${(size / KB).toFixed(1).padStart(7)} KB gz  ${file}`);
}
const plainSize = (files) => files.reduce((sum, file) => sum + statSync(join(dist, file)).size, 0);

/** Precomputed differentials grow with every callout and are fetched one by one: they are counted apart. */
function partOf(file) {
  if (isPhaser(file)) return 'phaser';
  if (isWorker(file) || file === 'offline.js') return 'worker';
  if (shell.has(file)) return 'shell';
  return isDifferential(file) ? 'expect' : 'later';
}

let over = 0;
const judge = (what, size, limit, advice) => {
  const bad = size > limit;
  if (bad) over += 1;
  console.log(`${bad ? 'OVER' : 'ok  '} ${what}: ${(size / KB).toFixed(1)} KB of ${(limit / KB).toFixed(0)} KB`);
  if (bad) console.error(`     ${advice}`);
};
judge(
  'shell JS, gzip',
  shellSize,
  BUDGET.shell,
  'Load it later with import(), or drop it; the shell is what a first visit waits for.',
);
judge('Phaser chunk, gzip', phaserSize, BUDGET.phaser, 'Phaser itself grew, or our code fell into its chunk.');
judge(
  'largest differential, gzip',
  largestDifferential,
  BUDGET.differential,
  'Whoever opens its callout waits for it before the debrief; coarser steps in src/examiner/compact.ts make it smaller.',
);
const differentials = shipped.filter(isDifferential);
const rest = shipped.filter((file) => !isDifferential(file));
judge(
  'everything but differentials, plain',
  plainSize(rest),
  BUDGET.total,
  'Whatever is not a differential is fetched by everybody.',
);
judge(
  'everything, plain',
  plainSize(shipped),
  BUDGET.kept,
  'This is what a device keeps to work without a network, twice while a later build waits.',
);
console.log(
  `     ${differentials.length} differentials beside it: ${(plainSize(differentials) / KB).toFixed(0)} KB plain`,
);
for (const [what, stray] of [
  ['Phaser', isPhaser],
  ['a differential', isDifferential],
]) {
  if (![...shell].some(stray)) continue;
  over += 1;
  console.error(
    `OVER ${what} is loaded with the shell: some module imports it statically instead of when it is needed.`,
  );
}
process.exitCode = over > 0 ? 1 : 0;
