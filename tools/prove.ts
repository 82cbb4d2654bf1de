// Proves that callouts are tellable: npm run prove -- [--machines N] [pack[#callout] …]
// For each: greedy best readings on N machines of its kind off the examiner's grid, and the same on machines of the other
// callouts (which must not lead to this one's cause).
import { readFileSync } from 'node:fs';
import { loadPack, shippedIds } from '../src/cli/packs';
import { textTable } from '../src/cli/table';
import { truthsOf } from '../src/examiner/case';
import { decodeDifferential } from '../src/examiner/compact';
import { differentialFile } from '../src/examiner/shipped';
import type { Differential } from '../src/examiner/types';
import { proveCallout, type Trial, twinsIn } from '../src/packs/prove';

const words = process.argv.slice(2);
const at = words.indexOf('--machines');
const machines = at < 0 ? 30 : Number(words.splice(at, 2)[1]);
const packs = await Promise.all(shippedIds().map((id) => loadPack(id, process)));
const everyOne = packs.flatMap((pack) => pack.callouts.map((callout) => ({ pack, callout })));
const wanted = everyOne.filter(
  ({ pack, callout }) =>
    words.length === 0 || words.some((word) => word === pack.id || word === `${pack.id}#${callout.id}`),
);

const rows: string[][] = [];
for (const { pack, callout } of wanted) {
  const differential = readDifferential(pack.id, callout.id);
  const proof = proveCallout(callout, differential, machines);
  const [truth] = truthsOf(callout.faults);
  const others = everyOne.filter((each) => truthsOf(each.callout.faults)[0] !== truth);
  const shuffled = others.map((each) => proveCallout(callout, differential, Math.ceil(machines / 10), each.callout));
  const swapped = shuffled.flatMap(({ trials }) => trials.filter(({ belief }) => belief >= 0.8)).length;
  const tried = shuffled.reduce((sum, { trials }) => sum + trials.length, 0);
  rows.push([
    callout.id,
    Object.entries(callout.faults)
      .map(([key, size]) => `${key} ${size}`)
      .join(', ') || 'no-fault',
    percent(proof.told),
    percent(proof.inTime),
    proof.median.toFixed(0),
    proof.ninth.toFixed(0),
    String(callout.budget),
    (proof.trials.reduce((sum, { path }) => sum + path.length, 0) / machines).toFixed(1),
    percent(swapped / tried),
    twinsIn(callout, differential).slice(1).join(', '),
    missed(proof.trials),
  ]);
  console.error(rows.at(-1)!.join('  '));
  if (process.env.PATHS)
    for (const t of proof.trials.slice(0, 4)) console.error('     ', t.belief.toFixed(2), t.leading, t.path.join(' '));
}
console.log(
  textTable(
    [
      'callout',
      'truth',
      'told',
      'in time',
      'min 50 %',
      'min 90 %',
      'budget',
      'readings',
      'shuffled',
      'twins',
      'missed as',
    ],
    rows,
  ),
);

function readDifferential(pack: string, callout: string): Differential {
  return decodeDifferential(
    JSON.parse(readFileSync(`scenarios/differentials/${differentialFile(pack, callout)}`, 'utf8')),
  );
}

function percent(share: number): string {
  return `${(100 * share).toFixed(0)} %`;
}

/** What the machines that were not told were taken for. */
function missed(trials: readonly Trial[]): string {
  const counts = new Map<string, number>();
  for (const { belief, leading } of trials) if (belief < 0.8) counts.set(leading, (counts.get(leading) ?? 0) + 1);
  return [...counts].map(([cause, count]) => `${cause} ${count}`).join(', ');
}
