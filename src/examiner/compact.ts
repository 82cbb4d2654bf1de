/**
 * The form in which a differential is shipped with a pack: whole numbers of a step a channel, about a tenth of
 * the model's own error there: what rounding adds is a thirtieth of that error and decides nothing. JSON, so that any server compresses it.
 */
import { discrepancyOf } from './discrepancy';
import type { Component, Differential, JudgedState, Node } from './types';

const FINENESS = 10;

/** [weight, means, loadings, uniques], the last three in steps of their channel. */
type PackedComponent = readonly [number, readonly number[], readonly number[], readonly number[]];

export interface PackedDifferential extends Omit<Differential, 'nodes'> {
  readonly steps: readonly number[];
  readonly nodes: readonly (Omit<Node, 'states'> & {
    readonly states: Readonly<Partial<Record<JudgedState, readonly PackedComponent[]>>>;
  })[];
}

export function encodeDifferential(differential: Differential): PackedDifferential {
  const steps = differential.channels.map((channel, c) => {
    const values = differential.nodes.flatMap(({ states }) =>
      Object.values(states).flatMap((components) => components.map(({ mean }) => Math.abs(mean[c]))),
    );
    // zero is a whole number of any step
    const smallest = values.reduce((least, value) => (value > 0 && value < least ? value : least), Number.MAX_VALUE);
    const least = smallest === Number.MAX_VALUE ? 0 : smallest;
    return twoDigits(discrepancyOf(channel, least) / FINENESS || 1e-3);
  });
  const factors = differential.factors.length;
  const whole = (value: number, c: number) => Math.round(value / steps[c]) || 0;
  const pack = ({ weight, mean, loadings, unique }: Component): PackedComponent => [
    Math.round(weight * 1e4) / 1e4,
    mean.map(whole),
    loadings.map((value, i) => whole(value, Math.floor(i / factors))),
    unique.map(whole),
  ];
  return { ...differential, steps, nodes: differential.nodes.map((node) => ({ ...node, states: each(node, pack) })) };
}

export function decodeDifferential(packed: PackedDifferential): Differential {
  const { steps, ...rest } = packed;
  const factors = packed.factors.length;
  if (packed.format !== 1) throw new TypeError(`differential of format ${packed.format} found, 1 expected`);
  if (steps.length !== packed.channels.length) {
    throw new TypeError(`differential ${packed.key}: ${steps.length} steps for ${packed.channels.length} channels`);
  }
  const unpack = ([weight, mean, loadings, unique]: PackedComponent): Component => ({
    weight,
    mean: mean.map((value, c) => value * steps[c]),
    loadings: loadings.map((value, i) => value * steps[Math.floor(i / factors)]),
    unique: unique.map((value, c) => value * steps[c]),
  });
  return { ...rest, nodes: packed.nodes.map((node) => ({ ...node, states: each(node, unpack) })) };
}

function each<A, B>(
  { states }: { readonly states: Readonly<Partial<Record<JudgedState, readonly A[]>>> },
  turn: (component: A) => B,
): Partial<Record<JudgedState, B[]>> {
  return Object.fromEntries(Object.entries(states).map(([state, components]) => [state, components.map(turn)]));
}

const twoDigits = (value: number): number => Number(value.toPrecision(2));
