import { describe, expect, it } from 'vitest';
import { Autosave, MemoryStore, openAutosave, type SaveState } from '../../src/attempt/autosave';
import { recover } from '../../src/attempt/eventLog';
import type { AttemptHeader } from '../../src/attempt/schema';
import type { TimedAction } from '../../src/attempt/types';

const header: AttemptHeader = {
  format: 1,
  pack: 'sample-street',
  packVersion: 1,
  callout: 'back-office',
  seed: 's',
  physics: 'fake-1',
};
const actions: TimedAction[] = Array.from({ length: 6 }, (_, i) => ({
  t: 60 * i,
  action: { kind: 'wait', seconds: 60 },
}));

async function kept(store = new MemoryStore()) {
  const autosave = new Autosave(store, true);
  await autosave.begin('a', header);
  for (const action of actions) await autosave.append(action);
  return store;
}

describe('autosave', () => {
  it('gives the attempt back after the page was killed, and goes on', async () => {
    const store = await kept();
    const later = new Autosave(store, true);
    const recovered = await later.resume('a');
    expect(recovered).toMatchObject({ damage: null, attempt: { ...header, actions } });
    const more: TimedAction = { t: 360, action: { kind: 'undo' } };
    await later.append(more);
    expect((await new Autosave(store, true).resume('a'))!.attempt.actions).toEqual([...actions, more]);
  });

  it('keeps order without being waited for', async () => {
    const store = new MemoryStore();
    const autosave = new Autosave(store, true);
    autosave.begin('a', header);
    for (const action of actions) autosave.append(action);
    await autosave.flush();
    expect((await new Autosave(store, true).resume('a'))!.attempt.actions).toEqual(actions);
  });

  it('keeps what comes before a gap or an altered entry, says which, and can go on from there', async () => {
    const whole = await (await kept()).entries('a');
    const head = { id: 'a', header };
    const gap = whole.filter((_, i) => i !== 3);
    expect(recover(head, gap)).toMatchObject({
      damage: { kind: 'gap', seq: 3 },
      attempt: { actions: actions.slice(0, 3) },
    });
    const altered = whole.map((entry, i) =>
      i === 2 ? { ...(entry as object), action: { t: 120, action: { kind: 'wait', seconds: 61 } } } : entry,
    );
    expect(recover(head, altered)).toMatchObject({ damage: { kind: 'altered', seq: 2 } });
    const broken = whole.map((entry, i) => (i === 4 ? { ...(entry as object), action: { t: 'x' } } : entry));
    expect(recover(head, broken)).toMatchObject({ damage: { kind: 'unreadable', seq: 4 } });
    expect(recover({ id: 'a', header: { format: 9 } }, whole)).toBeNull();
    expect(recover(undefined, [])).toBeNull();
    // A log under another header is another log.
    expect(recover({ id: 'a', header: { ...header, seed: 'other' } }, whole)).toMatchObject({ damage: { seq: 0 } });

    const store = new MemoryStore();
    await store.putHeader(head);
    for (const entry of gap) await store.append(entry as never);
    const autosave = new Autosave(store, true);
    expect((await autosave.resume('a'))!.damage).not.toBeNull();
    await autosave.append({ t: 180, action: { kind: 'undo' } });
    const again = await new Autosave(store, true).resume('a');
    expect(again).toMatchObject({ damage: null });
    expect(again!.attempt.actions).toHaveLength(4);
  });

  it('stops writing where another page writes the same attempt, and says so', async () => {
    const store = await kept();
    const states: SaveState[] = [];
    const one = new Autosave(store, true, (state) => states.push(state));
    const two = new Autosave(store, true);
    await one.resume('a');
    await two.resume('a');
    await two.append({ t: 360, action: { kind: 'wait', seconds: 1 } });
    await one.append({ t: 360, action: { kind: 'wait', seconds: 9 } });
    await one.append({ t: 369, action: { kind: 'undo' } });
    expect(states).toEqual(['written-elsewhere']);
    expect((await new Autosave(store, true).resume('a'))!.attempt.actions.at(-1)).toEqual({
      t: 360,
      action: { kind: 'wait', seconds: 1 },
    });
  });

  it('goes on in memory where there is no storage, and where storage fails', async () => {
    const autosave = await openAutosave();
    expect(autosave.saveState).toBe('memory-only');
    await autosave.begin('a', header);
    await autosave.append(actions[0]!);
    expect((await autosave.resume('a'))!.attempt.actions).toHaveLength(1);

    class Full extends MemoryStore {
      override async append(): Promise<void> {
        throw Object.assign(new Error('full'), { name: 'QuotaExceededError' });
      }
    }
    const states: SaveState[] = [];
    const full = new Autosave(new Full(), true, (state) => states.push(state));
    await full.begin('a', header);
    await full.append(actions[0]!);
    await full.append(actions[1]!);
    expect(states).toEqual(['memory-only']);
  });

  it('lists and removes', async () => {
    const store = await kept();
    const autosave = new Autosave(store, true);
    expect(await autosave.ids()).toEqual(['a']);
    await autosave.remove('a');
    expect(await autosave.ids()).toEqual([]);
    expect(await autosave.resume('a')).toBeNull();
  });
});
