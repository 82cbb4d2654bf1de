/**
 * From draws of one node in one state to a mixture of factor-model Gaussians. Draws of different regimes (liquid or
 * flash at the glass, flooded, valve at its stop, stopped by a limit) make their own component; within one, ridge
 * regression on the known scores tells what each factor does, and what is left is the channel's own spread.
 */
import { backSolve, cholesky, forwardSolve } from './numeric';
import type { Component } from './types';

export interface Draw {
  /** scores of the factors, standard deviations */
  readonly scores: readonly number[];
  /** channels, SI */
  readonly values: readonly number[];
  readonly regime: string;
}

const MOST_COMPONENTS = 3;
const FEWEST_DRAWS = 3;
/** Pulls slopes that few draws support towards zero; what they would explain goes into the channel's own spread. */
const RIDGE = 0.5;

/** Components of the draws that gave a state, of `tried` draws in all: the weights sum to the share that did. */
export function fitComponents(draws: readonly Draw[], tried: number): Component[] {
  return groups(draws).map((group) => fitGroup(group, tried));
}

function groups(draws: readonly Draw[]): Draw[][] {
  if (draws.length === 0) return [];
  const byRegime = new Map<string, Draw[]>();
  for (const draw of draws) byRegime.set(draw.regime, [...(byRegime.get(draw.regime) ?? []), draw]);
  const sorted = [...byRegime.values()].sort((a, b) => b.length - a.length);
  const kept = sorted.filter((group, i) => i === 0 || (i < MOST_COMPONENTS && group.length >= FEWEST_DRAWS));
  const strays = sorted.filter((group) => !kept.includes(group)).flat();
  return [[...kept[0], ...strays], ...kept.slice(1)];
}

function fitGroup(group: readonly Draw[], tried: number): Component {
  const n = group.length;
  const factors = group[0].scores.length;
  const channels = group[0].values.length;
  const mean = Array.from({ length: channels }, (_, c) => average(group.map(({ values }) => values[c])));
  const centre = Array.from({ length: factors }, (_, f) => average(group.map(({ scores }) => scores[f])));
  const spread = centre.map((middle, f) =>
    Math.sqrt((1 + group.reduce((sum, { scores }) => sum + square(scores[f] - middle), 0)) / (n + 1)),
  );
  const { normal, freedom } = normalMatrix(group, centre);
  const loadings = new Array<number>(channels * factors).fill(0);
  const unique = new Array<number>(channels).fill(0);
  const product = new Float64Array(factors);
  const half = new Float64Array(factors);
  const slopes = new Float64Array(factors);
  for (let c = 0; c < channels; c++) {
    product.fill(0);
    for (const { scores, values } of group) {
      for (let f = 0; f < factors; f++) product[f] += (scores[f] - centre[f]) * (values[c] - mean[c]);
    }
    forwardSolve(normal, factors, product, half);
    backSolve(normal, factors, half, slopes);
    let left = 0;
    for (const { scores, values } of group) {
      let rest = values[c] - mean[c];
      for (let f = 0; f < factors; f++) rest -= slopes[f] * (scores[f] - centre[f]);
      left += rest * rest;
    }
    unique[c] = Math.sqrt(left / Math.max(1, n - freedom));
    for (let f = 0; f < factors; f++) loadings[c * factors + f] = slopes[f] * spread[f];
  }
  return { weight: n / tried, mean, loadings, unique };
}

/** Cholesky factor of ZᵀZ + ridge, and how many degrees of freedom the regression takes. */
function normalMatrix(group: readonly Draw[], centre: readonly number[]): { normal: Float64Array; freedom: number } {
  const factors = centre.length;
  const gram = new Float64Array(factors * factors);
  for (const { scores } of group) {
    for (let i = 0; i < factors; i++) {
      for (let j = 0; j < factors; j++) gram[i * factors + j] += (scores[i] - centre[i]) * (scores[j] - centre[j]);
    }
  }
  const normal = Float64Array.from(gram);
  for (let f = 0; f < factors; f++) normal[f * factors + f] += RIDGE;
  cholesky(normal, factors);
  const half = new Float64Array(factors);
  const solved = new Float64Array(factors);
  let freedom = 1;
  for (let f = 0; f < factors; f++) {
    forwardSolve(normal, factors, gram.subarray(f * factors, (f + 1) * factors), half);
    backSolve(normal, factors, half, solved);
    freedom += solved[f];
  }
  return { normal, freedom };
}

const square = (x: number): number => x * x;
const average = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
