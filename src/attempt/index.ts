/** The attempt: what was done, replayed into everything that can be shown or judged. */
import type { Snapshot } from '../../physics/types';
import type { Pack } from './pack/types';
import { applyAction, startAttempt } from './reducer';
import { replayAttempt } from './replay';
import type { World } from './site';
import type { AttemptState } from './state';
import type { Action, Attempt } from './types';
import { REAL_WORLD } from './world';

export {
  CHIPS,
  type Chips,
  chipsFromTally,
  currentChips,
  measuredNotes,
  openMoment,
  THIRD,
  unsureChips,
} from './chips';
export {
  ATTEMPT_CODE_ERRORS,
  AttemptCodeError,
  type AttemptCodeErrorCode,
  decode,
  encode,
  fromFile,
  LONGEST_CODE,
  toFile,
} from './codes';
export { CsvError } from './csv';
export type { LogDamage, Recovered } from './eventLog';
export { HAZARD_NEEDS, SAFETY_SECONDS, safetyStepsFor } from './hazards';
export { hintRefusal, nextHint, WORKED_HINT } from './hints';
export { sameControls } from './operating';
export { phaseOf } from './phase';
export { choicesAt, inBag, planReading, type ReadAction, type ReadingPlan, sceneOf } from './reading';
export { calloutOf, refusalOf } from './reducer';
export { ActionRefused, REFUSALS, type RefusalCode } from './refusal';
export {
  CHARGE_WITHIN,
  familyOf,
  isSound,
  markProcedure,
  netCharge,
  type Procedure,
  REMEDY_RULES,
  type Remedy,
  remediesOn,
  repairSeconds,
  STEP_SECONDS,
} from './remedies';
export { ReplayError } from './replay';
export type { Saturation } from './saturation';
export { drawNuisance, machineNuisance, NUISANCE_SPREAD } from './seeds';
export { Site, type World } from './site';
export type * from './state';
export { HAZARDS, STATE_FREE, SUM_SLIPS } from './state';
export { SUM_RULES } from './sums';
export {
  linkChannels,
  liveValues,
  parseTapeCsv,
  type ReadTape,
  SAMPLE_SECONDS,
  type Tape,
  type TapeChannel,
  type TapeSample,
  tapeCsv,
  tapeOf,
} from './tape';
export type { MachineEvent, Moment } from './trajectory';
export * from './types';
export { MOST_CITES } from './verdicts';
export { REAL_WORLD } from './world';

/** A new attempt at a callout. `world` is the real physics where it is left out. */
export function start(pack: Pack, callout: string, seed: string, world: World = REAL_WORLD): AttemptState {
  return startAttempt(pack, callout, seed, world);
}

/** The state after one more action. Throws ActionRefused (`code`, `what`) and changes nothing where it cannot be done. */
export function apply(state: AttemptState, action: Action): AttemptState {
  return applyAction(state, action);
}

/** Everything again from the record. Throws ReplayError (`index` of the action, `code`, `why`). */
export function replay(attempt: Attempt, pack: Pack, world: World = REAL_WORLD): AttemptState {
  return replayAttempt(attempt, pack, world);
}

/** What the machine shows at second `t` (left out: now). Pure, cheap when asked again. */
export function snapshotAt(state: AttemptState, t: number = state.clock): Snapshot {
  return state.site.snapshot(state.events, t);
}
