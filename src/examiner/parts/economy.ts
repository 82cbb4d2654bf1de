/**
 * Economy: s · min(1, 1.5 · C_greedy / C_used), C_greedy with the readings of the sums that the case needs. Cost is simulated minutes of measuring, hoses and refrigerant lost on
 * top; survey, safety, settling, verification and one confirming reading are free; never the wall clock, and never
 * better for being faster than careful. Hoses that go on before the air is proved halve it, however quick the route: each
 * connection risks charge and air, and a charge judged with unproved airflow is no judgement.
 */
import type { Note } from '../../attempt';
import { CATALOGUE } from '../../instruments/catalogue';
import { hoseMinutes, spillMinutes } from '../candidates';
import { type Case, inVerdict, SUPPORTED } from '../case';
import { missingForAir, needsAirFirst } from '../order';
import type { Message } from '../types';
import type { Marked } from './part';

/** Any route within this factor of the greedy one has full marks. */
const SLACK = 1.5;
/** What is left where hoses went on before the air was proved. */
const OUT_OF_ORDER = 0.5;
/** Nobody is asked to be quicker than the handful of readings that any case deserves, minutes. */
const FLOOR = 8;

export function markEconomy(one: Case): Marked & { readonly used: number } {
  const used = usedMinutes(one);
  const best = Math.max(FLOOR, one.bestCost);
  if (one.state.site.callout.mode === 'guided') {
    return { share: null, reasons: [{ key: 'reason.economy.notMeasured', values: {} }], used };
  }
  if (one.plain.taken.length === 0) {
    return { share: 0, reasons: [{ key: 'reason.economy.nothingRead', values: {} }], used };
  }
  const thrift = used > 0 ? Math.min(1, (SLACK * best) / used) : 1;
  const order = hosesFirst(one) ? OUT_OF_ORDER : 1;
  const values = { used: { kind: 'minutes', value: used }, best: { kind: 'minutes', value: best } } as const;
  const key = one.support < 1 ? 'unsupported' : thrift >= 1 ? 'thrifty' : 'dear';
  const reasons: Message[] = [{ key: `reason.economy.${key}`, values }];
  if (order < 1) reasons.push({ key: 'reason.economy.hosesFirst', values: {} });
  return { share: one.support * thrift * order, reasons, used };
}

/** Whether a gauge went on while what proves the air, of what the bag allows, was still to be read. */
function hosesFirst({ state, candidates, judgedNotes }: Case): boolean {
  const notes = state.notes.slice(0, judgedNotes).filter(({ struck }) => !struck);
  const first = notes.findIndex(({ instrument }) => needsAirFirst({ instrument }));
  if (first < 0) return false;
  return missingForAir(candidates, new Set(notes.slice(0, first).map(({ channel }) => channel))).length > 0;
}

/** Minutes that count: measuring before the verdict, less one confirming reading, plus time over the budget. */
function usedMinutes(one: Case): number {
  const { state, verdict, judgedNotes } = one;
  const free = confirmingNote(one);
  const connected = new Set<string>();
  let minutes = 0;
  for (const note of state.notes.slice(0, judgedNotes)) {
    if (note.index !== free) minutes += minutesOf(note, connected, one);
  }
  const end = verdict ? verdict.time : state.clock;
  return minutes + Math.max(0, end / 60 - state.site.callout.budget);
}

function minutesOf(note: Note, connected: Set<string>, { bench }: Case): number {
  if (note.instrument === 'eyes' || note.instrument === 'hand') return 0;
  const hose = `${note.instrument}/${note.place}`;
  const fresh = CATALOGUE[note.instrument].invasive && !connected.has(hose);
  connected.add(hose);
  return note.cost / 60 + (fresh ? hoseMinutes : 0) + spillMinutes(note.spilt, bench.charge);
}

/** The first reading after the belief in the verdict had come to 0.8. */
function confirmingNote(one: Case): number | null {
  const { verdict, plain, twins, judgedNotes } = one;
  if (!verdict) return null;
  for (let count = 1; count < judgedNotes; count++) {
    if (inVerdict(plain.posterior(count), verdict.cause, twins) >= SUPPORTED) return count;
  }
  return null;
}
