/** What a person did off the callouts, as it is kept: a list that only grows. Reading it never throws anything away. */
import * as z from 'zod/mini';
import { CAUSES } from '../attempt/pack/schema';
import type { RoundDone } from './progress';

// The page's security policy forbids making code at run time, which zod would try for speed.
z.config({ jitless: true });

/** Three readings told over the radio. */
export interface RadioDone {
  readonly kind: 'radio';
  readonly at: number;
  readonly pack: string;
  readonly callout: string;
  readonly seed: string;
  readonly told: readonly string[];
  /** belief in the truth: from the tally alone, from the three told, from the best three */
  readonly before: number;
  readonly reached: number;
  readonly best: number;
}

export type Entry = RoundDone | RadioDone;

export interface PracticeRecord {
  readonly format: 1;
  readonly entries: readonly Entry[];
}

export const EMPTY: PracticeRecord = { format: 1, entries: [] };

const cause = z.enum(CAUSES);
const at = z.int().check(z.gte(0), z.lte(1e14));
const word = z.string().check(z.minLength(1), z.maxLength(200));
const share = z.number().check(z.gte(0), z.lte(1));

const entry = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('round'),
    at,
    edge: z.string().check(z.regex(/^[a-z-]{1,40}\/[a-z-]{1,60}\+[a-z-]{1,60}$/)),
    way: z.enum(['contrast', 'completion', 'solo', 'mixed', 'quarrel']),
    truth: z.nullable(cause),
    pick: z.nullable(z.enum(['settles', 'helps', 'nothing'])),
    right: z.boolean(),
    hint: z.boolean(),
  }),
  z.strictObject({
    kind: z.literal('radio'),
    at,
    pack: word,
    callout: word,
    seed: word,
    told: z.array(word).check(z.maxLength(3)),
    before: share,
    reached: share,
    best: share,
  }),
]);

export interface ReadRecord {
  readonly record: PracticeRecord;
  /** what was wrong with the text, in plain words for a message; null where nothing was */
  readonly damage: null | { readonly what: 'not-json' | 'other-format' | 'entries'; readonly lost: number };
}

/** Reads what was kept. Entries that are whole are taken, whatever stands beside them; never throws. */
export function readRecord(text: string | null): ReadRecord {
  if (text === null) return { record: EMPTY, damage: null };
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { record: EMPTY, damage: { what: 'not-json', lost: 0 } };
  }
  const { format, entries } = (value ?? {}) as { format?: unknown; entries?: unknown };
  if (format !== 1 || !Array.isArray(entries)) return { record: EMPTY, damage: { what: 'other-format', lost: 0 } };
  const whole = entries.flatMap((each): Entry[] => {
    const parsed = entry.safeParse(each);
    return parsed.success ? [parsed.data as Entry] : [];
  });
  const lost = entries.length - whole.length;
  return { record: { format: 1, entries: whole }, damage: lost > 0 ? { what: 'entries', lost } : null };
}

export function withEntry({ entries }: PracticeRecord, next: Entry): PracticeRecord {
  return { format: 1, entries: [...entries, next] };
}

export function roundsOf({ entries }: PracticeRecord): RoundDone[] {
  return entries.filter((each): each is RoundDone => each.kind === 'round');
}
