/** First step: where to look next. The best next reading inside the order of work, without what it would say. */
import { senseOf } from '../../instruments/looks';
import { quantumValue } from '../explain/sentences';
import type { Hint, Message, ValuedCandidate } from '../types';
import { bestOf, mostWanted, valueAll } from '../value';
import { pairOf } from './pair';
import type { Standing } from './standing';

export function lookHint(standing: Standing): Omit<Hint, 'level'> {
  const valued = valueAll(standing.point, standing.bench);
  const next = bestOf(valued);
  if (standing.settled || !next) return inNotes(standing);
  const wanted = mostWanted(valued)!;
  const lines: Message[] = [];
  if (next !== wanted) lines.push({ key: 'hint.look.air', values: {} });
  if (next.state !== 'running') {
    lines.push({ key: 'hint.look.state', values: { state: { kind: 'state', id: next.state } } });
  }
  lines.push(whereTo(next));
  if (hadNotSettled(standing, next)) lines.push({ key: 'hint.look.again', values: {} });
  return { lines, reading: next };
}

/** Nothing new is needed: what tells stands in the notebook. */
function inNotes(standing: Standing): Omit<Hint, 'level'> {
  const { noted, look } = pairOf(standing);
  const lines: Message[] = [{ key: 'hint.look.notes', values: {} }];
  const quantum = noted?.quantum ?? (look && { channel: look.channel });
  if (quantum) lines.push({ key: 'hint.look.note', values: { what: quantumValue(quantum) } });
  return { lines, reading: null };
}

function whereTo({ instrument, place, channel }: ValuedCandidate): Message {
  if (instrument === 'data-link') return { key: 'hint.look.link', values: { what: { kind: 'channel', id: channel } } };
  const key = senseOf(channel) ? 'hint.look.eyes' : 'hint.look.place';
  return { key, values: { place: { kind: 'place', id: place } } };
}

function hadNotSettled({ state }: Standing, { channel }: ValuedCandidate): boolean {
  return state.notes.some((note) => !note.struck && note.channel === channel && note.settled !== 'settled');
}
