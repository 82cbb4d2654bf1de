/** Opens a callout: goes on with what the device keeps of it, or begins anew. */
import { type AttemptState, REAL_WORLD, ReplayError, replay, start } from '../../attempt';
import type { Autosave, SaveState } from '../../attempt/autosave';
import type { Callout, Pack } from '../../attempt/pack/types';
import type { Session } from '../../panels/session';
import { text } from '../preferences';
import { attemptId, currentId, isFinished, newSeed, openStore, setCurrent } from '../saved';
import { createExamining } from './examining';
import { createSession } from './session';
import { followTwin, startTwin } from './twin';

export async function openSession(pack: Pack, callout: Callout, seed: string | null): Promise<Session> {
  let saveState: SaveState = 'saved';
  const store = await openStore((next) => {
    saveState = next;
  });
  saveState = store.saveState;
  const found = await resume(store, pack, callout, seed);
  const state = found.state ?? start(pack, callout.id, seed ?? newSeed());
  const id = attemptId(state.attempt);
  setCurrent(id);
  let begun = found.state !== null;
  const session = createSession({
    pack,
    callout,
    state,
    twin: callout.mode === 'guided' ? twinOf(pack, callout, state) : null,
    examining: createExamining(pack, callout),
    async keep(next) {
      const { actions, ...header } = next.attempt;
      if (!begun) {
        begun = true;
        void store.begin(id, header);
      }
      await store.append(actions.at(-1)!);
      return saveState;
    },
    found: found.problem,
    onClose: () => store.close(),
  });
  return session;
}

interface Found {
  readonly state: AttemptState | null;
  /** what to tell when an attempt is there but cannot be gone on with */
  readonly problem: string | null;
}

const NOTHING: Found = { state: null, problem: null };

async function resume(store: Autosave, pack: Pack, callout: Callout, seed: string | null): Promise<Found> {
  const mine = [...(await store.ids())].sort().filter((id) => id.startsWith(`${pack.id}/${callout.id}/`));
  const wanted = seed === null ? mine : mine.filter((id) => id.endsWith(`/${seed}`));
  const here = currentId();
  // The one of this tab first, then the newest.
  const order = [...wanted.filter((id) => id === here), ...wanted.filter((id) => id !== here).reverse()];
  let unreadable = false;
  for (const id of order) {
    const recovered = await store.resume(id);
    if (!recovered) unreadable = true;
    if (!recovered || (isFinished(recovered.attempt) && id !== here && seed === null)) continue;
    const { attempt } = recovered;
    try {
      const problem =
        attempt.physics === REAL_WORLD.physics
          ? recovered.damage && text.value.t('app.error.cutShort', { actions: attempt.actions.length })
          : text.value.t('app.error.otherPhysics', { version: attempt.physics });
      return { state: replay(attempt, pack), problem };
    } catch (error) {
      if (!(error instanceof ReplayError)) throw error;
      return { state: null, problem: text.value.t('app.error.code', { reason: error.message }) };
    }
  }
  return unreadable ? { state: null, problem: text.value.t('app.error.unreadable') } : NOTHING;
}

function twinOf(pack: Pack, callout: Callout, state: AttemptState): AttemptState {
  const fresh = startTwin(pack, callout.id, state.attempt.seed);
  return state.attempt.actions.reduce((twin, { action }) => followTwin(twin, action), fresh);
}
