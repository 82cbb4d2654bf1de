/** The attempt: what was done, replayed into everything that can be shown or judged. */
import type { Snapshot } from '../../physics/types';
import type { Pack } from './pack/types';
import type { World } from './site';
import type { AttemptState } from './state';
import type { Action, Attempt } from './types';

export type { World } from './site';
export { Site } from './site';
export type * from './state';
export { HAZARDS, STATE_FREE, SUM_SLIPS } from './state';
export * from './types';

/** A new attempt at a callout. `world` is the real physics where it is left out. */
export type StartAttempt = (pack: Pack, callout: string, seed: string, world?: World) => AttemptState;
/** The state after one more action; throws ActionRefused (code, values) and changes nothing where it cannot be done. */
export type ApplyAction = (state: AttemptState, action: Action) => AttemptState;
/** Everything again from the record; throws ReplayError (number of the action, why). */
export type ReplayAttempt = (attempt: Attempt, pack: Pack, world?: World) => AttemptState;
/** What the machine shows at second `t` (left out: now); pure, cheap when asked again. */
export type SnapshotAt = (state: AttemptState, t?: number) => Snapshot;
