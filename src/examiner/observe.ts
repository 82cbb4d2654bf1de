/** From a note in the book to an observation: absolute, with what is known of its error, or the reason why not. */

import type { Note } from '../attempt';
import { biasGroup, biasSd, noiseSd, STANDARD_ATMOSPHERE, ZERO_DRIFT } from '../instruments/errors';
import { senseOf } from '../instruments/looks';
import type { Misuse } from '../instruments/types';
import type { Channel, Classed, JudgedState, Measured, NotJudged, Observation } from './types';

const JUDGED_STATES: readonly string[] = ['running', 'full-speed', 'standing'] satisfies JudgedState[];

/** An unzeroed gauge is still evidence, only a worse one; everything else spoils the reading. */
const BEARABLE: readonly Misuse[] = ['not-zeroed'];

/** How the examiner takes the notes. */
export interface Taking {
  /** Pa, at the site */
  readonly atmosphere: number;
  /**
   * What the trainee believed of the notes: readings that had not settled or were taken wrongly count as good, and
   * gauge pressures as what the trainee's own sums took them for. Follow-through, so that one slip is charged once.
   */
  readonly followThrough?: { readonly gaugeAs: 'gauge' | 'absolute' | 'sea-level' };
  /** what had become of the conditions that the expectations hold for; left out = nothing */
  readonly drift?: (note: Note) => Drift;
}

export interface Drift {
  /** the room is no longer as the work order says */
  readonly otherRoom: boolean;
  /** Pa by which the standing pressure has moved with the room */
  readonly standing: number;
}

export type Taken = { readonly observation: Observation } | { readonly notJudged: NotJudged };

/** All notes in their order; a look repeated in the same state tells nothing new. */
export function takeNotes(notes: readonly Note[], taking: Taking): Taken[] {
  const seen = new Set<string>();
  return notes.map((note) => {
    const taken = takeNote(note, taking);
    if (!('observation' in taken) || taken.observation.kind === 'measured') return taken;
    const what = `${note.channel} ${note.state}`;
    if (seen.has(what)) return { notJudged: 'repeated-look' };
    seen.add(what);
    return taken;
  });
}

export function observationsOf(taken: readonly Taken[]): Observation[] {
  return taken.flatMap((each) => ('observation' in each ? [each.observation] : []));
}

function takeNote(note: Note, taking: Taking): Taken {
  if (note.struck) return { notJudged: 'struck' };
  if (!JUDGED_STATES.includes(note.state)) return { notJudged: 'other-state' };
  if (!taking.followThrough) {
    if (note.settled !== 'settled') return { notJudged: 'unsettled' };
    if (note.misuse.some((misuse) => !BEARABLE.includes(misuse))) return { notJudged: 'misused' };
  }
  const state = note.state as JudgedState;
  if (state !== 'standing' && taking.drift?.(note).otherRoom) return { notJudged: 'other-conditions' };
  if (senseOf(note.channel)) return { observation: classed(note.channel, state, note.value, note.index) };
  return { observation: measured(note, state, taking) };
}

function measured(note: Note, state: JudgedState, { atmosphere, followThrough, drift }: Taking): Measured {
  const unzeroed = note.gauge && note.misuse.includes('not-zeroed');
  const observation = considered(note, state, note.value);
  if (!note.gauge) return { ...observation, note: note.index };
  // A gauge zeroed nowhere on site shows the sea-level zero of another day: what it shows is against that.
  const zero = unzeroed || followThrough?.gaugeAs === 'sea-level' ? STANDARD_ATMOSPHERE : atmosphere;
  const moved = state === 'standing' ? (drift?.(note).standing ?? 0) : 0;
  const value = note.value - moved + (followThrough?.gaugeAs === 'absolute' ? 0 : zero);
  const bias = unzeroed ? Math.sqrt(observation.bias * observation.bias + ZERO_DRIFT * ZERO_DRIFT) : observation.bias;
  return { ...observation, note: note.index, value, bias };
}

/** A reading by that instrument with this value (SI, absolute), no note yet. */
export function considered(
  what: Pick<Note, 'instrument' | 'quantity' | 'channel'>,
  state: JudgedState,
  value: number,
): Measured {
  const { instrument, quantity, channel } = what;
  return {
    kind: 'measured',
    note: -1,
    channel,
    state,
    value,
    noise: noiseSd(instrument, quantity, value),
    bias: biasSd(instrument, quantity, value),
    biasKey: biasGroup(instrument, quantity, channel),
  };
}

/** A class seen or felt. A touch is decided by the pipe's temperature. */
export function classed(channel: Channel, state: JudgedState, value: number, note = -1): Classed {
  const sense = senseOf(channel);
  if (!sense) throw new RangeError(`${channel} is measured, not seen or felt`);
  const edges = sense.classes.slice(0, -1).map(({ below }) => below);
  return {
    kind: 'classed',
    note,
    channel: channel.replace('touch:', '') as Channel,
    state,
    value,
    edges,
    sd: sense.sd,
  };
}
