/** What must not move a grade, or hardly: each function makes the other grade of the same work. */
import type { CauseId } from '../../../physics/types';
import { type AttemptState, replay } from '../../attempt';
import type { Pack } from '../../attempt/pack/types';
import { grade } from '../../examiner';
import { type Case, openCase, type View } from '../../examiner/case';
import { isChargeJudgement } from '../../examiner/order';
import { markBelief } from '../../examiner/parts/belief';
import { markEvidence } from '../../examiner/parts/evidence';
import { inChips } from '../../examiner/traineeMind';
import type { Differential, Posterior } from '../../examiner/types';
import { accuracyAt, rounded } from '../../instruments/errors';
import { stream } from '../../instruments/streams';

/** Changes of the total, points, when one reading after the other shows another figure within its accuracy. */
export function nudges(state: AttemptState, differential: Differential, seed: string, most: number): number[] {
  const { uniform } = stream(`${seed}/nudges`);
  const { total } = grade(state, differential);
  const measured = state.notes.filter((note) => !note.struck && width(note) > 0);
  const chosen = [...measured].sort(() => uniform() - 0.5).slice(0, most);
  return chosen.map((note) => {
    const { instrument, quantity, value, index } = note;
    const moved = rounded(instrument, quantity, value + width(note) * (2 * uniform() - 1));
    const notes = state.notes.map((each) => (each.index === index ? { ...each, value: moved } : each));
    return grade({ ...state, notes }, differential).total - total;
  });
}

const width = ({ instrument, quantity, value }: AttemptState['notes'][number]): number =>
  accuracyAt(instrument, quantity, value);

/**
 * Changes of the total when one more moment is declared inside a span, by somebody who moves chips as before: `share`
 * of what the readings so far support (1 = all of it), the rest left on "not sure yet".
 */
export function splits(state: AttemptState, differential: Differential, share: number): number[] {
  const one = openCase(state, differential);
  const stakeAt = (notes: number) => {
    const whole = Object.entries(inChips(one.plain.posterior(notes)));
    const chips = Object.fromEntries(whole.map(([cause, count]) => [cause, Math.round(share * count)]));
    const unsure = 20 - Object.values(chips).reduce((sum, count) => sum + count, 0);
    return { notes, chips, unsure };
  };
  const own = state.stakes.map((stake) => ({ ...stake, ...stakeAt(stake.notes) }));
  const total = (stakes: AttemptState['stakes']) => grade({ ...state, stakes }, differential).total;
  const before = total(own);
  return own.slice(1).flatMap((stake, i) => {
    const middle = Math.floor((own[i].notes + stake.notes) / 2);
    if (middle <= own[i].notes) return [];
    const between = { ...stake, ...stakeAt(middle), moment: 'free' as const };
    return [total([...own.slice(0, i + 1), between, ...own.slice(i + 1)]) - before];
  });
}

/** Change of the total when causes and notes of the differential are listed in another order. */
export function reordered(state: AttemptState, differential: Differential): number {
  const nodes = [...differential.nodes].reverse();
  const tally = Object.fromEntries(Object.entries(state.site.callout.tally).reverse());
  const pack = { ...state.site.pack } as Pack;
  const callouts = pack.callouts.map((each) => (each.id === state.site.callout.id ? { ...each, tally } : each));
  const again = replay(state.attempt, { ...pack, callouts });
  return grade(again, { ...differential, nodes }).total - grade(state, differential).total;
}

/** Largest change of the share of Belief or Evidence when every cause bears the name of another. */
export function renamed(state: AttemptState, differential: Differential): number {
  const one = openCase(state, differential);
  const other = withNames(one, namesFor(one));
  const { right } = grade(state, differential);
  const parts = [
    [markBelief(one), markBelief(other)],
    [markEvidence(one, right), markEvidence(other, right)],
  ];
  return Math.max(...parts.map(([a, b]) => Math.abs((a.share ?? -1) - (b.share ?? -1))));
}

/** Each cause takes the name of the next one for which the same order of work holds. */
function namesFor({ differential }: Case): (cause: CauseId) => CauseId {
  const causes = [...new Set(differential.nodes.map(({ cause }) => cause))];
  const groups = [causes.filter(isChargeJudgement), causes.filter((cause) => !isChargeJudgement(cause))];
  const names = new Map(groups.flatMap((group) => group.map((cause, i) => [cause, group[(i + 1) % group.length]])));
  return (cause) => names.get(cause)!;
}

function withNames(one: Case, name: (cause: CauseId) => CauseId): Case {
  const keys = <T>(record: Readonly<Partial<Record<CauseId, T>>>) =>
    Object.fromEntries(Object.entries(record).map(([cause, value]) => [name(cause as CauseId), value]));
  const view = (old: View): View => ({
    taken: old.taken,
    likelihoods: (count) => new Map([...old.likelihoods(count)].map(([cause, value]) => [name(cause), value])),
    posterior: (count) => keys(old.posterior(count)) as Posterior,
    final: keys(old.final) as Posterior,
  });
  const { verdict, state, differential } = one;
  return {
    ...one,
    prior: keys(one.prior) as Posterior,
    tally: keys(one.tally),
    twins: one.twins.map(name),
    verdict: verdict && { ...verdict, cause: name(verdict.cause), rival: name(verdict.rival) },
    differential: { ...differential, nodes: differential.nodes.map((node) => ({ ...node, cause: name(node.cause) })) },
    state: { ...state, stakes: state.stakes.map((stake) => ({ ...stake, chips: keys(stake.chips) })) },
    plain: view(one.plain),
    followThrough: view(one.followThrough),
  };
}

/** K in which a tenth of a degree of the other scale is, and of ours. */
const TENTHS = { metric: 0.1, other: 0.1 / 1.8 } as const;

/** Change of the total between somebody who writes sums in tenths of a degree Fahrenheit and of one Celsius. */
export function otherUnits(state: AttemptState, differential: Differential): number {
  const totals = [TENTHS.metric, TENTHS.other].map((step) => {
    const written = (value: number) => Math.round(value / step) * step;
    const actions = state.attempt.actions.map((each) => {
      const { action } = each;
      if (action.kind !== 'sum') return each;
      const { saturation } = action;
      const line = saturation === undefined ? {} : { saturation: written(saturation - 273.15) + 273.15 };
      return { ...each, action: { ...action, ...line, answer: written(action.answer) } };
    });
    return grade(replay({ ...state.attempt, actions }, state.site.pack), differential).total;
  });
  return totals[1] - totals[0];
}
