// Does the examiner hold what it claims? npm run calibrate -- [attempts] [--reference] [--matrix] [pack …]
// Simulated attempts over all callouts: how sure it was and how often right, in its own world and in stranger ones; what
// each instrument is worth; with --reference also against expectations from eight times the draws (minutes a plant).
import type { PlantId } from '../physics';
import { REAL_WORLD } from '../src/attempt';
import { shippedSubjects } from '../src/cli/shelf';
import { textTable } from '../src/cli/table';
import { posterior } from '../src/examiner';
import { computeDifferentialFrom } from '../src/examiner/differential';
import { sourceOf } from '../src/examiner/source';
import type { Differential } from '../src/examiner/types';
import type { InstrumentId } from '../src/instruments/types';
import { Account, firstOf, logScore, Paired } from '../src/packs/calibration/account';
import { type Attempt, drawAttempt, type Strangeness, type Subject } from '../src/packs/calibration/machines';

const words = process.argv.slice(2);
const flag = (name: string): boolean => {
  const at = words.indexOf(name);
  if (at >= 0) words.splice(at, 1);
  return at >= 0;
};
const withReference = flag('--reference');
const withMatrix = flag('--matrix');
const total = words.length > 0 && Number.isFinite(Number(words[0])) ? Number(words.shift()) : 25_000;
const subjects = (await shippedSubjects()).filter(({ pack }) => words.length === 0 || words.includes(pack));
const each = Math.ceil(total / subjects.length);

/** z beyond which one of `tests` one-sided tests would fall once in a thousand if all held. */
const LIMIT = 3.09;
/** share of the attempts that are drawn again in each stranger world, and of those on which instruments are left out */
const STRANGER = 0.25;

const worlds: readonly Strangeness[] = ['none', 'model-error', 'coils', 'correlations', 'noise'];
const plants = [...new Set(subjects.map(({ callout }) => callout.plant))];
const accounts = new Map<string, Account>();
const without = new Map<InstrumentId, { readonly log: Paired; readonly top: Paired }>();
const noisier = { log: new Paired(), top: new Paired() };
const sharper = new Map<PlantId, Paired>();

for (const subject of subjects) {
  const { callout } = subject;
  const reference = withReference && isFirstOfPlant(subject) ? referenceOf(subject) : null;
  for (const world of worlds) {
    const count = world === 'none' ? each : Math.ceil(each * STRANGER);
    for (let i = 0; i < count; i++) {
      const attempt = drawAttempt(subject, world, `calibration/${callout.id}/${i}`);
      if (!attempt) continue;
      const belief = believe(subject, attempt);
      accountOf(world, callout.plant).add(attempt.truth, belief);
      accountOf(world, 'all').add(attempt.truth, belief);
      if (world !== 'none') continue;
      if (i < each * STRANGER) leaveOut(subject, attempt);
      if (reference) {
        const better = posterior(
          reference,
          callout.tally,
          attempt.readings.map(({ observation }) => observation),
        );
        const paired = sharper.get(callout.plant) ?? new Paired();
        sharper.set(callout.plant, paired);
        paired.add(logScore(attempt.truth, better) - logScore(attempt.truth, belief));
      }
    }
  }
  for (let i = 0; i < each * STRANGER; i++) {
    const quiet = drawAttempt(subject, 'none', `calibration/${callout.id}/${i}`);
    const loud = drawAttempt(subject, 'noise', `calibration/${callout.id}/${i}`);
    if (quiet && loud) compare(noisier, quiet.truth, believe(subject, quiet), believe(subject, loud));
  }
  process.stderr.write(`${subject.pack}#${callout.id}\n`);
}

for (const world of worlds) {
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
    [...without, ['all twice as noisy', noisier] as const].map(([name, { log, top }]) => [
      name,
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

function believe({ callout, differential }: Subject, { readings }: Attempt) {
  return posterior(
    differential,
    callout.tally,
    readings.map(({ observation }) => observation),
  );
}

function leaveOut(subject: Subject, attempt: Attempt): void {
  const full = believe(subject, attempt);
  for (const instrument of new Set(attempt.readings.map(({ candidate }) => candidate.instrument))) {
    const rest = attempt.readings.filter(({ candidate }) => candidate.instrument !== instrument);
    const pair = without.get(instrument) ?? { log: new Paired(), top: new Paired() };
    without.set(instrument, pair);
    compare(pair, attempt.truth, full, believe(subject, { ...attempt, readings: rest }));
  }
}

function compare(
  { log, top }: { log: Paired; top: Paired },
  truth: Attempt['truth'],
  before: ReturnType<typeof believe>,
  after: ReturnType<typeof believe>,
): void {
  log.add(logScore(truth, after) - logScore(truth, before));
  top.add((firstOf(after)[0] === truth ? 1 : 0) - (firstOf(before)[0] === truth ? 1 : 0));
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
