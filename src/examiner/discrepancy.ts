/**
 * How far the model itself may be from a machine of its kind, in a settled state. Added to every expectation, so that
 * nobody is graded on hair-splitting. Judgement, no source: about half of what two good models of such machines differ.
 */
import { PROBES, type ProbeKey, probeName } from '../../physics/types';
import { isTransducer, kindOfChannel } from '../instruments/places';
import type { Channel } from './types';

interface Discrepancy {
  /** standard deviation in the channel's SI unit, and as a share of the expected value; the larger counts */
  readonly absolute: number;
  readonly share: number;
}

const BY_UNIT: Readonly<Record<string, Discrepancy>> = {
  K: { absolute: 0.3, share: 0 },
  Pa: { absolute: 0, share: 0.01 },
  A: { absolute: 0.02, share: 0.02 },
  V: { absolute: 0, share: 0.005 },
  F: { absolute: 0, share: 0.01 },
  Ohm: { absolute: 0.2, share: 0.02 },
  Hz: { absolute: 0.3, share: 0.02 },
  '-': { absolute: 0.02, share: 0 },
};
const BY_CHANNEL: Readonly<Partial<Record<Channel, Discrepancy>>> = {
  filterPressureDrop: { absolute: 3, share: 0.04 },
  coilPressureDrop: { absolute: 3, share: 0.04 },
  supplyDuctPressure: { absolute: 3, share: 0.04 },
  contactorDrop: { absolute: 0.3, share: 0.05 },
};
const OTHER: Discrepancy = { absolute: 0, share: 0.03 };

/** Unit in which the channel's expected values are kept. */
export function unitOf(channel: Channel): string {
  if (channel.startsWith('sensor:')) return isTransducer(channel) ? 'Pa' : 'K';
  if (channel.startsWith('look:')) return '-';
  return PROBES[probeName(channel.replace('touch:', '') as ProbeKey)];
}

/** Standard deviation of the model's own error where it expects `value`. */
export function discrepancyOf(channel: Channel, value: number): number {
  const { absolute, share } = BY_CHANNEL[kindOfChannel(channel)] ?? BY_UNIT[unitOf(channel)] ?? OTHER;
  return Math.max(absolute, share * Math.abs(value));
}
