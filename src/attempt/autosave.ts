/** Keeps every action as it is done, so that a killed page loses nothing. The one file of the core that knows storage. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { entryAfter, firstChain, type LogEntry, type LogHeader, type Recovered, recover } from './eventLog';
import type { AttemptHeader } from './schema';
import type { TimedAction } from './types';

/** Where a log is kept. `append` rejects where the entry exists already (another tab writes the same attempt). */
export interface LogStore {
  putHeader(header: LogHeader): Promise<void>;
  append(entry: LogEntry): Promise<void>;
  header(id: string): Promise<unknown>;
  /** in the order of their numbers */
  entries(id: string): Promise<readonly unknown[]>;
  ids(): Promise<readonly string[]>;
  remove(id: string): Promise<void>;
  close(): void;
}

export type SaveState =
  /** on disk */
  | 'saved'
  /** only in memory: offer the attempt as a code or a file */
  | 'memory-only'
  /** another page writes this attempt; this one no longer does */
  | 'written-elsewhere';

/** One attempt being kept. Calls are queued: entries reach the store in order, one transaction each. */
export class Autosave {
  private seq = 0;
  private chain = '';
  private id = '';
  private queue: Promise<void> = Promise.resolve();
  private state: SaveState;

  constructor(
    private readonly store: LogStore,
    durable: boolean,
    private readonly onState: (state: SaveState) => void = () => {},
  ) {
    this.state = durable ? 'saved' : 'memory-only';
  }

  get saveState(): SaveState {
    return this.state;
  }

  /** Begins the log of a new attempt, in place of an older one of this id. */
  begin(id: string, header: AttemptHeader): Promise<void> {
    const head: LogHeader = { id, header };
    this.id = id;
    this.seq = 0;
    this.chain = firstChain(head);
    return this.enqueue(async () => {
      await this.store.remove(id);
      await this.store.putHeader(head);
    });
  }

  /** Adds the next action. Resolves when it is stored (or when it turned out that it cannot be). */
  append(action: TimedAction): Promise<void> {
    const entry = entryAfter(this.chain, this.id, this.seq, action);
    this.chain = entry.chain;
    this.seq += 1;
    return this.enqueue(() => this.store.append(entry));
  }

  /** The attempt kept under this id, as far as its log is whole; later actions are appended after it. */
  async resume(id: string): Promise<Recovered | null> {
    await this.queue;
    const recovered = recover(await this.store.header(id), await this.store.entries(id));
    if (!recovered) return null;
    const { attempt, chain, damage } = recovered;
    if (damage) await this.rewrite(id, recovered);
    this.id = id;
    this.seq = attempt.actions.length;
    this.chain = chain;
    return recovered;
  }

  /** Ids of all attempts kept. */
  ids(): Promise<readonly string[]> {
    return this.store.ids();
  }

  remove(id: string): Promise<void> {
    return this.enqueue(() => this.store.remove(id));
  }

  /** Resolves when everything asked for so far is done. */
  flush(): Promise<void> {
    return this.queue;
  }

  close(): void {
    this.store.close();
  }

  /** What follows a damaged entry cannot be replayed: the log is written anew up to it. */
  private async rewrite(id: string, { attempt }: Recovered): Promise<void> {
    const { actions, ...header } = attempt;
    await this.begin(id, header);
    for (const action of actions) await this.append(action);
  }

  private enqueue(work: () => Promise<void>): Promise<void> {
    this.queue = this.queue.then(async () => {
      if (this.state === 'written-elsewhere') return;
      try {
        await work();
      } catch (error) {
        this.setState(isClash(error) ? 'written-elsewhere' : 'memory-only');
      }
    });
    return this.queue;
  }

  private setState(state: SaveState): void {
    if (state === this.state) return;
    this.state = state;
    this.onState(state);
  }
}

/** `add` of a key that is there: someone else has written this entry. */
function isClash(error: unknown): boolean {
  return (error as { name?: unknown } | null)?.name === 'ConstraintError';
}

interface Schema extends DBSchema {
  attempts: { key: string; value: LogHeader };
  events: { key: [string, number]; value: LogEntry };
}

const DATABASE = 'coldbench';
const VERSION = 1;

/** The browser's store; rejects where it is forbidden or broken. */
export async function openBrowserStore(): Promise<LogStore> {
  const database = await openDB<Schema>(DATABASE, VERSION, {
    upgrade(db) {
      db.createObjectStore('attempts', { keyPath: 'id' });
      db.createObjectStore('events', { keyPath: ['id', 'seq'] });
    },
    // A newer page wants to change the database: let it, this one goes on in memory.
    blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
  });
  return new BrowserStore(database);
}

/** strict: the promise resolves only when the data is on disk, not merely handed to the system. */
const ON_DISK = { durability: 'strict' } as const;

class BrowserStore implements LogStore {
  constructor(private readonly database: IDBPDatabase<Schema>) {}

  async putHeader(header: LogHeader): Promise<void> {
    const tx = this.database.transaction('attempts', 'readwrite', ON_DISK);
    await Promise.all([tx.store.put(header), tx.done]);
  }

  async append(entry: LogEntry): Promise<void> {
    const tx = this.database.transaction('events', 'readwrite', ON_DISK);
    await Promise.all([tx.store.add(entry), tx.done]);
  }

  header(id: string): Promise<unknown> {
    return this.database.get('attempts', id);
  }

  entries(id: string): Promise<readonly unknown[]> {
    return this.database.getAll('events', keysOf(id));
  }

  async ids(): Promise<readonly string[]> {
    return this.database.getAllKeys('attempts');
  }

  async remove(id: string): Promise<void> {
    const tx = this.database.transaction(['attempts', 'events'], 'readwrite', ON_DISK);
    await Promise.all([tx.objectStore('attempts').delete(id), tx.objectStore('events').delete(keysOf(id)), tx.done]);
  }

  close(): void {
    this.database.close();
  }
}

function keysOf(id: string): IDBKeyRange {
  return IDBKeyRange.bound([id, 0], [id, Number.MAX_SAFE_INTEGER]);
}

/** Keeps logs for as long as the page lives. */
export class MemoryStore implements LogStore {
  private readonly headers = new Map<string, LogHeader>();
  private readonly logs = new Map<string, LogEntry[]>();

  async putHeader(header: LogHeader): Promise<void> {
    this.headers.set(header.id, header);
  }

  async append(entry: LogEntry): Promise<void> {
    const log = this.logs.get(entry.id) ?? [];
    if (log.some(({ seq }) => seq === entry.seq)) {
      throw Object.assign(new Error(`entry ${entry.seq} exists`), { name: 'ConstraintError' });
    }
    this.logs.set(
      entry.id,
      [...log, entry].sort((a, b) => a.seq - b.seq),
    );
  }

  async header(id: string): Promise<unknown> {
    return this.headers.get(id);
  }

  async entries(id: string): Promise<readonly unknown[]> {
    return this.logs.get(id) ?? [];
  }

  async ids(): Promise<readonly string[]> {
    return [...this.headers.keys()];
  }

  async remove(id: string): Promise<void> {
    this.headers.delete(id);
    this.logs.delete(id);
  }

  close(): void {}
}

/** Autosave in the browser's store, or in memory with `memory-only` where there is none. */
export async function openAutosave(onState?: (state: SaveState) => void): Promise<Autosave> {
  try {
    return new Autosave(await openBrowserStore(), true, onState);
  } catch {
    return new Autosave(new MemoryStore(), false, onState);
  }
}
