/**
 * The form in which a differential is shipped with a pack: whole numbers of a step a channel, about a tenth of
 * the model's own error there: what rounding adds is a thirtieth of that error and decides nothing. JSON, so that any server compresses it.
 */
import { unitOf } from '../../physics/types';
import { discrepancyOf } from './discrepancy';
import { packSparse, unpackSparse } from './sparse';
import type { Component, Differential, JudgedState, Node } from './types';

const FINENESS = 10;
/** The same where there are many units, each with channels of its own. */
const FINENESS_OF_MANY = 6;
/** Many units: steps within which means, loadings and spreads count as the healthy machine's: the noise of the fit. */
const ALIKE = [2, 4, 4] as const;

/**
 * [weight, means, loadings, uniques], the last three in steps of their channel: numbers, or where there are many channels
 * of which a fault moves few, what differs from the healthy machine in the same state (see `sparse.ts`).
 */
type PackedComponent = readonly [number, Packed, Packed, Packed];
type Packed = readonly number[] | string;

export interface PackedDifferential extends Omit<Differential, 'nodes'> {
  readonly steps: readonly number[];
  readonly nodes: readonly (Omit<Node, 'states'> & {
    readonly states: Readonly<Partial<Record<JudgedState, readonly PackedComponent[]>>>;
  })[];
}

export function encodeDifferential(differential: Differential): PackedDifferential {
  const many = differential.channels.some((channel) => unitOf(channel) !== null);
  const fineness = many ? FINENESS_OF_MANY : FINENESS;
  const steps = differential.channels.map((channel, c) => {
    const values = differential.nodes.flatMap(({ states }) =>
      Object.values(states).flatMap((components) => components.map(({ mean }) => Math.abs(mean[c]))),
    );
    // zero is a whole number of any step
    const smallest = values.reduce((least, value) => (value > 0 && value < least ? value : least), Number.MAX_VALUE);
    const least = smallest === Number.MAX_VALUE ? 0 : smallest;
    return twoDigits(discrepancyOf(channel, least) / fineness || 1e-3);
  });
  const factors = differential.factors.length;
  const whole = (value: number, c: number) => Math.round(value / steps[c]) || 0;
  const inSteps = ({ weight, mean, loadings, unique }: Component): Whole => [
    Math.round(weight * 1e4) / 1e4,
    mean.map(whole),
    loadings.map((value, i) => whole(value, Math.floor(i / factors))),
    unique.map(whole),
  ];
  const nodes = differential.nodes.map((node) => ({ ...node, states: each(node, inSteps) }));
  if (!many) return { ...differential, steps, nodes };
  const first = firstOf(nodes[0].states);
  const packed = nodes.map((node, i) => ({
    ...node,
    states: each(node, ([weight, ...lists], state): PackedComponent => {
      const base = i === 0 ? null : first[state];
      const [mean, loadings, unique] = lists.map((list, k) =>
        base ? packSparse(snapped(list, base[k], ALIKE[k]), base[k]) : packSparse(list, null),
      );
      return [weight, mean, loadings, unique];
    }),
  }));
  return { ...differential, steps, nodes: packed };
}

const snapped = (list: readonly number[], base: readonly number[], within: number): number[] =>
  list.map((value, i) => (Math.abs(value - base[i]) <= within ? base[i] : value));

type Whole = readonly [number, readonly number[], readonly number[], readonly number[]];
type Lists = readonly [readonly number[], readonly number[], readonly number[]];

/** The first component of each state: what the others are told against. */
function firstOf(
  states: Readonly<Partial<Record<JudgedState, readonly Whole[]>>>,
): Partial<Record<JudgedState, Lists>> {
  return Object.fromEntries(
    Object.entries(states).flatMap(([state, [component]]) => (component ? [[state, component.slice(1)]] : [])),
  );
}

export function decodeDifferential(packed: PackedDifferential): Differential {
  const { steps, ...rest } = packed;
  const factors = packed.factors.length;
  if (packed.format !== 1) throw new TypeError(`differential of format ${packed.format} found, 1 expected`);
  if (steps.length !== packed.channels.length) {
    throw new TypeError(`differential ${packed.key}: ${steps.length} steps for ${packed.channels.length} channels`);
  }
  const lengths = [steps.length, steps.length * factors, steps.length];
  const whole =
    (first: Partial<Record<JudgedState, Lists>>) =>
    ([weight, ...lists]: PackedComponent, state: JudgedState): Whole => {
      const [mean, loadings, unique] = lists.map((list, k) =>
        typeof list === 'string' ? unpackSparse(list, first[state]?.[k] ?? null, lengths[k]) : list,
      );
      return [weight, mean, loadings, unique];
    };
  const first = firstOf(each(packed.nodes[0], whole({})));
  const unpack = ([weight, mean, loadings, unique]: Whole): Component => ({
    weight,
    mean: mean.map((value, c) => value * steps[c]),
    loadings: loadings.map((value, i) => value * steps[Math.floor(i / factors)]),
    unique: unique.map((value, c) => value * steps[c]),
  });
  const nodes = packed.nodes.map((node, i) => {
    const states = each(node, whole(i === 0 ? {} : first));
    return { ...node, states: each({ states }, unpack) };
  });
  return { ...rest, nodes };
}

function each<A, B>(
  { states }: { readonly states: Readonly<Partial<Record<JudgedState, readonly A[]>>> },
  turn: (component: A, state: JudgedState) => B,
): Partial<Record<JudgedState, B[]>> {
  return Object.fromEntries(
    Object.entries(states).map(([state, components]) => [
      state,
      components.map((component) => turn(component, state as JudgedState)),
    ]),
  );
}

const twoDigits = (value: number): number => Number(value.toPrecision(2));
