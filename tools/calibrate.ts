// Does the examiner hold what it claims? npm run calibrate -- [attempts] [--reference] [--matrix] [pack …]
// Simulated attempts over all callouts, shared among the processor's cores: how sure the examiner was and how often right, in
// its own world and in stranger ones; what each instrument is worth; with --reference also against expectations from eight
// times the draws (minutes a plant).
import { type ChildProcess, fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import type { PlantId } from '../physics';
import { REAL_WORLD } from '../src/attempt';
import { shippedSubjects } from '../src/cli/shelf';
import { textTable } from '../src/cli/table';
import { computeDifferentialFrom } from '../src/examiner/differential';
import { sourceOf } from '../src/examiner/source';
import type { Differential } from '../src/examiner/types';
import { Account, Paired } from '../src/packs/calibration/account';
import type { Strangeness, Subject } from '../src/packs/calibration/machines';
import { calibration, type Told, WORLDS } from '../src/packs/calibration/run';

const words = process.argv.slice(2);
const flag = (name: string): boolean => {
  const at = words.indexOf(name);
  if (at >= 0) words.splice(at, 1);
  return at >= 0;
};
const isHelper = flag('--helper');
const withReference = flag('--reference');
const withMatrix = flag('--matrix');
const total = words.length > 0 && Number.isFinite(Number(words[0])) ? Number(words.shift()) : 25_000;
const subjects = (await shippedSubjects()).filter(({ pack }) => words.length === 0 || words.includes(pack));
/** Machines with many units take twenty times as long: each of their callouts gets a quarter of the attempts. */
const weightOf = ({ callout }: Subject): number => (hasManyUnits(callout.plant) ? 0.25 : 1);
const weights = subjects.reduce((sum, subject) => sum + weightOf(subject), 0);
const attemptsOn = (subject: Subject): number => Math.ceil((total * weightOf(subject)) / weights);

/** z beyond which one of `tests` one-sided tests would fall once in a thousand if all held. */
const LIMIT = 3.09;

const plants = [...new Set(subjects.map(({ callout }) => callout.plant))];
const accounts = new Map<string, Account>();
const without = new Map<string, { readonly log: Paired; readonly top: Paired }>();
const sharper = new Map<PlantId, Paired>();

if (isHelper) {
  process.on('message', (index: number) => {
    const subject = subjects[index];
    const reference = withReference && isFirstOfPlant(subject) ? referenceOf(subject) : null;
    process.send!([...calibration(subject, attemptsOn(subject), reference)]);
  });
  process.send!([]);
} else {
  await shareOut();
  report();
}

/** Machines with many units take longest, so they go first. */
async function shareOut(): Promise<void> {
  const order = subjects.map((_, i) => i);
  const weight = (i: number): number => (hasManyUnits(subjects[i].callout.plant) ? 0 : 1);
  order.sort((a, b) => weight(a) - weight(b));
  const cores = Math.min(availableParallelism(), subjects.length);
  await Promise.all(
    Array.from({ length: cores }, () => served(fork(process.argv[1], [...process.argv.slice(2), '--helper']), order)),
  );
}

function hasManyUnits(plant: PlantId): boolean {
  return plant === 'multi-split' || plant === 'heat-recovery';
}

function served(helper: ChildProcess, order: number[]): Promise<void> {
  return new Promise((resolve, reject) => {
    helper.on('message', (told: readonly Told[]) => {
      told.forEach(count);
      const next = order.shift();
      if (next === undefined) helper.disconnect();
      else {
        process.stderr.write(`${subjects[next].pack}#${subjects[next].callout.id}\n`);
        helper.send(next);
      }
    });
    helper.on('error', reject);
    helper.on('exit', (code) => (code === 0 ? resolve() : reject(new Error(`a helper ended with ${code}`))));
  });
}

function count(told: Told): void {
  switch (told.kind) {
    case 'believed':
      for (const plant of [told.plant, 'all']) accountOf(told.world, plant).add(told.truth, told.belief);
      return;
    case 'without': {
      const pair = without.get(told.what) ?? { log: new Paired(), top: new Paired() };
      without.set(told.what, pair);
      pair.log.add(told.log);
      pair.top.add(told.top);
      return;
    }
    default: {
      const paired = sharper.get(told.plant) ?? new Paired();
      sharper.set(told.plant, paired);
      paired.add(told.gain);
    }
  }
}

function report(): void {
  for (const world of WORLDS) {
    const rows = [...plants, 'all'].flatMap((plant) => {
      const account = accounts.get(`${world}/${plant}`);
      if (!account) return [];
      return [
        [
          plant,
          String(account.count),
          percent(account.topOne),
          account.logScore.toFixed(3),
          account.overSure.toFixed(2),
          points(account),
        ],
      ];
    });
    console.log(`\nworld: ${world}`);
    console.log(
      textTable(['plant', 'attempts', 'first right', 'log2 score', 'over-sure, sd', 'widest bin, points'], rows),
    );
  }
  const own = accounts.get('none/all')!;
  console.log('belief in the first choice and how often it was true (own world, all plants)');
  console.log(
    textTable(
      ['from', 'count', 'believed', 'true'],
      own.bins.flatMap(({ count, believed, true: hits }, i) =>
        count > 0 ? [[(i / 10).toFixed(1), String(count), percent(believed / count), percent(hits / count)]] : [],
      ),
    ),
  );
  const tests = [...plants, 'all'].map((plant) => accounts.get(`none/${plant}`)!.overSure);
  console.log(
    `one test: over-sure by no more than ${LIMIT} standard deviations over all (false alarm once in a thousand): ` +
      `${own.overSure.toFixed(2)} – ${own.overSure < LIMIT ? 'holds' : 'FAILS'}; plants ${tests.map((z) => z.toFixed(1)).join(' ')}`,
  );
  for (const world of ['coils', 'correlations'] as const) {
    const strange = accounts.get(`${world}/all`)!;
    console.log(
      `${world}: first choice ${percent(own.topOne)} → ${percent(strange.topOne)}, widest bin ${points(strange)} points`,
    );
  }
  console.log('\nwhat an instrument is worth: change when its readings are left out (same attempts)');
  console.log(
    textTable(
      ['instrument', 'attempts that used it', 'log2 score', '±', 'first right', '±'],
      [...without].map(([name, { log, top }]) => [
        name === 'quiet' ? 'all twice as noisy' : name,
        String(log.count),
        log.mean.toFixed(3),
        (2 * log.error).toFixed(3),
        `${(100 * top.mean).toFixed(1)} points`,
        (200 * top.error).toFixed(1),
      ]),
    ),
  );
  for (const [plant, paired] of sharper) {
    console.log(
      `${plant}: log score of expectations from eight times the draws is ${paired.mean.toFixed(3)} ± ${(2 * paired.error).toFixed(3)} bit better`,
    );
  }
  if (withMatrix) {
    for (const plant of plants) matrix(plant);
  }
}

function accountOf(world: Strangeness, plant: string): Account {
  const key = `${world}/${plant}`;
  const account = accounts.get(key) ?? new Account();
  accounts.set(key, account);
  return account;
}

function isFirstOfPlant(subject: Subject): boolean {
  return subjects.find(({ callout }) => callout.plant === subject.callout.plant) === subject;
}

function referenceOf({ callout }: Subject): Differential {
  const options = { draws: 192, seed: 'reference' };
  return computeDifferentialFrom(callout, sourceOf(REAL_WORLD), undefined, options);
}

/** The bin that is off most, over-sure positive, among those with enough attempts that two thirds of a point can be seen. */
function points({ bins }: Account): string {
  const off = bins
    .filter(({ count }) => count >= 200)
    .map(({ count, believed, true: hits }) => (100 * (believed - hits)) / count);
  return off.length > 0 ? off.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a)).toFixed(1) : '–';
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}

function matrix(plant: PlantId): void {
  const { confusion } = accounts.get(`none/${plant}`)!;
  const causes = [...confusion.keys()].sort();
  const header = ['true \\ first choice', ...causes.map((_, i) => String(i + 1))];
  const rows = causes.map((truth, i) => [
    `${i + 1} ${truth}`,
    ...causes.map((first) => String(confusion.get(truth)?.get(first) ?? '')),
  ]);
  console.log(`\n${plant}`);
  console.log(textTable(header, rows));
}
