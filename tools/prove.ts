// Proves that callouts are tellable: npm run prove -- [--machines N] [pack[#callout] …]
// For each: greedy best readings on N machines of its kind off the examiner's grid, and the same with every reading from
// some other callout's machine (which must not lead to this one's cause). Then how hard it is computed to be, and how often
// an imperfect reasoner gets it right: their rank correlation comes last.
import { readFileSync } from 'node:fs';
import { loadPack, shippedIds } from '../src/cli/packs';
import { textTable } from '../src/cli/table';
import { decodeDifferential } from '../src/examiner/compact';
import { differentialFile } from '../src/examiner/shipped';
import { proveCallout } from '../src/packs/proof/callout';
import { onArrival } from '../src/packs/proof/difficulty';
import { open } from '../src/packs/proof/opened';
import { isTold, offGrid, subjectOf, type Trial, tellOne, tellShuffled, unlike } from '../src/packs/prove';
import { rankCorrelation } from '../src/packs/rank';
import { endsWell } from '../src/packs/reasoner';

const words = process.argv.slice(2);
const at = words.indexOf('--machines');
const machines = at < 0 ? 30 : Number(words.splice(at, 2)[1]);
const packs = await Promise.all(shippedIds().map((id) => loadPack(id, process)));
const shelf = packs.flatMap((pack) =>
  pack.callouts.map((callout) => {
    const path = `scenarios/differentials/${differentialFile(pack.id, callout.id)}`;
    return { pack: pack.id, ...subjectOf(callout, decodeDifferential(JSON.parse(readFileSync(path, 'utf8')))) };
  }),
);
const asked = (pack: string, callout: string) =>
  words.length === 0 || words.includes(pack) || words.includes(`${pack}#${callout}`);

const rows: string[][] = [];
const levels: number[] = [];
const failures: number[] = [];
for (const subject of shelf.filter(({ pack, callout }) => asked(pack, callout.id))) {
  const { callout, truths } = subject;
  const machinesOfIts = Array.from({ length: machines }, (_, i) => offGrid(subject, i));
  const trials = machinesOfIts.map((machine) => tellOne(subject, machine));
  const shuffled = each((i) =>
    tellShuffled(
      subject,
      unlike(subject, shelf).map((other) => offGrid(other, i)),
      `${callout.id}/${i}`,
    ),
  );
  const minutes = trials.map((trial) => trial.minutes).sort((a, b) => a - b);
  const told = trials.filter(isTold);
  const faults = Object.entries(callout.faults).map(([key, size]) => `${key} ${size}`);
  const opened = open(callout, subject.differential);
  const difficulty = proveCallout(opened).telling?.difficulty;
  const arrival = onArrival(opened);
  const failed = machinesOfIts.filter((machine) => !endsWell(subject, machine, arrival)).length / machines;
  if (difficulty) {
    levels.push(difficulty.level);
    failures.push(failed);
  }
  rows.push([
    callout.id,
    faults.join(', ') || 'no-fault',
    percent(told.length),
    percent(told.filter((trial) => trial.minutes <= callout.budget).length),
    minutes[Math.floor(0.5 * machines)].toFixed(0),
    minutes[Math.floor(0.9 * machines)].toFixed(0),
    String(callout.budget),
    (trials.reduce((sum, { path }) => sum + path.length, 0) / machines).toFixed(1),
    percent(shuffled.filter(isTold).length),
    difficulty?.level.toFixed(1) ?? '–',
    difficulty?.rival ?? '–',
    percent(machines * (1 - failed)),
    truths.slice(1).join(', '),
    missed(trials),
  ]);
  console.error(rows.at(-1)!.join('  '));
}
const header = [
  'callout',
  'truth',
  'told',
  'in time',
  '50 %',
  '90 %',
  'budget',
  'readings',
  'shuffled',
  'difficulty',
  'hardest rival',
  'imperfect',
  'twins',
  'missed',
];
console.log(textTable(header, rows));
if (levels.length > 2) {
  const rho = rankCorrelation(levels, failures).toFixed(2);
  console.log(
    `rank correlation of difficulty and failure of the imperfect reasoner over ${levels.length} callouts: ${rho}`,
  );
}

function each(trial: (index: number) => Trial): Trial[] {
  return Array.from({ length: machines }, (_, i) => trial(i));
}

function percent(count: number): string {
  return `${((100 * count) / machines).toFixed(0)} %`;
}

/** What the machines that were not told were taken for. */
function missed(trials: readonly Trial[]): string {
  const counts = new Map<string, number>();
  for (const trial of trials) {
    if (!isTold(trial)) counts.set(trial.leading, (counts.get(trial.leading) ?? 0) + 1);
  }
  return [...counts].map(([cause, count]) => `${cause} ${count}`).join(', ');
}
