/**
 * A round: one machine with one side of an edge in it, a few readings that both sides explain, and everything that
 * could be read next. What a next reading is worth is worked out from the differential, given what was read already.
 */
import type { CauseId } from '../../physics/types';
import { REAL_WORLD, type Saturation } from '../attempt';
import { causeLogLikelihoods } from '../examiner/belief';
import { classChances } from '../examiner/classes';
import { Expectations, separation } from '../examiner/explain/bands';
import { valueOfSum } from '../examiner/explain/quanta';
import { informationOfMeasured, informationOfTable } from '../examiner/information';
import { LN2, normalCdf } from '../examiner/numeric';
import { isTellingSum, type Moments } from '../examiner/quanta';
import { type Reader, readerOf } from '../examiner/readings';
import type { Classed, Measured, Observation } from '../examiner/types';
import { senseOf } from '../instruments/looks';
import { stream } from '../instruments/streams';
import { erringReader } from '../packs/erring';
import { type Edge, movement, namedCauses } from './edges';
import { machineWith, twinOf } from './machine';
import { type Compared, comparedOn, expectedOf, isLook, isOfUnit } from './quanta';
import { benchAt, type Setting } from './setting';

/** Something read on the machine of a round. */
export interface Shown {
  readonly compared: Compared;
  /** SI, pressures absolute; the number of the class for a look */
  readonly value: number;
  readonly observations: readonly Observation[];
  /** the same on the healthy twin; null where it has no such state */
  readonly twin: number | null;
}

/** Something that could be read next. */
export interface Offer extends Shown {
  /** expected gain about which of the two it is, if both were equally likely, bits */
  readonly bits: number;
  /** of 1: how often whoever knows both would be right by it alone, if both were equally likely */
  readonly sure: number;
  /** what either cause would show, in the order of the edge */
  readonly expected: readonly [Moments, Moments];
}

export interface Round {
  readonly setting: Setting;
  readonly edge: Pick<Edge, 'id' | 'plant' | 'causes'>;
  readonly seed: string;
  readonly truth: CauseId;
  readonly given: readonly Shown[];
  /** the most telling first */
  readonly offers: readonly Offer[];
  readonly saturation: Saturation;
  /** Pa */
  readonly atmosphere: number;
}

/** Readings on the table before the question. */
const GIVEN = 3;
/** A given reading moves both sides by at least this, in standard deviations of a sound machine … */
const MOVES = 0.8;
/** … and parts them by no more than this, in their common ones. */
const PARTS_NOT = 1;
/** Below this the best reading settles nothing: another machine is drawn. */
const SETTLES_BITS = 0.4;
const TRIES = 6;
/** A sum goes before a bare reading that says hardly more. */
const SUMS_FIRST = 1.3;

/** Null where no machine of this edge can be settled here: the sides stop the machine, or nothing parts them. */
export function makeRound(setting: Setting, edge: Round['edge'], truth: CauseId, seed: string): Round | null {
  for (let i = 0; i < TRIES; i++) {
    const round = tryRound(setting, edge, truth, `${seed}/${i}`);
    if ((round?.offers[0]?.bits ?? 0) >= SETTLES_BITS) return round;
  }
  return null;
}

function tryRound(setting: Setting, edge: Round['edge'], truth: CauseId, seed: string): Round | null {
  const { callout, differential } = setting;
  const drawn = machineWith(callout, truth, seed);
  if (!drawn) return null;
  const saturation = REAL_WORLD.saturation(callout.refrigerant);
  const read = erringReader({ snapshots: drawn.snapshots, seed });
  const readTwin = readerOf(twinOf(callout));
  const all = comparedOn(benchAt(callout), differential).filter((one) => !isOfUnit(one));
  const show = (one: Compared): Shown | null => {
    const found = readCompared(one, read, saturation);
    return found && { compared: one, ...found, twin: readCompared(one, readTwin, saturation)?.value ?? null };
  };
  const given = chooseGiven(setting, edge, all).flatMap((one) => show(one) ?? []);
  const seen = given.flatMap(({ observations }) => observations);
  const expectations = new Expectations(differential, seen);
  const offers = openAfter(all, given).flatMap((one): Offer[] => {
    const shown = show(one);
    const [x, y] = edge.causes.map((cause) => expectedOf(expectations, cause, one));
    if (!shown || !x || !y) return [];
    return [{ ...shown, ...worthBetween(one, x, y), expected: [x, y] }];
  });
  offers.sort((a, b) => worth(b) - worth(a) || sumsFirst(a, b) || a.compared.minutes - b.compared.minutes);
  const atmosphere = REAL_WORLD.airPressure(callout.conditions.altitude);
  return { setting, edge, seed, truth, given, offers, saturation, atmosphere };
}

