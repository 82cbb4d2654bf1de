/** The record of practice on this device. What cannot be read is set aside, never thrown away. */
import { computed, signal } from '@preact/signals';
import { progressOf } from '../../practice/progress';
import {
  EMPTY,
  type Entry,
  type PracticeRecord,
  type ReadRecord,
  readRecord,
  roundsOf,
  withEntry,
} from '../../practice/record';

const STORE = 'coldbench.practice';
const ASIDE = 'coldbench.practice.aside';

interface Kept {
  readonly record: PracticeRecord;
  readonly damage: ReadRecord['damage'];
  /** the text that could not be read whole */
  readonly aside: string | null;
  readonly durable: boolean;
}

function load(): Kept {
  try {
    const text = localStorage.getItem(STORE);
    const { record, damage } = readRecord(text);
    if (damage && text !== null) {
      localStorage.setItem(ASIDE, text);
      localStorage.setItem(STORE, JSON.stringify(record));
    }
    return { record, damage, aside: localStorage.getItem(ASIDE), durable: true };
  } catch {
    return { record: EMPTY, damage: null, aside: null, durable: false };
  }
}

const kept = signal<Kept>(load());

export const store = computed(() => kept.value);
export const record = computed(() => kept.value.record);
export const progress = computed(() => progressOf(roundsOf(kept.value.record)));

/** Adds an entry to what is on the device now: another tab may have added some meanwhile. */
export function keepEntry(entry: Entry): void {
  const now = kept.peek();
  try {
    const { record: there } = now.durable ? readRecord(localStorage.getItem(STORE)) : now;
    const next = withEntry(there, entry);
    localStorage.setItem(STORE, JSON.stringify(next));
    kept.value = { ...now, record: next, durable: true };
  } catch {
    kept.value = { ...now, record: withEntry(now.record, entry), durable: false };
  }
}
