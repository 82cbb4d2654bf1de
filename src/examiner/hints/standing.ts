/** Where a trainee stands when a hint is asked for: what the notes tell, what is still open, which causes are named. */
import type { CauseId, Snapshot } from '../../../physics/types';
import type { AttemptState } from '../../attempt';
import { machineNuisance } from '../../attempt/seeds';
import type { Bench } from '../candidates';
import { benchOf, SUPPORTED } from '../case';
import { driftOf } from '../drift';
import { observationsOf, takeNotes } from '../observe';
import { sourceOf } from '../source';
import type { Differential, JudgedState, Observation } from '../types';
import { among, type Standpoint, standpoint } from '../value';

export interface Standing {
  readonly state: AttemptState;
  readonly differential: Differential;
  readonly bench: Bench;
  readonly observations: readonly Observation[];
  /** causes that the work order names, in the order of its tally */
  readonly named: readonly CauseId[];
  /** belief over the named causes */
  readonly point: Standpoint;
  /** the notes already carry a verdict */
  readonly settled: boolean;
}

export function standingOf(state: AttemptState, differential: Differential): Standing {
  const { tally } = state.site.callout;
  const bench = benchOf(state);
  const observations = observationsOf(
    takeNotes(state.notes, { atmosphere: state.site.atmosphere, drift: driftOf(state) }),
  );
  const named = (Object.keys(tally) as CauseId[]).filter((cause) => tally[cause]! > 0);
  named.sort((a, b) => tally[b]! - tally[a]!);
  const point = among(standpoint(differential, tally, observations), named);
  const settled = Math.max(...Object.values(point.posterior)) >= SUPPORTED;
  return { state, differential, bench, observations, named, point, settled };
}

/** This machine as found, settled in a state; undefined where it has none (it trips). */
export function machineIn({ state }: Standing, judged: JudgedState): Snapshot | undefined {
  const { callout, world } = state.site;
  const { plant, refrigerant, conditions, faults, machineSeed } = callout;
  const setup = { plant, refrigerant, conditions, faults, nuisance: machineNuisance(machineSeed) };
  return sourceOf(world).snapshots(setup, [judged])[judged];
}
