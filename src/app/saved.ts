/** Attempts that this device keeps, by `pack/callout/seed`. Fetched only when asked for: it brings the schemas along. */
import type { Attempt } from '../attempt';
import { type Autosave, openAutosave, type SaveState } from '../attempt/autosave';

export interface SavedAttempt {
  readonly id: string;
  readonly pack: string;
  readonly callout: string;
  readonly readings: number;
  readonly finished: boolean;
}

export function attemptId({ pack, callout, seed }: Pick<Attempt, 'pack' | 'callout' | 'seed'>): string {
  return `${pack}/${callout}/${seed}`;
}

/** Later seeds sort after earlier ones, so that the last of a callout is the newest. */
export function newSeed(): string {
  const [random = 0] = crypto.getRandomValues(new Uint32Array(1));
  return `${Date.now().toString(36)}-${random.toString(36)}`;
}

export function isFinished(attempt: Attempt): boolean {
  return attempt.actions.some(({ action }) => action.kind === 'verified');
}

export function openStore(onState?: (state: SaveState) => void): Promise<Autosave> {
  return openAutosave(onState);
}

/** Everything kept, oldest first. What cannot be read any more is left out, not thrown away. */
export async function savedAttempts(): Promise<readonly SavedAttempt[]> {
  const store = await openStore();
  try {
    const list: SavedAttempt[] = [];
    for (const id of [...(await store.ids())].sort()) {
      const recovered = await store.resume(id);
      if (!recovered) continue;
      const { attempt } = recovered;
      const readings = attempt.actions.filter(({ action }) => action.kind === 'read').length;
      list.push({ id, pack: attempt.pack, callout: attempt.callout, readings, finished: isFinished(attempt) });
    }
    return list;
  } finally {
    store.close();
  }
}

/** How many other attempts on this device are finished. */
export async function finishedBeside(own: string): Promise<number> {
  return (await savedAttempts()).filter(({ id, finished }) => finished && id !== own).length;
}

export async function throwAway(id: string): Promise<void> {
  const store = await openStore();
  await store.remove(id);
  store.close();
}

/** Lays an attempt that came from elsewhere beside the others; one that is there already stays as it is. */
export async function layDown(attempt: Attempt): Promise<void> {
  const store = await openStore();
  const id = attemptId(attempt);
  if (!(await store.ids()).includes(id)) {
    const { actions, ...header } = attempt;
    await store.begin(id, header);
    for (const action of actions) await store.append(action);
  }
  store.close();
}

const CURRENT = 'coldbench.current';

/** The attempt that lies open in this tab: a reload comes back to it, also when it is finished. */
export function currentId(): string | null {
  try {
    return sessionStorage.getItem(CURRENT);
  } catch {
    return null;
  }
}

export function setCurrent(id: string | null): void {
  try {
    if (id === null) sessionStorage.removeItem(CURRENT);
    else sessionStorage.setItem(CURRENT, id);
  } catch {
    // Without it a reload of a finished attempt begins a new one.
  }
}
