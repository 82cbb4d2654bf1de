// What the scripted trainees earn: npm run trainees -- [--habits a,b] [--keep file] [pack[#callout] …]
// The matrix habit × part over all shipped callouts, what each habit costs against the same work without it, and whether
// docs/scoring-expectations.md holds. Ends with 1 where it does not. --keep: rows are written there one by one, and those
// that stand there already are not played again (for runs in pieces; delete it when anything changed).
import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { shelf } from '../src/cli/shelf';
import { textTable } from '../src/cli/table';
import { APART, EXPECTED, GAP, HABITS, ORDERS } from '../src/examiner/traineeExpectations';
import { apartness, costOf, isHabit, meansOf, PARTS, type Row, rowOf } from '../src/examiner/traineeRows';

const words = process.argv.slice(2);
const at = words.indexOf('--habits');
const habits = at < 0 ? HABITS : words.splice(at, 2)[1].split(',').filter(isHabit);
const asked = (pack: string, callout: string) =>
  words.length === 0 || words.includes(pack) || words.includes(`${pack}#${callout}`);
const keep = words.indexOf('--keep');
const file = keep < 0 ? null : words.splice(keep, 2)[1];
const kept: { at: string; habit: string; row: Row | null }[] =
  file && existsSync(file)
    ? readFileSync(file, 'utf8')
        .trim()
        .split('\n')
        .map((line) => JSON.parse(line))
    : [];
const { current, stale } = await shelf();
const subjects = current.filter(({ pack, callout }) => asked(pack, callout.id));
if (stale.length > 0) console.error(`left out, not of this machine and physics: ${stale.join(', ')}`);

const rows: Row[] = [];
for (const { pack: id, packed: pack, callout, differential } of subjects) {
  for (const habit of habits) {
    const at = `${id}#${callout.id}`;
    const found = kept.find((each) => each.at === at && each.habit === habit);
    const row = found ? found.row : rowOf(habit, { pack, callout: callout.id, seed: 'trainee', differential });
    if (file && !found) appendFileSync(file, `${JSON.stringify({ at, habit, row })}\n`);
    if (row) rows.push({ ...row, callout: at });
  }
  const totals = habits.map((habit) =>
    rows.find((row) => row.habit === habit && row.callout.endsWith(`#${callout.id}`)),
  );
  console.error(
    `${callout.id.padEnd(22)}${totals.map((row) => (row ? row.total.toFixed(0) : '–').padStart(5)).join('')}`,
  );
}

const percent = (share: number): string => (Number.isNaN(share) ? '–' : (100 * share).toFixed(0));
console.log(`${subjects.length} callouts; total in points, parts in % of their weight`);
console.log(
  textTable(
    ['habit', 'callouts', 'total', ...PARTS],
    habits.map((habit) => {
      const { count, total, share } = meansOf(rows, habit);
      return [habit, String(count), total.toFixed(1), ...PARTS.map((part) => percent(share(part)))];
    }),
  ),
);
console.log('\nlost against the same work without the habit, % of the part; apart = own over the worst other');
console.log(
  textTable(
    ['habit', 'own', ...PARTS, 'apart'],
    habits.flatMap((habit) => {
      const cost = costOf(rows, habit);
      const { own } = EXPECTED[habit];
      if (!cost || own === null) return [];
      const apart = own === 'care' ? '' : apartness(cost, own).toFixed(1);
      return [[habit, own, ...PARTS.map((part) => percent(cost[part])), apart]];
    }),
  ),
);
const misses = missesOf();
console.log(misses.length === 0 ? '\nall expectations hold' : `\n${misses.join('\n')}`);
process.exitCode = misses.length === 0 ? 0 : 1;

function missesOf(): string[] {
  const found: string[] = [];
  const total = (habit: (typeof HABITS)[number]) => meansOf(rows, habit).total;
  for (const habit of habits) {
    const { own, least = 0, most = 100 } = EXPECTED[habit];
    if (total(habit) < least || total(habit) > most)
      found.push(`${habit}: ${total(habit).toFixed(1)} of ${least}…${most}`);
    const cost = costOf(rows, habit);
    if (cost && own && own !== 'care' && !(apartness(cost, own) >= APART && cost[own] > 0)) {
      found.push(`${habit}: ${apartness(cost, own).toFixed(1)} times apart in ${own}, ${APART} expected`);
    }
  }
  for (const order of ORDERS) {
    for (let i = 1; i < order.length; i++) {
      const [better, worse] = [order[i - 1], order[i]];
      if (![better, worse].every((each) => habits.includes(each))) continue;
      const gap = total(better) - total(worse);
      if (gap < GAP) found.push(`${better} over ${worse}: ${gap.toFixed(1)} points, ${GAP} expected`);
    }
  }
  return found;
}
