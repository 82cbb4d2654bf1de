/**
 * Belief over causes: P(cause | notes) ∝ prior · Σ nodes weight · p(notes | node), in logarithms.
 *
 * A node's expected channels are a mixture of factor-model Gaussians (see `Component`), so each integral over the
 * machine's own differences, the severity within the cell, the model's error, the instrument's shared bias and the
 * reading's own noise is exact. One reading in fifty may be a slip (clamp knocked off, figures swapped): at most one
 * such slip among the notes is allowed for, so that a single odd reading does not decide a case.
 */

import { exp, ln } from '../../physics/math/elementary';
import type { CauseId } from '../../physics/types';
import { classLogLikelihood } from './classes';
import { discrepancyOf } from './discrepancy';
import { backSolve, cholesky, forwardSolve, inverseDiagonal, logNormal, logSumExp } from './numeric';
import type { Channel, Component, Differential, JudgedState, Measured, Node, Observation, Posterior } from './types';

/** Chance that one reading is a slip, and how many times wider than its own error the slip's spread is. */
const SLIP = 0.02;
const SLIP_WIDTH = 12;
/** Likelihood of a note in a state that the node's machine cannot be brought into: it may have been misjudged. */
const LOG_IMPOSSIBLE = ln(1e-3);

const indexCache = new WeakMap<Differential, ReadonlyMap<Channel, number>>();

export function channelIndex(differential: Differential): ReadonlyMap<Channel, number> {
  let index = indexCache.get(differential);
  if (!index) {
    index = new Map(differential.channels.map((channel, i) => [channel, i]));
    indexCache.set(differential, index);
  }
  return index;
}

/** The measured notes under one choice of components (one a state), ready to predict a further reading. */
export interface Fit {
  readonly node: Node;
  /** ln(weight of the components within the node · likelihood of all notes) */
  logWeight: number;
  readonly components: ReadonlyMap<JudgedState, Component>;
  readonly measured: readonly Measured[];
  readonly lower: Float64Array;
  /** covariance⁻¹ · residuals */
  readonly alpha: Float64Array;
}

/** Every node under every choice of components. `nodes` may leave out those that no longer matter. */
export function fitNodes(
  differential: Differential,
  observations: readonly Observation[],
  nodes: readonly Node[] = differential.nodes,
): Fit[] {
  const index = channelIndex(differential);
  const known = canonical(observations.filter(({ channel }) => index.has(channel)));
  const states = differential.states.filter((state) => known.some((each) => each.state === state));
  const measured = known.filter((each): each is Measured => each.kind === 'measured');
  const fits: Fit[] = [];
  for (const node of nodes) {
    for (const { components, logWeight } of choices(node, states)) {
      const fit = fitMeasured(node, components, measured, index, differential.factors.length);
      fit.logWeight += logWeight;
      for (const each of known) {
        const component = components.get(each.state);
        if (!component) fit.logWeight += LOG_IMPOSSIBLE;
        else if (each.kind === 'classed') {
          const c = index.get(each.channel)!;
          fit.logWeight += classLogLikelihood(each, component.mean[c], channelSd(component, c, differential));
        }
      }
      fits.push(fit);
    }
  }
  return fits;
}

/** A fixed order, so that the belief does not depend on the order of the notes in the last bit. */
function canonical(observations: readonly Observation[]): Observation[] {
  const key = (each: Observation) => `${each.state} ${each.channel}`;
  return [...observations].sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : a.note - b.note));
}

interface Choice {
  readonly components: ReadonlyMap<JudgedState, Component>;
  readonly logWeight: number;
}

function choices(node: Node, states: readonly JudgedState[]): Choice[] {
  let all: Choice[] = [{ components: new Map(), logWeight: 0 }];
  for (const state of states) {
    const components = node.states[state];
    if (!components || components.length === 0) continue;
    all = all.flatMap((choice) =>
      components.map((component) => ({
        components: new Map([...choice.components, [state, component]]),
        logWeight: choice.logWeight + ln(component.weight),
      })),
    );
  }
  return all;
}

/** Standard deviation of a channel under a component, instrument excluded. */
export function channelSd(component: Component, channel: number, differential: Differential): number {
  const factors = differential.factors.length;
  const own = discrepancyOf(differential.channels[channel], component.mean[channel]);
  let variance = own * own + component.unique[channel] * component.unique[channel];
  for (let f = 0; f < factors; f++) {
    const loading = component.loadings[channel * factors + f];
    variance += loading * loading;
  }
  return Math.sqrt(variance);
}

/** Covariance of two readings under their components; `same` = one and the same channel in one state. */
function covarianceOf(
  a: Measured,
  ca: Component,
  ia: number,
  b: Measured,
  cb: Component,
  ib: number,
  factors: number,
): number {
  let sum = 0;
  for (let f = 0; f < factors; f++) sum += ca.loadings[ia * factors + f] * cb.loadings[ib * factors + f];
  if (ia === ib && a.state === b.state) {
    const own = discrepancyOf(a.channel, ca.mean[ia]);
    sum += ca.unique[ia] * ca.unique[ia] + own * own;
  }
  if (a.biasKey === b.biasKey) sum += a.bias * b.bias;
  return sum;
}