/** Hundredths of a bit decide nothing between two readings that both settle it: then the sum is what one thinks in. */
const worth = ({ bits }: Offer): number => Math.round(20 * bits);
const sumsFirst = (a: Shown, b: Shown): number => Number(isSum(b.compared)) - Number(isSum(a.compared));
const isSum = ({ quantum }: Compared): boolean => quantum.sum !== undefined;

/** What both sides move the same way and hardly differ in; the clearest first, no reading twice. */
function chooseGiven({ differential }: Setting, { causes }: Round['edge'], all: readonly Compared[]): Compared[] {
  const expectations = new Expectations(differential, []);
  const ranked = all
    .filter((one) => one.state === 'running' && !isLook(one))
    .flatMap((one) => {
      const sound = expectedOf(expectations, 'no-fault', one);
      const [x, y] = causes.map((cause) => expectedOf(expectations, cause, one));
      if (!x || !y) return [];
      const [a, b] = [movement(x, sound), movement(y, sound)];
      const both = a * b > 0 ? Math.min(Math.abs(a), Math.abs(b)) : 0;
      return [{ one, both, apart: separation(x, y) }];
    })
    .map((each) => ({ ...each, worth: (each.both - each.apart) * (isSum(each.one) ? SUMS_FIRST : 1) }))
    .sort((a, b) => b.worth - a.worth);
  const chosen: Compared[] = [];
  const take = (list: typeof ranked) => {
    for (const { one } of list)
      if (chosen.length < GIVEN && !chosen.some((other) => overlap(one, other))) chosen.push(one);
  };
  take(ranked.filter(({ both, apart }) => both >= MOVES && apart <= PARTS_NOT));
  // Where little is moved alike: what parts them least, moved or not.
  take(ranked.filter(({ apart }) => apart <= PARTS_NOT));
  return chosen;
}

const overlap = (a: Compared, b: Compared): boolean => a.state === b.state && shareReading(a, b);

function shareReading(a: Compared, b: Compared): boolean {
  return a.inputs.some(({ channel }) => b.inputs.some((other) => other.channel === channel));
}

/** What is not on the table yet. A sum stays open as long as one of its readings does. */
function openAfter(all: readonly Compared[], given: readonly Shown[]): Compared[] {
  const taken = new Set(
    given.flatMap(({ compared }) => compared.inputs.map(({ channel, state }) => `${channel} ${state}`)),
  );
  return all.filter(({ inputs }) => inputs.some(({ channel, state }) => !taken.has(`${channel} ${state}`)));
}

/** A reading or a sum of readings on one machine; null where it has no such state or the table does not reach. */
export function readCompared(
  { quantum, inputs }: Compared,
  read: Reader,
  saturation: Saturation,
): { readonly value: number; readonly observations: readonly Observation[] } | null {
  const observations = inputs.map((candidate) => read(candidate));
  if (!observations.every((each): each is Measured | Classed => each !== null)) return null;
  const [a, b] = observations;
  if (quantum.sum === undefined) return { value: a!.value, observations };
  const value = isTellingSum(quantum.sum) ? valueOfSum(quantum.sum, a!.value, b!.value, saturation) : null;
  return value === null ? null : { value, observations };
}

