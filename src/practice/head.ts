/**
 * "Your machine in the head": what was chalked beside what the examiner expects and what was read; and whether the
 * reasons given with a verdict speak for it. Never scored.
 */
import { type CauseId, unitOf } from '../../physics/types';
import type { AttemptState, Expectation } from '../attempt';
import { observationsIn } from '../examiner';
import { causeLogLikelihoods } from '../examiner/belief';
import { Expectations } from '../examiner/explain/bands';
import { LN2 } from '../examiner/numeric';
import { instrumentError, nodeMoments } from '../examiner/quanta';
import type { Differential, JudgedState, Observation } from '../examiner/types';
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

function speaks(seen: Observation | undefined, a: CauseId, b: CauseId, differential: Differential): number | null {
  if (!seen) return null;
  const likelihoods = causeLogLikelihoods(differential, [seen], [a, b]);
  return (likelihoods.get(a)! - likelihoods.get(b)!) / LN2;
}
