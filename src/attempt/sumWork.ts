/** Works a sum out from its inputs. */
import type { Saturation } from './saturation';
import type { Note, SumKind } from './types';

/** The right result of a sum under one way of taking its inputs. */
export interface Worked {
  readonly saturation: number | null;
  readonly result: number;
}

/** What a marker and a searcher for slips need of one sum. */
export interface SumTask {
  readonly kind: SumKind;
  readonly saturation: Saturation;
  /** air pressure on site, Pa */
  readonly atmosphere: number;
  readonly pressure: Note | null;
  readonly temperatures: readonly Note[];
  readonly line: 'dew' | 'bubble' | null;
}

export interface Lines {
  readonly line: 'dew' | 'bubble' | null;
  /** Pa added to a gauge pressure */
  readonly added: number;
}

/** Works the sum out; null where the pressure is beyond the table. */
export function work(task: SumTask, { line, added }: Lines): Worked | null {
  const { kind, pressure, temperatures } = task;
  const [first, second] = temperatures;
  if (!pressure) return { saturation: null, result: first!.value - second!.value };
  const absolute = pressure.value + (pressure.gauge ? added : 0);
  if (!line) return { saturation: null, result: absolute };
  const saturation = saturationAt(task.saturation, line, absolute);
  if (saturation === null) return null;
  if (kind === 'saturation-temperature') return { saturation, result: saturation };
  return { saturation, result: difference(kind, first!.value, saturation) };
}

/** Superheat is what the pipe is above dew, subcooling what it is below bubble. */
export function difference(kind: SumKind, pipe: number, saturation: number): number {
  return kind === 'superheat' ? pipe - saturation : saturation - pipe;
}

function saturationAt(table: Saturation, line: 'dew' | 'bubble', p: number): number | null {
  return line === 'dew' ? table.tDew(p) : table.tBubble(p);
}
