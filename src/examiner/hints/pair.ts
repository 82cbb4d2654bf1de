/**
 * Second step: which two causes to separate, and what parts them. The pair is the one with the highest joint belief
 * that an open reading can part; once the notes carry a verdict, the leader and the rival that the notes part from it.
 */
import type { CauseId } from '../../../physics/types';
import { Expectations, separation } from '../explain/bands';
import { tellingLook } from '../explain/looks';
import { type ReadQuantum, readQuanta } from '../explain/quanta';
import { quantumValue } from '../explain/sentences';
import type { Candidate, Classed, Hint, Message } from '../types';
import { among, bestOf, mostWanted, valueAll } from '../value';
import type { Standing } from './standing';

/** A reading expected to give less about the two, bits, does not part them. */
const PARTS_BITS = 0.08;
/** Values that lie nearer, in common standard deviations, do not part them either. */
const PARTS_SD = 1;
/** Causes among which pairs are sought. */
const MOST_CAUSES = 4;
/** A sum that a technician thinks in is shown before a bare reading that parts the two hardly better. */
const SUMS_FIRST = 1.3;

export interface Pair {
  /** the likelier one first; sentences name them in the order of the tally, so as not to give that away */
  readonly causes: readonly [CauseId, CauseId];
  /** the open reading that parts them best for its time; null where none does */
  readonly open: Candidate | null;
  /** what has to be read before it, by the order of work */
  readonly first: Candidate | null;
  /** what was read and parts them already; null where nothing does */
  readonly noted: ReadQuantum | null;
  /** what was seen and speaks for the likelier one; null where nothing does */
  readonly look: Classed | null;
}

export function pairOf(standing: Standing): Pair {
  const { point, named } = standing;
  const ranked = [...named].sort((a, b) => point.posterior[b]! - point.posterior[a]!).slice(0, MOST_CAUSES);
  const pairs = ranked
    .flatMap((a, i) => ranked.slice(i + 1).map((b) => [a, b] as const))
    .sort((x, y) => joint(standing, y) - joint(standing, x))
    .map((causes) => partedBy(standing, causes));
  const told = pairs.filter(({ causes }) => causes[0] === ranked[0]).find(({ noted, look }) => noted ?? look);
  const open = pairs.find((pair) => pair.open);
  return (standing.settled ? (told ?? open) : (open ?? told)) ?? pairs[0];
}

/** The notes part the pair already, and nothing that is open is needed for it. */
export function isTold({ settled }: Standing, { open, noted, look }: Pair): boolean {
  return (noted ?? look) !== null && (settled || open === null);
}

function joint({ point }: Standing, [a, b]: readonly [CauseId, CauseId]): number {
  return point.posterior[a]! + point.posterior[b]!;
}

function partedBy(standing: Standing, causes: readonly [CauseId, CauseId]): Pair {
  const valued = valueAll(among(standing.point, causes), standing.bench);
  const wanted = mostWanted(valued);
  const open = wanted && wanted.bits >= PARTS_BITS ? wanted : null;
  const first = open && open.first.length > 0 ? bestOf(valued) : null;
  return {
    causes,
    open,
    first: first === open ? null : first,
    noted: notedBetween(standing, causes),
    look: tellingLook(standing.differential, standing.observations, ...causes),
  };
}

function notedBetween(standing: Standing, [a, b]: readonly [CauseId, CauseId]): ReadQuantum | null {
  const { state, differential, observations } = standing;
  const expectations = new Expectations(differential, observations);
  const found = readQuanta(state, differential.states, observations).flatMap((each) => {
    const [x, y] = [a, b].map((cause) => expectations.of(cause, each.state, each.quantum, each.error));
    if (!x || !y) return [];
    const apart = separation(x, y);
    return [{ each, apart, rank: apart * (each.quantum.sum === undefined ? 1 : SUMS_FIRST) }];
  });
  const telling = found.filter(({ apart }) => apart >= PARTS_SD).sort((x, y) => y.rank - x.rank);
  return telling[0]?.each ?? null;
}

/** The pair in the order of the tally. */
export function inTallyOrder({ named }: Standing, causes: readonly [CauseId, CauseId]): readonly [CauseId, CauseId] {
  const [a, b] = causes;
  return named.indexOf(a) < named.indexOf(b) ? [a, b] : [b, a];
}

export function pairHint(standing: Standing): Omit<Hint, 'level'> {
  const pair = pairOf(standing);
  const { open, first, noted, look } = pair;
  const [one, other] = inTallyOrder(standing, pair.causes);
  const lines: Message[] = [
    { key: 'hint.pair.these', values: { one: { kind: 'cause', id: one }, other: { kind: 'cause', id: other } } },
  ];
  if (isTold(standing, pair)) {
    const quantum = noted?.quantum ?? { channel: look!.channel };
    lines.push({ key: 'hint.pair.noted', values: { what: quantumValue(quantum) } });
    return { lines, reading: null };
  }
  if (!open) {
    lines.push({ key: 'hint.pair.none', values: {} });
    return { lines, reading: null };
  }
  const { channel, state } = open;
  const what = { kind: 'channel', id: channel } as const;
  lines.push(
    state === 'running'
      ? { key: 'hint.pair.reading', values: { what } }
      : { key: 'hint.pair.inState', values: { what, state: { kind: 'state', id: state } } },
  );
  if (first) lines.push({ key: 'hint.look.air', values: {} });
  return { lines, reading: first ?? open };
}
