/** Machines to practise on: drawn from a callout's own tally and the examiner's own sizes, or of a given cause. */
import type { CauseId, Faults, MachineSetup, Snapshot } from '../../physics/types';
import { drawNuisance, REAL_WORLD } from '../attempt';
import type { Callout } from '../attempt/pack/types';
import { USUAL_ROOT } from '../attempt/roots';
import { machineNuisance } from '../attempt/seeds';
import { sourceOf, statesOf } from '../examiner/source';
import type { JudgedState } from '../examiner/types';
import { stream } from '../instruments/streams';
import type { InstrumentId } from '../instruments/types';
import { drawCause, drawSize, isClear } from '../packs/draw';

export type Snapshots = Readonly<Partial<Record<JudgedState, Snapshot>>>;

export interface Drawn {
  readonly faults: Faults;
  readonly snapshots: Snapshots;
}

/** Draws of a machine before it is given up: one that its own switches stop shows nothing under load. */
const TRIES = 12;

/**
 * A machine with this cause, of a size that can be seen, that runs by itself. Null where none of a dozen does: then
 * the cause stops the machine in this weather.
 */
export function machineWith(callout: Callout, cause: CauseId, seed: string): Drawn | null {
  const { plant, refrigerant, conditions } = callout;
  const source = sourceOf(REAL_WORLD);
  for (let i = 0; i < TRIES; i++) {
    const random = stream(`${seed}/machine/${i}`);
    const faults = drawSize(cause, plant, conditions.mode, random);
    if (!isClear({ cause, faults })) continue;
    const setup: MachineSetup = { plant, refrigerant, conditions, faults, nuisance: drawNuisance(random) };
    const snapshots = source.snapshots(setup, statesOf(source.plant(callout)));
    if (snapshots.running) return { faults, snapshots };
  }
  return null;
}

/** The machine as it would be with nothing wrong and without differences of its own: the healthy twin. */
export function twinOf({ plant, refrigerant, conditions }: Callout): Snapshots {
  const source = sourceOf(REAL_WORLD);
  const setup: MachineSetup = { plant, refrigerant, conditions, faults: {}, nuisance: {} };
  return source.snapshots(setup, statesOf(source.plant({ plant, refrigerant, conditions })));
}

/** Another job at a callout's place: cause drawn from its tally, size as the examiner expects it, a machine that runs. */
export function drawJob(home: Callout, id: string, seed: string, toolbag: readonly InstrumentId[]): Callout {
  const { lookAlike: _none, ...rest } = home;
  const source = sourceOf(REAL_WORLD);
  for (let i = 0; ; i++) {
    const machineSeed = i === 0 ? id : `${id.slice(0, 60)}-${i}`;
    const cause = drawCause(home, `${seed}/${i}`);
    const faults = drawSize(cause, home.plant, home.conditions.mode, stream(`${seed}/${i}/size`));
    const { plant, refrigerant, conditions } = home;
    const setup = { plant, refrigerant, conditions, faults, nuisance: machineNuisance(machineSeed) };
    if (i < TRIES && !source.snapshots(setup, ['running']).running) continue;
    const rootCause = cause === 'no-fault' ? null : USUAL_ROOT[cause];
    return { ...rest, id, faults, rootCause, toolbag, mode: 'solo', machineSeed };
  }
}
