/**
 * "Your machine in the head": what was chalked beside what the examiner expects and what was read; and whether the
 * reasons given with a verdict speak for it. Never scored.
 */
import { type CauseId, unitOf } from '../../physics/types';
import type { AttemptState, Expectation } from '../attempt';
import { benchOf, observationsIn } from '../examiner';
import { causeLogLikelihoods } from '../examiner/belief';
import { Expectations } from '../examiner/explain/bands';
import { LN2 } from '../examiner/numeric';
import { instrumentError, nodeMoments } from '../examiner/quanta';
import type { Channel, Differential, JudgedState, Observation } from '../examiner/types';
import { among, LEAST_BITS, standpoint, valueAll } from '../examiner/value';
import { wayOf } from './contrast';
import { movement } from './edges';

export interface ChalkTold {
  /** number of the note */
  readonly note: number;
  readonly cause: CauseId;
  readonly expect: Expectation;
  /** which way the cause moves the reading against the sound machine; null where nothing is expected there */
  readonly does: Expectation | null;
  /** which way the reading lay; null where it does not count (not settled, taken back, another state) */
  readonly was: Expectation | null;
}

export interface BecauseTold {
  readonly shows: number;
  readonly rulesOut: number;
  readonly cause: CauseId;
  readonly rival: CauseId;
  /** bits by which each note speaks for the cause against the rival; null where it does not count */
  readonly showsBits: number | null;
  readonly rulesOutBits: number | null;
}

export interface ReflectionTold {
  readonly cause: CauseId;
  readonly rival: CauseId;
  /** bits by which each sorted note speaks for the cause against the rival; null where it does not count */
  readonly sorted: readonly {
    readonly note: number;
    readonly side: 'verdict' | 'rival';
    readonly bits: number | null;
  }[];
  /** what was called missing, with its expected gain between the two, bits; null where nothing was, or it cannot be read */
  readonly missing: { readonly channel: Channel; readonly bits: number } | null;
  /** what would have parted them best of all that nobody read; null where nothing would */
  readonly best: Channel | null;
}

export function chalksTold(state: AttemptState, differential: Differential): ChalkTold[] {
  const observations = observationsIn(state);
  const expectations = new Expectations(differential, observations);
  const sound = differential.nodes.find(({ cause }) => cause === 'no-fault')!;
  return state.chalks.flatMap(({ note: index, cause, expect }): ChalkTold[] => {
    const note = state.notes[index];
    if (!note || note.word !== undefined || unitOf(note.channel) !== null) return [];
    const judged = differential.states.includes(note.state as JudgedState) ? (note.state as JudgedState) : null;
    const quantum = { channel: note.channel };
    const error = instrumentError(quantum, note, note.value);
    const healthy = judged && nodeMoments(differential, sound, judged, quantum, error);
    const expected = judged && expectations.of(cause, judged, quantum, error);
    const seen = observations.find((each) => each.note === index);
    const value = seen?.kind === 'measured' ? seen.value : null;
    const way = (of: { readonly mean: number; readonly sd: number } | null) =>
      of && healthy ? wayOf(movement(of, healthy)) : null;
    return [
      { note: index, cause, expect, does: way(expected), was: value === null ? null : way({ mean: value, sd: 0 }) },
    ];
  });
}

export function becauseTold(state: AttemptState, differential: Differential): BecauseTold | null {
  const given = state.becauses.at(-1);
  const verdict = given && state.verdicts[given.verdict];
  if (!given || !verdict) return null;
  const { cause, rival } = verdict;
  const observations = observationsIn(state);
  const bits = (index: number) =>
    speaks(
      observations.find(({ note }) => note === index),
      cause,
      rival,
      differential,
    );
  const { shows, rulesOut } = given;
  return { shows, rulesOut, cause, rival, showsBits: bits(shows), rulesOutBits: bits(rulesOut) };
}

export function reflectionTold(state: AttemptState, differential: Differential): ReflectionTold | null {
  const given = state.reflections.at(-1);
  const verdict = given && state.verdicts[given.verdict];
  if (!given || !verdict) return null;
  const { cause, rival } = verdict;
  const observations = observationsIn(state);
  const bitsOf = (index: number) =>
    speaks(
      observations.find(({ note }) => note === index),
      cause,
      rival,
      differential,
    );
  const side = (notes: readonly number[], which: 'verdict' | 'rival') =>
    notes.map((note) => ({ note, side: which, bits: bitsOf(note) }));
  // between the two at even odds: after the readings that were taken little may be left to part
  const even = { [cause]: 1, [rival]: 1 };
  const open = valueAll(among(standpoint(differential, even, []), [cause, rival]), benchOf(state))
    .filter(({ channel }) => !observations.some((each) => each.channel === channel))
    .sort((a, b) => b.bits - a.bits);
  const named = open.find(({ channel }) => channel === given.missing);
  return {
    cause,
    rival,
    sorted: [...side(given.forVerdict, 'verdict'), ...side(given.forRival, 'rival')],
    missing: named ? { channel: named.channel, bits: named.bits } : null,
    best: open[0] && open[0].bits >= LEAST_BITS ? open[0].channel : null,
  };
}

function speaks(seen: Observation | undefined, a: CauseId, b: CauseId, differential: Differential): number | null {
  if (!seen) return null;
  const likelihoods = causeLogLikelihoods(differential, [seen], [a, b]);
  return (likelihoods.get(a)! - likelihoods.get(b)!) / LN2;
}
