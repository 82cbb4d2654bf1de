/** What each reading that is still open would be worth now, and which is the best next one inside the order of work. */

import { exp, ln } from '../../physics/math/elementary';
import type { CauseId } from '../../physics/types';
import { senseOf } from '../instruments/looks';
import { causesOf, channelIndex, channelSd, type Fit, fitNodes, predict, priorOf } from './belief';
import { type Bench, candidatesOf } from './candidates';
import { classChances } from './classes';
import { informationOfMeasured, informationOfTable, type Outcome } from './information';
import { logSumExp } from './numeric';
import { classed, considered } from './observe';
import { channelsIn, missingForAir, needsAirFirst } from './order';
import type { Candidate, Component, Differential, JudgedState, Observation, Posterior, ValuedCandidate } from './types';

/** Nodes below this belief no longer matter for what a reading is worth. */
const NEGLIGIBLE = 1e-5;
/** Below this a reading is not worth naming, bits. */
export const LEAST_BITS = 0.02;
/** Minutes to bring the machine into a state and let it settle, for ranking only. Common practice, no source. */
export const CHANGE_MINUTES: Readonly<Record<JudgedState, number>> = { running: 0, 'full-speed': 15, standing: 20 };

/** The belief of one moment, ready to be asked what readings are worth. */
export interface Standpoint {
  readonly differential: Differential;
  readonly causes: readonly CauseId[];
  readonly observations: readonly Observation[];
  /** fits with their belief, negligible ones left out */
  readonly fits: readonly { readonly fit: Fit; readonly cause: number; readonly weight: number }[];
  readonly posterior: Posterior;
}

export function standpoint(
  differential: Differential,
  tally: Readonly<Partial<Record<CauseId, number>>>,
  observations: readonly Observation[],
): Standpoint {
  const prior = priorOf(differential, tally);
  const causes = causesOf(differential);
  const fits = fitNodes(differential, observations);
  const logs = fits.map(({ node, logWeight }) => ln(prior[node.cause]! * node.weight) + logWeight);
  const top = logSumExp(logs);
  const belief = new Array<number>(causes.length).fill(0);
  const kept: { fit: Fit; cause: number; weight: number }[] = [];
  fits.forEach((fit, i) => {
    const weight = exp(logs[i] - top);
    const cause = causes.indexOf(fit.node.cause);
    belief[cause] += weight;
    if (weight > NEGLIGIBLE) kept.push({ fit, cause, weight });
  });
  const posterior: Posterior = Object.fromEntries(causes.map((cause, i) => [cause, belief[i]]));
  return { differential, causes, observations, fits: kept, posterior };
}

/** The same belief with only these causes left in the race. */
export function among(point: Standpoint, causes: readonly CauseId[]): Standpoint {
  const inRace = (cause: CauseId) => causes.includes(cause);
  const total = causes.reduce((sum, cause) => sum + (point.posterior[cause] ?? 0), 0);
  return {
    ...point,
    fits: point.fits
      .filter(({ cause }) => inRace(point.causes[cause]))
      .map((each) => ({ ...each, weight: each.weight / total })),
    posterior: Object.fromEntries(causes.map((cause) => [cause, (point.posterior[cause] ?? 0) / total])),
  };
}

/** Expected gain of a reading about the cause, bits. */
export function bitsOf(point: Standpoint, candidate: Candidate): number {
  return senseOf(candidate.channel) ? bitsOfClassed(point, candidate) : bitsOfMeasured(point, candidate);
}

function bitsOfMeasured({ differential, causes, fits }: Standpoint, candidate: Candidate): number {
  const index = channelIndex(differential);
  const c = index.get(candidate.channel)!;
  const outcomes: Outcome[] = [];
  const silent = new Array<number>(causes.length).fill(0);
  for (const { fit, cause, weight } of fits) {
    const options = componentsFor(fit, candidate.state);
    silent[cause] += weight * (1 - options.reduce((sum, { share }) => sum + share, 0));
    for (const { component, share } of options) {
      const reading = considered(candidate, candidate.state, component.mean[c]);
      const { mean, variance } = predict(fit, reading, component, index, differential.factors.length);
      outcomes.push({ cause, weight: weight * share, mean, sd: Math.sqrt(variance) });
    }
  }
  return informationOfMeasured(outcomes, silent);
}

function bitsOfClassed({ differential, causes, fits }: Standpoint, candidate: Candidate): number {
  const { channel, edges, sd } = classed(candidate.channel, candidate.state, 0);
  const c = channelIndex(differential).get(channel)!;
  const rows = Array.from({ length: edges.length + 2 }, () => new Array<number>(causes.length).fill(0));
  for (const { fit, cause, weight } of fits) {
    let silent = 1;
    for (const { component, share } of componentsFor(fit, candidate.state)) {
      const spread = channelSd(component, c, differential);
      classChances(edges, component.mean[c], Math.sqrt(spread * spread + sd * sd)).forEach((chance, noted) => {
        rows[noted][cause] += weight * share * chance;
      });
      silent -= share;
    }
    rows[edges.length + 1][cause] += weight * Math.max(0, silent);
  }
  return informationOfTable(rows);
}

/** Components of a state under a fit: the one that the notes chose, or all of the node's. */
export function componentsFor(fit: Fit, state: JudgedState): readonly { component: Component; share: number }[] {
  const chosen = fit.components.get(state);
  if (chosen) return [{ component: chosen, share: 1 }];
  return (fit.node.states[state] ?? []).map((component) => ({ component, share: component.weight }));
}

/** Readings not taken yet, valued; those that need the air proved first carry what is missing for it. */
export function valueAll(point: Standpoint, bench: Bench): ValuedCandidate[] {
  const candidates = candidatesOf(bench);
  const known = channelsIn(point.observations);
  const taken = new Set(point.observations.map(({ channel, state }) => `${channel} ${state}`));
  const visited = new Set(point.observations.map(({ state }) => state));
  const missing = missingForAir(candidates, known);
  return candidates
    .filter(({ channel, state }) => !taken.has(`${channel} ${state}`))
    .map((candidate) => {
      const first = needsAirFirst(candidate) ? missing : [];
      const change = visited.has(candidate.state) ? 0 : CHANGE_MINUTES[candidate.state];
      const cost = [...first, candidate].reduce((sum, { minutes }) => sum + minutes, change);
      return { ...candidate, bits: bitsOf(point, candidate), cost, first };
    });
}

/** Highest gain a minute, whatever must come before it; null where nothing open is worth a reading. */
export function mostWanted(valued: readonly ValuedCandidate[]): ValuedCandidate | null {
  const worth = valued.filter(({ bits }) => bits >= LEAST_BITS);
  return worth.length === 0 ? null : worth.reduce((a, b) => (b.bits / b.cost > a.bits / a.cost ? b : a));
}

/** The same in the order of work: what must come first is returned first. */
export function bestOf(valued: readonly ValuedCandidate[]): ValuedCandidate | null {
  const best = mostWanted(valued);
  if (!best || best.first.length === 0) return best;
  const opening = valued.find(({ id }) => id === best.first[0].id);
  return opening ?? best;
}

export function bestNextFor(
  differential: Differential,
  tally: Readonly<Partial<Record<CauseId, number>>>,
  bench: Bench,
  observations: readonly Observation[],
): ValuedCandidate | null {
  return bestOf(valueAll(standpoint(differential, tally, observations), bench));
}