/** What a reading is worth between two equally likely causes: expected gain, and how often it decides rightly. */
function worthBetween(one: Compared, x: Moments, y: Moments): { readonly bits: number; readonly sure: number } {
  const sense = one.quantum.sum === undefined ? senseOf(one.quantum.channel) : null;
  if (!sense) {
    const outcomes = [x, y].map(({ mean, sd }, cause) => ({ cause, weight: 0.5, mean, sd }));
    // The cut lies as many standard deviations from either side.
    const sure = normalCdf(Math.abs(x.mean - y.mean) / (x.sd + y.sd));
    return { bits: informationOfMeasured(outcomes, [0, 0]), sure };
  }
  const edges = sense.classes.slice(0, -1).map(({ below }) => below);
  const a = classChances(edges, x.mean, x.sd);
  const b = classChances(edges, y.mean, y.sd);
  const sure = a.reduce((sum, chance, i) => sum + 0.5 * Math.max(chance, b[i]!), 0);
  return { bits: informationOfTable(a.map((chance, i) => [0.5 * chance, 0.5 * b[i]!])), sure };
}

export type PickGrade = 'settles' | 'helps' | 'nothing';
/** Shares of the best reading's worth. */
const AS_GOOD = 0.8;
const HELPS = 0.4;

/** How the chosen reading compares with the best one. */
export function gradePick({ offers }: Round, pick: Offer): PickGrade {
  const share = pick.bits / offers[0]!.bits;
  return share >= AS_GOOD ? 'settles' : share >= HELPS ? 'helps' : 'nothing';
}

/** The examiner's belief among these causes, all equally likely before, from everything on the table. */
export function beliefAmong(
  { setting, given }: Round,
  causes: readonly CauseId[],
  more: readonly Shown[],
): Readonly<Partial<Record<CauseId, number>>> {
  const once = new Map<string, Observation>();
  for (const shown of [...given, ...more]) {
    for (const each of shown.observations) once.set(`${each.channel} ${each.state}`, each);
  }
  const logs = causeLogLikelihoods(setting.differential, [...once.values()], causes);
  const top = Math.max(...logs.values());
  const weights = [...logs].map(([cause, value]) => [cause, 2 ** ((value - top) / LN2)] as const);
  const total = weights.reduce((sum, [, weight]) => sum + weight, 0);
  return Object.fromEntries(weights.map(([cause, weight]) => [cause, weight / total]));
}

/** An answer counts if it is the truth, or if nothing on the table speaks against it by more than 2 : 1. */
export function isAnswerRight(
  round: Round,
  answer: CauseId,
  causes: readonly CauseId[],
  more: readonly Shown[],
): boolean {
  if (answer === round.truth) return true;
  const belief = beliefAmong(round, causes, more);
  return (belief[answer] ?? 0) >= 0.5 * Math.max(...Object.values(belief));
}

/** Causes to choose from: both sides, and of the work order's others those that fit the table best; in its order. */
export function answersOf(round: Round, count: number): CauseId[] {
  const named = namedCauses(round.setting);
  const others = named.filter((cause) => !round.edge.causes.includes(cause));
  const belief = beliefAmong(round, others.length > 0 ? others : named, []);
  others.sort((a, b) => (belief[b] ?? 0) - (belief[a] ?? 0));
  const chosen = [...round.edge.causes, ...others.slice(0, Math.max(0, count - 2))];
  return named.filter((cause) => chosen.includes(cause));
}

/** A short list with the best in it, some that tell less, some that tell nothing; in an order that gives nothing away. */
export function shortList({ offers, seed }: Round, count = 6): Offer[] {
  const best = offers[0]!;
  const chosen = [best];
  const rest = offers.slice(1).filter(({ compared }) => !shareReading(compared, best.compared));
  const telling = rest.filter(({ bits }) => bits >= HELPS * best.bits);
  const mute = rest.filter(({ bits }) => bits < 0.25 * best.bits);
  const { uniform } = stream(`${seed}/short-list`);
  const pick = (from: Offer[], upTo: number) => {
    const pool = [...from];
    while (chosen.length < upTo && pool.length > 0) {
      const [one] = pool.splice(Math.floor(uniform() * pool.length), 1);
      if (!chosen.some(({ compared }) => shareReading(compared, one!.compared))) chosen.push(one!);
    }
  };
  pick(telling.slice(0, 3), 2);
  pick(mute, count);
  pick(rest, count);
  return chosen.sort((a, b) => (a.compared.id < b.compared.id ? -1 : 1));
}
