/** Sums of readings (superheat, air drop …) as linear combinations of channels, so that their spread can be computed. */

import type { SumKind } from '../attempt';
import { biasSd, noiseSd } from '../instruments/errors';
import { kindOfChannel } from '../instruments/places';
import { discrepancyOf, unitOf } from './discrepancy';
import type { Channel, Component, Differential, JudgedState, Node, Quantum, ValueKind } from './types';

type Terms = readonly (readonly [Channel, number])[];

/** Sums that part causes; the two steps on the way (absolute pressure, saturation temperature) part nothing alone. */
export const TELLING_SUMS = ['superheat', 'subcooling', 'air-drop', 'air-rise', 'approach', 'line-difference'] as const;
export type TellingSum = (typeof TELLING_SUMS)[number];

const TERMS: Readonly<Record<TellingSum, Terms>> = {
  superheat: [['superheat', 1]],
  subcooling: [['subcooling', 1]],
  'air-drop': [
    ['returnAirTemp', 1],
    ['supplyAirTemp', -1],
  ],
  'air-rise': [
    ['condenserLeavingAirTemp', 1],
    ['condenserEnteringAirTemp', -1],
  ],
  approach: [
    ['liquidLineTemp', 1],
    ['condenserEnteringAirTemp', -1],
  ],
  'line-difference': [
    ['liquidLineTemp', 1],
    ['liquidLineTempAfterDrier', -1],
  ],
};

/** What has to be read for a sum: pressures and temperatures that go in. */
export const INPUTS: Readonly<Record<TellingSum, readonly Channel[]>> = {
  superheat: ['suctionPressure', 'suctionLineTemp'],
  subcooling: ['liquidPressure', 'liquidLineTemp'],
  'air-drop': ['returnAirTemp', 'supplyAirTemp'],
  'air-rise': ['condenserEnteringAirTemp', 'condenserLeavingAirTemp'],
  approach: ['condenserEnteringAirTemp', 'liquidLineTemp'],
  'line-difference': ['liquidLineTemp', 'liquidLineTempAfterDrier'],
};

/**
 * Standard deviation that instruments and model add to a sum, K: saturation from a gauge and a clamp for superheat and
 * subcooling (combined field accuracy ±1.2 K at 2 SD), one and the same thermometer twice for the others.
 */
const SUM_ERROR: Readonly<Record<TellingSum, number>> = {
  superheat: 0.75,
  subcooling: 0.75,
  'air-drop': 0.5,
  'air-rise': 0.5,
  approach: 0.6,
  'line-difference': 0.3,
};

export function isTellingSum(sum: SumKind): sum is TellingSum {
  return (TELLING_SUMS as readonly SumKind[]).includes(sum);
}

function termsOf(quantum: Quantum): Terms {
  if (quantum.sum === undefined) return [[quantum.channel, 1]];
  if (!isTellingSum(quantum.sum)) throw new RangeError(`${quantum.sum} is a step on the way, not a sum that tells`);
  return TERMS[quantum.sum];
}

/** Pressures of air against the room's or across a part: a few Pa, never told as a gauge's. */
const OF_AIR: readonly Channel[] = ['filterPressureDrop', 'coilPressureDrop', 'supplyDuctPressure'];

export function kindOf(quantum: Quantum): ValueKind {
  if (quantum.sum !== undefined) return 'difference';
  if (quantum.channel.startsWith('look:')) return 'share';
  if (OF_AIR.includes(kindOfChannel(quantum.channel))) return 'pressureDifference';
  const kinds: Readonly<Record<string, ValueKind>> = {
    K: 'temperature',
    Pa: 'pressure',
    A: 'current',
    V: 'voltage',
    F: 'capacitance',
    Ohm: 'resistance',
    Hz: 'frequency',
    '-': 'share',
  };
  return kinds[unitOf(quantum.channel)] ?? 'share';
}

export interface Moments {
  readonly mean: number;
  readonly sd: number;
}

/** Mean and spread (nuisance, severity in the cell, model and instrument) of a quantum under one component. */
export function componentMoments(
  differential: Differential,
  component: Component,
  quantum: Quantum,
  instrument: number,
): Moments {
  const factors = differential.factors.length;
  const loading = new Array<number>(factors).fill(0);
  let mean = 0;
  let variance = instrument * instrument;
  for (const [channel, sign] of termsOf(quantum)) {
    const c = differential.channels.indexOf(channel);
    if (c < 0) return { mean: Number.NaN, sd: Number.NaN };
    mean += sign * component.mean[c];
    for (let f = 0; f < factors; f++) loading[f] += sign * component.loadings[c * factors + f];
    variance += component.unique[c] * component.unique[c];
    // The errors of a sum's model and thermometers are in SUM_ERROR together.
    const own = quantum.sum === undefined ? discrepancyOf(channel, component.mean[c]) : 0;
    variance += own * own;
  }
  for (const each of loading) variance += each * each;
  return { mean, sd: Math.sqrt(variance) };
}

/** Standard deviation of the reading itself. */
export function instrumentError(
  quantum: Quantum,
  read?: { readonly instrument: Parameters<typeof noiseSd>[0]; readonly quantity: Parameters<typeof noiseSd>[1] },
  value = 0,
): number {
  if (quantum.sum !== undefined) return isTellingSum(quantum.sum) ? SUM_ERROR[quantum.sum] : 0;
  if (!read) return 0;
  const noise = noiseSd(read.instrument, read.quantity, value);
  const bias = biasSd(read.instrument, read.quantity, value);
  return Math.sqrt(noise * noise + bias * bias);
}

/** The same over the components of a node; null where the node has no such state. */
export function nodeMoments(
  differential: Differential,
  node: Node,
  state: JudgedState,
  quantum: Quantum,
  instrument: number,
): Moments | null {
  const components = node.states[state];
  if (!components || components.length === 0) return null;
  return mixed(
    components.map((component) => ({
      weight: component.weight,
      ...componentMoments(differential, component, quantum, instrument),
    })),
  );
}

export function mixed(parts: readonly (Moments & { readonly weight: number })[]): Moments | null {
  const total = parts.reduce((sum, { weight }) => sum + weight, 0);
  if (!(total > 0)) return null;
  const mean = parts.reduce((sum, part) => sum + part.weight * part.mean, 0) / total;
  const square = parts.reduce(
    (sum, part) => sum + part.weight * (part.sd * part.sd + (part.mean - mean) * (part.mean - mean)),
    0,
  );
  return { mean, sd: Math.sqrt(square / total) };
}
