/**
 * Belief: how close the stakes were to what the readings so far supported, never to the truth (that is Cause).
 *
 * q = (chips + unsure · prior) / 20;  b = 2^(−min KL(P^τ ‖ q)) over τ in [0.6, 1], so that caution in the right
 * direction is free;  mean over the spans between stakes;  an untouched stake earns nothing.
 *
 * A span weighs what its readings moved, or what the stake claims that they moved where that is more: else a leap on
 * the first hunch would weigh as little as the little that was known.
 */

import { pow } from '../../../physics/math/elementary';
import type { CauseId } from '../../../physics/types';
import type { Stake } from '../../attempt';
import { temper } from '../belief';
import type { Case, View } from '../case';
import { klBits } from '../numeric';
import type { Posterior } from '../types';
import { clip, type Marked } from './part';

export const CHIPS = 20;
const TAUS = [0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 1];
/** Readings that moved less in all leave nothing to compare with, bits. */
const LEAST_MOVED = 0.5;
/** An untouched stake so close that nothing can be told from touching it. */
const NO_ROOM = 0.9;

/** Belief that a stake declares: what is not sure yet lies where the tally has it. */
export function declared(prior: Posterior, stake: Pick<Stake, 'chips' | 'unsure'> | null): Posterior {
  if (!stake) return prior;
  const { chips, unsure } = stake;
  const causes = Object.keys(prior) as (keyof Posterior)[];
  return Object.fromEntries(causes.map((cause) => [cause, ((chips[cause] ?? 0) + unsure * prior[cause]!) / CHIPS]));
}

/** 1 = in line with what the readings support, ½ = one bit off. */
export function closeness(prior: Posterior, likelihoods: ReadonlyMap<CauseId, number>, stake: Posterior): number {
  return pow(2, -Math.min(...TAUS.map((tau) => klBits(temper(prior, likelihoods, tau), stake))));
}

export function markBelief(one: Case): Marked {
  const views = [markView(one, one.plain), markView(one, one.followThrough)];
  const shares = views.flatMap(({ share }) => (share === null ? [] : [share]));
  if (shares.length === 0) return { share: null, reasons: [{ key: 'reason.belief.notMeasured', values: {} }] };
  const share = Math.max(...shares);
  const moved = Math.max(...views.map((view) => view.moved));
  if (moved < LEAST_MOVED) return { share: 0, reasons: [{ key: 'reason.belief.nothingRead', values: {} }] };
  const touched = one.state.stakes.length > 0;
  const key = !touched ? 'untouched' : share >= 0.8 ? 'close' : share >= 0.4 ? 'partly' : 'far';
  return { share, reasons: [{ key: `reason.belief.${key}`, values: { share: { kind: 'share', value: share } } }] };
}

function markView(one: Case, view: View): { share: number | null; moved: number } {
  const { prior, state, judgedNotes } = one;
  const moments = state.stakes.filter(({ notes }) => notes <= judgedNotes);
  const closing = { notes: judgedNotes, stake: moments.at(-1) ?? null };
  const spans = [...moments.map((stake) => ({ notes: stake.notes, stake })), closing];
  let before = prior;
  let from = 0;
  let moved = 0;
  let weights = 0;
  let sum = 0;
  let untouched = 0;
  let last = prior;
  for (const { notes, stake } of spans) {
    let told = 0;
    const likelihoods = view.likelihoods(notes);
    for (let count = from + 1; count <= notes; count++) {
      const after = view.posterior(count);
      told += klBits(after, before);
      before = after;
    }
    from = Math.max(from, notes);
    const stated = declared(prior, stake);
    const weight = Math.max(told, klBits(stated, last));
    last = stated;
    moved += told;
    weights += weight;
    sum += weight * closeness(prior, likelihoods, stated);
    untouched += told * closeness(prior, likelihoods, prior);
  }
  // Where even the best path has nothing to move belief with there is nothing to measure; too few readings are no excuse.
  if (moved < LEAST_MOVED) {
    const best = one.path.steps.at(-1)?.posterior ?? prior;
    return { share: klBits(best, prior) < LEAST_MOVED ? null : 0, moved };
  }
  const floor = untouched / moved;
  if (floor > NO_ROOM) return { share: null, moved };
  return { share: clip((sum / weights - floor) / (1 - floor)), moved };
}