function fitMeasured(
  node: Node,
  components: ReadonlyMap<JudgedState, Component>,
  all: readonly Measured[],
  index: ReadonlyMap<Channel, number>,
  factors: number,
): Fit {
  const measured = all.filter(({ state }) => components.has(state));
  const n = measured.length;
  const lower = new Float64Array(n * n);
  const residual = new Float64Array(n);
  const own = new Float64Array(n);
  const at = measured.map(({ channel }) => index.get(channel)!);
  const of = measured.map(({ state }) => components.get(state)!);
  for (let i = 0; i < n; i++) {
    residual[i] = measured[i].value - of[i].mean[at[i]];
    for (let j = 0; j <= i; j++) {
      lower[i * n + j] = covarianceOf(measured[i], of[i], at[i], measured[j], of[j], at[j], factors);
    }
    const error = discrepancyOf(measured[i].channel, of[i].mean[at[i]]);
    own[i] = measured[i].noise * measured[i].noise + measured[i].bias * measured[i].bias + error * error;
    lower[i * n + i] += measured[i].noise * measured[i].noise;
  }
  const marginal = Float64Array.from({ length: n }, (_, i) => lower[i * n + i]);
  cholesky(lower, n);
  const white = new Float64Array(n);
  forwardSolve(lower, n, residual, white);
  let logLikelihood = 0;
  for (let i = 0; i < n; i++) logLikelihood += logNormal(white[i], 0, 1) - ln(lower[i * n + i]);
  const alpha = new Float64Array(n);
  backSolve(lower, n, white, alpha);
  logLikelihood += logOfOneSlip(residual, alpha, inverseDiagonal(lower, n), marginal, own);
  return { node, components, measured, lower, alpha, logWeight: logLikelihood };
}

/** ln of the factor by which allowing for at most one slip changes the likelihood. */
function logOfOneSlip(
  residual: Float64Array,
  alpha: Float64Array,
  precision: Float64Array,
  marginal: Float64Array,
  own: Float64Array,
): number {
  const n = residual.length;
  const terms = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) {
    const variance = 1 / precision[i];
    const kept = logNormal(alpha[i] * variance, 0, variance);
    const slipped = logNormal(residual[i], 0, marginal[i] + SLIP_WIDTH * SLIP_WIDTH * own[i]);
    terms[i + 1] = ln(SLIP / (1 - SLIP)) + slipped - kept;
  }
  return n * ln(1 - SLIP) + logSumExp(terms);
}

/** Mean and variance of a further reading under a fit; null where its state has no component there. */
export function predict(
  fit: Fit,
  reading: Measured,
  component: Component,
  index: ReadonlyMap<Channel, number>,
  factors: number,
): { mean: number; variance: number } {
  const c = index.get(reading.channel)!;
  const n = fit.measured.length;
  const cross = new Float64Array(n);
  let mean = component.mean[c];
  for (let i = 0; i < n; i++) {
    const other = fit.measured[i];
    const theirs = fit.components.get(other.state)!;
    cross[i] = covarianceOf(reading, component, c, other, theirs, index.get(other.channel)!, factors);
    mean += cross[i] * fit.alpha[i];
  }
  const solved = new Float64Array(n);
  forwardSolve(fit.lower, n, cross, solved);
  let variance = covarianceOf(reading, component, c, reading, component, c, factors) + reading.noise * reading.noise;
  for (let i = 0; i < n; i++) variance -= solved[i] * solved[i];
  return { mean, variance: Math.max(variance, reading.noise * reading.noise, 1e-12) };
}

/** The causes of a differential, in the order of its nodes. */
export function causesOf(differential: Differential): CauseId[] {
  return [...new Set(differential.nodes.map(({ cause }) => cause))];
}

/** ln p(notes | cause), severity and nuisance integrated out; for all causes, or only for those asked for. */
export function causeLogLikelihoods(
  differential: Differential,
  observations: readonly Observation[],
  causes: readonly CauseId[] = causesOf(differential),
): Map<CauseId, number> {
  const terms = new Map<CauseId, number[]>(causes.map((cause) => [cause, []]));
  const nodes = differential.nodes.filter(({ cause }) => terms.has(cause));
  for (const { node, logWeight } of fitNodes(differential, observations, nodes)) {
    terms.get(node.cause)!.push(ln(node.weight) + logWeight);
  }
  return new Map([...terms].map(([cause, values]) => [cause, logSumExp(values)]));
}

/** Counts that the tally does not name still happen: half a case in a hundred. */
const UNNAMED = 0.5;

/** The prior that the work order prints, over the causes of the differential; never zero. */
export function priorOf(differential: Differential, tally: Readonly<Partial<Record<CauseId, number>>>): Posterior {
  const counts = causesOf(differential).map((cause) => [cause, Math.max(tally[cause] ?? 0, UNNAMED)] as const);
  const total = counts.reduce((sum, [, count]) => sum + count, 0);
  return Object.fromEntries(counts.map(([cause, count]) => [cause, count / total]));
}

/** P^τ ∝ prior · likelihood^τ. */
export function temper(prior: Posterior, likelihoods: ReadonlyMap<CauseId, number>, tau: number): Posterior {
  const causes = [...likelihoods.keys()];
  const logs = causes.map((cause) => ln(prior[cause] ?? 0) + tau * likelihoods.get(cause)!);
  const top = logSumExp(logs);
  return Object.fromEntries(causes.map((cause, i) => [cause, exp(logs[i] - top)]));
}

/** Belief over the causes of the callout, given what was observed. Sums to 1. */
export function posterior(
  differential: Differential,
  tally: Readonly<Partial<Record<CauseId, number>>>,
  observations: readonly Observation[],
): Posterior {
  return temper(priorOf(differential, tally), causeLogLikelihoods(differential, observations), 1);
}
