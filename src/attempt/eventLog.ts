/**
 * The log behind autosave, without any storage: each action becomes an entry that carries a check value over itself and
 * everything before it, so that a gap or an altered entry is found and what comes before it is kept.
 */
import { canonicalJson, checkValue } from './canonical';
import { type AttemptHeader, shapedAction, shapedHeader } from './schema';
import type { Attempt, TimedAction } from './types';

export interface LogHeader {
  readonly id: string;
  readonly header: AttemptHeader;
}

export interface LogEntry {
  readonly id: string;
  /** 0, 1, 2 … without a gap */
  readonly seq: number;
  readonly action: TimedAction;
  readonly chain: string;
}

/** What was found wrong in a stored log. Entries before `seq` are good. */
export interface LogDamage {
  readonly seq: number;
  readonly kind: 'gap' | 'altered' | 'unreadable';
  readonly what: string;
}

export interface Recovered {
  readonly attempt: Attempt;
  /** the chain to go on from */
  readonly chain: string;
  readonly damage: LogDamage | null;
}

/** The chain before the first action: it hangs on the header, so that logs cannot be joined. */
export function firstChain({ id, header }: LogHeader): string {
  return checkValue(canonicalJson({ id, header }));
}

export function entryAfter(chain: string, id: string, seq: number, action: TimedAction): LogEntry {
  return { id, seq, action, chain: checkValue(`${chain}${seq}${canonicalJson(action)}`) };
}

/** The attempt as far as the log is whole; null where the header itself cannot be read. Never throws on bad content. */
export function recover(stored: unknown, entries: readonly unknown[]): Recovered | null {
  const head = asHeader(stored);
  if (!head) return null;
  const actions: TimedAction[] = [];
  let chain = firstChain(head);
  let damage: LogDamage | null = null;
  for (const raw of entries) {
    const next = follow(head.id, chain, actions.length, raw);
    if ('kind' in next) {
      damage = next;
      break;
    }
    actions.push(next.action);
    chain = next.chain;
  }
  return { attempt: { ...head.header, actions }, chain, damage };
}

function asHeader(stored: unknown): LogHeader | null {
  const { id, header } = (stored ?? {}) as { id?: unknown; header?: unknown };
  const shaped = shapedHeader(header);
  return typeof id === 'string' && shaped.ok ? { id, header: shaped.value } : null;
}

function follow(id: string, chain: string, seq: number, raw: unknown): LogEntry | LogDamage {
  const entry = (raw ?? {}) as { seq?: unknown; action?: unknown; chain?: unknown };
  if (entry.seq !== seq) return { seq, kind: 'gap', what: `entry ${seq} is missing, ${String(entry.seq)} found` };
  const shaped = shapedAction(entry.action);
  if (!shaped.ok) return { seq, kind: 'unreadable', what: `${shaped.problem.where}: ${shaped.problem.what}` };
  const made = entryAfter(chain, id, seq, shaped.value);
  if (made.chain !== entry.chain) return { seq, kind: 'altered', what: `check value ${made.chain} expected` };
  return made;
}
