// What can be earned without understanding: npm run gaming -- [--policies N] [--splits] [pack …]
// For each plant the best fixed five readings (the same on every callout of it) with the examiner's own verdict from them:
// chosen with all callouts known, and chosen on three quarters of them and earned on the rest, as a routine meets callouts.
// Then a search over policies that look at no value. --splits leaves out machines with many units.
import { shelf } from '../src/cli/shelf';
import { textTable } from '../src/cli/table';
import { stream } from '../src/instruments/streams';
import {
  type Blind,
  beliefAfter,
  bestRoutine,
  drawBlind,
  mutate,
  readable,
  totalOf,
  totalOfRoutine,
} from '../src/packs/fairness/blind';

const words = process.argv.slice(2);
const option = (name: string, otherwise: number): number => {
  const at = words.indexOf(name);
  return at < 0 ? otherwise : Number(words.splice(at, 2)[1]);
};
const policies = option('--policies', 200);
const splits = words.includes('--splits');
const packs = words.filter((word) => !word.startsWith('--'));
const { current } = await shelf();
const jobs = current
  .filter(({ pack, callout }) => (packs.length === 0 || packs.includes(pack)) && !(splits && isMany(callout.plant)))
  .map(({ packed, callout, differential }) => readable({ pack: packed, callout, differential }));

const ROUTINE = 5;
const TOLD = 0.8;
const rows: string[][] = [];
const routines: number[] = [];
const unseen: number[] = [];
/** parts of the callouts, each played with the routine that is best for the others */
const FOLDS = 4;
for (const plant of new Set(jobs.map(({ callout }) => callout.plant))) {
  const own = jobs.filter(({ callout }) => callout.plant === plant);
  const ids = bestRoutine(own, ROUTINE);
  const told = own.filter((each) => beliefAfter(each, ids) >= TOLD).length;
  const totals = own.map((each) => totalOfRoutine(each, ids));
  routines.push(...totals);
  const met: number[] = [];
  for (let fold = 0; fold < Math.min(FOLDS, own.length); fold++) {
    const others = bestRoutine(
      own.filter((_, i) => i % FOLDS !== fold),
      ROUTINE,
    );
    met.push(...own.filter((_, i) => i % FOLDS === fold).map((each) => totalOfRoutine(each, others)));
  }
  unseen.push(...met);
  rows.push([
    plant,
    String(own.length),
    mean(totals).toFixed(1),
    `${told}/${own.length}`,
    mean(met).toFixed(1),
    ids.join(' '),
  ]);
  console.error(rows.at(-1)!.join('  '));
}
console.log(textTable(['plant', 'callouts', 'mean total', 'told', 'on callouts unseen', 'the best fixed five'], rows));
console.log(
  `fixed routine, mean over ${routines.length} callouts: ${mean(routines).toFixed(1)} chosen with all of them known, ` +
    `${mean(unseen).toFixed(1)} on those that it was not chosen for`,
);

const random = stream('blind policies');
const ids = [...new Set(jobs.flatMap(({ candidates }) => candidates.map(({ id }) => id)))];
const worth = (blind: Blind): number => mean(jobs.map((job) => totalOf(blind, job)));
let best: { blind: Blind; total: number } | null = null;
for (let i = 0; i < policies; i++) {
  // A quarter drawn afresh, the rest near the best so far.
  const blind: Blind = best && random.uniform() > 0.25 ? mutate(best.blind, random, ids) : drawBlind(random, ids);
  const total = worth(blind);
  if (!best || total > best.total) {
    best = { blind, total };
    console.error(`${i}: ${total.toFixed(1)}`);
  }
}
console.log(`best of ${policies} blind policies, mean over ${jobs.length} callouts: ${best?.total.toFixed(1)}`);
console.log(JSON.stringify(best?.blind));

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function isMany(plant: string): boolean {
  return plant === 'multi-split' || plant === 'heat-recovery';
}
