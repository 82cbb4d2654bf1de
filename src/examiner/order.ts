/**
 * The order of work, as far as it is fixed: look and prove the air before hoses go on, since a charge judged with
 * unproved airflow is no judgement. Within it anything goes. Common practice, no source.
 */
import { faultFamily } from '../../physics';
import type { CauseId } from '../../physics/types';
import { kindOfChannel } from '../instruments/places';
import type { Candidate, Channel, Differential, Observation } from './types';

/** Each line wants one of its channels, of any unit; a line of which nothing can be read here is no demand. */
const AIR_PROVED: readonly (readonly Channel[])[] = [
  ['look:filterDust', 'filterPressureDrop'],
  ['look:evaporatorIce', 'look:outdoorIce'],
  ['look:evaporatorFanSpeed', 'supplyAirTemp'],
  ['look:condenserDirt', 'condenserLeavingAirTemp', 'outdoorLeavingAirTemp'],
  ['look:condenserFanSpeed', 'condenserLeavingAirTemp', 'outdoorLeavingAirTemp'],
];

/** Verdicts that judge the charge or what meters it. */
const CHARGE_JUDGEMENTS: readonly CauseId[] = [
  'undercharge',
  'overcharge',
  'non-condensable',
  'drier-restriction',
  'line-charge-not-added',
  'lines-too-long',
  'suction-line-uninsulated',
  'liquid-line-heated',
  'service-valve-throttled',
  'liquid-line-kink',
  'orifice-oversize',
  'orifice-undersize',
  'metering-valve-stuck-closing',
  'metering-valve-stuck-opening',
  'bulb-charge-lost',
  'bulb-loose',
  'metering-valve-superheat-set',
  'check-valve-leaking',
  'solenoid-stuck-closed',
  'compressor-leak-by',
  'module-valve-shut',
  'metering-valve-not-closing',
  'unit-capacity-set-wrong',
];

export function isChargeJudgement(cause: CauseId): boolean {
  return CHARGE_JUDGEMENTS.includes(cause);
}

/** What only the charge decides, so that readings under load stand for it as long as the head stands for it. */
const CHARGES: readonly CauseId[] = ['undercharge', 'overcharge', 'line-charge-not-added'];

/** K. Colder air than this sets the head of a machine that has nothing to hold it up. Common practice, no source. */
export const COLD_OUTDOORS = 286.15;

/** Whether readings under load can carry a verdict at all: a charge below 13 °C outdoors they cannot, unless the head is held. */
export function loadTells(cause: CauseId, { plant, conditions }: Pick<Differential, 'plant' | 'conditions'>): boolean {
  if (!CHARGES.includes(cause) || conditions.mode !== 'cooling' || conditions.outdoor >= COLD_OUTDOORS) return true;
  return faultFamily('fan-cycling-control-failed').plants.includes(plant);
}

/** Cheapest readings that are still missing to prove the air. */
export function missingForAir(candidates: readonly Candidate[], known: ReadonlySet<Channel>): Candidate[] {
  const missing: Candidate[] = [];
  for (const line of AIR_PROVED) {
    const isLine = (channel: Channel) => line.includes(kindOfChannel(channel));
    if ([...known].some(isLine) || missing.some(({ channel }) => isLine(channel))) continue;
    const open = candidates.filter(({ channel, state }) => isLine(channel) && state === 'running');
    if (open.length > 0) missing.push(open.reduce((a, b) => (b.minutes < a.minutes ? b : a)));
  }
  return missing;
}

export function airProved(candidates: readonly Candidate[], observations: readonly Observation[]): boolean {
  return missingForAir(candidates, channelsIn(observations)).length === 0;
}

export function channelsIn(observations: readonly Observation[]): Set<Channel> {
  return new Set(observations.map(({ channel }) => channel));
}

/** Hoses go on after the air is proved. */
export function needsAirFirst({ instrument }: Pick<Candidate, 'instrument'>): boolean {
  return instrument === 'low-gauge' || instrument === 'high-gauge';
}
