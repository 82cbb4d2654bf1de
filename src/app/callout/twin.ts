/** The healthy twin: the same machine, weather and acts, with nothing wrong. For the guided callout. */
import { type Action, ActionRefused, type AttemptState, apply, start } from '../../attempt';
import type { Pack } from '../../attempt/pack/types';

export function startTwin(pack: Pack, callout: string, seed: string): AttemptState {
  const sound = pack.callouts.map((one) => (one.id === callout ? { ...one, faults: {}, rootCause: null } : one));
  return start({ ...pack, callouts: sound }, callout, seed);
}

/** What was done to the machine is done to its twin; what was refused there stays undone. */
export function followTwin(twin: AttemptState, action: Action): AttemptState {
  try {
    return apply(twin, action);
  } catch (error) {
    if (error instanceof ActionRefused) return twin;
    throw error;
  }
}
