// Does the grade move with what should not move it? npm run fairness -- [--seeds N] [--nudges N] [pack[#callout] …]
// On the attempts of four scripted trainees: one reading after the other moved within its accuracy; one more stake inside
// a span; causes in another order and under other names; sums in other units; with --seeds also expectations from N other
// draws of machines (computed here: seconds each on a split, minutes on many units).
import { shelf } from '../src/cli/shelf';
import { textTable } from '../src/cli/table';
import { computeDifferential, differentialInput, grade } from '../src/examiner';
import type { HabitId } from '../src/examiner/traineeExpectations';
import { playTrainee } from '../src/examiner/trainees';
import { nudges, otherUnits, renamed, reordered, splits } from '../src/packs/fairness/changes';

const words = process.argv.slice(2);
const option = (name: string, otherwise: number): number => {
  const at = words.indexOf(name);
  return at < 0 ? otherwise : Number(words.splice(at, 2)[1]);
};
const seeds = option('--seeds', 0);
const most = option('--nudges', 12);
const asked = (pack: string, callout: string) =>
  words.length === 0 || words.includes(pack) || words.includes(`${pack}#${callout}`);
const PLAYED: readonly HabitId[] = ['greedy', 'careful-slow', 'overbets', 'first-hunch'];

const found = new Map<string, number[]>();
const add = (what: string, values: readonly number[]) => {
  found.set(what, [...(found.get(what) ?? []), ...values.map(Math.abs)]);
};
const { current } = await shelf();
for (const { pack, packed, callout, differential } of current.filter((each) => asked(each.pack, each.callout.id))) {
  const others = Array.from({ length: seeds }, (_, i) =>
    computeDifferential(differentialInput(callout), undefined, { seed: `fairness/${i}` }),
  );
  for (const habit of PLAYED) {
    const state = playTrainee(habit, { pack: packed, callout: callout.id, seed: 'trainee', differential });
    add(`one reading within its accuracy, ${habit}`, nudges(state, differential, `${callout.id}/${habit}`, most));
    if (habit !== 'first-hunch') {
      for (const share of [1, 0.5])
        add(`span split, ${share} of the belief staked`, splits(state, differential, share));
    }
    add('causes in another order', [reordered(state, differential)]);
    add('causes under other names (share of Belief, Evidence)', [renamed(state, differential)]);
    add('sums in other units', [otherUnits(state, differential)]);
    const totals = others.map((other) => grade(state, other).total);
    if (totals.length > 1) add(`SD over ${seeds} seeds of machines`, [spread(totals)]);
  }
  console.error(`${pack}#${callout.id}`);
}
console.log(
  textTable(
    ['points', 'count', 'median', '95 %', 'most'],
    [...found].map(([what, values]) => {
      const sorted = values.sort((a, b) => a - b);
      const at = (share: number) => (sorted[Math.ceil(share * sorted.length) - 1] ?? 0).toFixed(2);
      return [what, String(sorted.length), at(0.5), at(0.95), at(1)];
    }),
  ),
);

function spread(values: readonly number[]): number {
  const middle = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1));
}
