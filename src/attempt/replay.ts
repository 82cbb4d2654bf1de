/** Everything again from the record. */
import type { Pack } from './pack/types';
import { applyAction, calloutOf, stateAtArrival } from './reducer';
import { ActionRefused } from './refusal';
import { Site, type World } from './site';
import type { AttemptState } from './state';
import type { Attempt } from './types';

/** The record does not belong to what was done. */
export class ReplayError extends Error {
  override readonly name = 'ReplayError';

  constructor(
    /** number of the action at which it stops, or -1 for the header */
    readonly index: number,
    readonly code: 'wrong-pack' | 'time-differs' | 'refused',
    readonly why: string,
  ) {
    super(index < 0 ? why : `action ${index}: ${why}`);
  }
}

/** Everything again from the record. Throws ReplayError. */
export function replayAttempt(attempt: Attempt, pack: Pack, world: World): AttemptState {
  if (attempt.pack !== pack.id || !pack.callouts.some(({ id }) => id === attempt.callout)) {
    throw new ReplayError(-1, 'wrong-pack', `callout ${attempt.callout} of ${attempt.pack} is not in pack ${pack.id}`);
  }
  const site = new Site(world, pack, calloutOf(pack, attempt.callout));
  const { actions, ...header } = attempt;
  return actions.reduce<AttemptState>(
    (state, { t, action }, index) => {
      if (t !== state.clock)
        throw new ReplayError(index, 'time-differs', `recorded at ${t} s, replayed at ${state.clock} s`);
      try {
        return applyAction(state, action);
      } catch (error) {
        if (error instanceof ActionRefused) throw new ReplayError(index, 'refused', error.message);
        throw error;
      }
    },
    stateAtArrival(site, { ...header, actions: [] }),
  );
}
