/** The recorder's tape: what the data link showed every five seconds while it ran. Computed, never stored. */
import { PROBES, probeName } from '../../physics/types';
import {
  type ChannelName,
  isTransducer,
  linkQuantity,
  linkValue,
  type PhysicalQuantity,
  probeOf,
} from '../instruments';
import { CsvError, csvText, parseCsv } from './csv';
import { sceneOf } from './reading';
import type { AttemptState, TapeSpan } from './state';

export const SAMPLE_SECONDS = 5;

export interface TapeChannel {
  readonly channel: ChannelName;
  readonly quantity: PhysicalQuantity;
  readonly unit: string;
}

export interface TapeSample {
  readonly time: number;
  /** in the order of the tape's channels, SI */
  readonly values: readonly number[];
}

export interface TapeMark {
  readonly time: number;
  readonly text: string;
}

export interface Tape {
  readonly channels: readonly TapeChannel[];
  readonly samples: readonly TapeSample[];
  readonly marks: readonly TapeMark[];
}

/** The channels of the machine's data link; empty where it has none. */
export function linkChannels({ site }: Pick<AttemptState, 'site'>): TapeChannel[] {
  const channels = site.plant.places.flatMap(({ reads }) => reads.link ?? []);
  return channels.map((channel) => {
    const probe = probeOf(channel);
    return {
      channel,
      quantity: linkQuantity(channel),
      unit: probe ? PROBES[probeName(probe)] : isTransducer(channel) ? 'Pa' : 'K',
    };
  });
}

/** What the strand shows now (or at `t`), when the link is plugged in; null when it is not. */
export function liveValues(state: AttemptState, t: number = state.clock): TapeSample | null {
  const link = state.connections['data-link'];
  return link && t >= link.since ? sampleAt(state, linkChannels(state), t) : null;
}

/** Everything recorded so far. Samples lie on whole multiples of five seconds, so that tapes can be laid over each other. */
export function tapeOf(state: AttemptState): Tape {
  const channels = linkChannels(state);
  const times = state.tape.flatMap((span) => sampleTimes(span, state.clock));
  const marks = state.marks.map(({ time, text }) => ({ time, text }));
  return { channels, samples: times.map((time) => sampleAt(state, channels, time)), marks };
}

/** The same tape with fewer channels. */
export function tapeWith(tape: Tape, keep: (channel: TapeChannel) => boolean): Tape {
  const kept = tape.channels.flatMap((channel, i) => (keep(channel) ? [i] : []));
  return {
    ...tape,
    channels: kept.map((i) => tape.channels[i]!),
    samples: tape.samples.map(({ time, values }) => ({ time, values: kept.map((i) => values[i]!) })),
  };
}

function sampleTimes({ from, to }: TapeSpan, clock: number): number[] {
  const first = Math.ceil(from / SAMPLE_SECONDS) * SAMPLE_SECONDS;
  const count = Math.floor(((to ?? clock) - first) / SAMPLE_SECONDS) + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => first + i * SAMPLE_SECONDS);
}

function sampleAt(state: AttemptState, channels: readonly TapeChannel[], time: number): TapeSample {
  const scene = sceneOf(state, state.events);
  return { time, values: channels.map(({ channel, quantity }) => linkValue(scene, channel, quantity, time)) };
}

const TIME_HEAD = 'time [s]';
const MARK_HEAD = 'mark';

/** CSV with a header of names and units, one row a sample; marks stand in the last column of the sample that follows. */
export function tapeCsv(tape: Tape): string {
  const head = [TIME_HEAD, ...tape.channels.map(({ channel, unit }) => `${channel} [${unit}]`), MARK_HEAD];
  const rows = tape.samples.map(({ time, values }, i) => {
    const since = i === 0 ? Number.NEGATIVE_INFINITY : tape.samples[i - 1]!.time;
    const here = tape.marks.filter((mark) => mark.time > since && mark.time <= time).map(({ text }) => text);
    return [String(time), ...values.map(String), inert(here.join('; '))];
  });
  return csvText([head, ...rows]);
}

/** A spreadsheet takes text that begins like a formula for one: such text gets an apostrophe before it. */
function inert(text: string): string {
  return /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
}

/** A tape as it is read back: columns by name and unit. */
export interface ReadTape {
  readonly columns: readonly { readonly channel: string; readonly unit: string }[];
  readonly samples: readonly (TapeSample & { readonly mark: string })[];
}

/** Reads what `tapeCsv` wrote. Throws CsvError. */
export function parseTapeCsv(text: string): ReadTape {
  const [head, ...rows] = parseCsv(text);
  if (!head || head[0] !== TIME_HEAD || head.at(-1) !== MARK_HEAD) {
    throw new CsvError(1, 1, `a header from "${TIME_HEAD}" to "${MARK_HEAD}" expected`);
  }
  const columns = head.slice(1, -1).map((name, i) => {
    const match = /^(.+) \[(.+)\]$/.exec(name);
    if (!match) throw new CsvError(1, i + 2, `"name [unit]" expected, "${name}" found`);
    return { channel: match[1]!, unit: match[2]! };
  });
  const samples = rows.map((row, i) => {
    if (row.length !== head.length) throw new CsvError(i + 2, row.length, `${head.length} fields expected`);
    const [time, ...values] = row.slice(0, -1).map((field, j) => numberOf(field, i + 2, j + 1));
    return { time: time!, values, mark: row.at(-1)! };
  });
  return { columns, samples };
}

function numberOf(field: string, row: number, column: number): number {
  const value = Number(field);
  if (field.trim() === '' || !Number.isFinite(value))
    throw new CsvError(row, column, `a number expected, "${field}" found`);
  return value;
}
