/** The callout's machine with another cause in it: what a reader may try in the debrief. */
import type { CauseId, FaultFamily, MachineSetup, Snapshot } from '../../../physics/types';
import type { JudgedState } from './channel';
import type { Quantum, ValueKind } from './message';

/** One fault key with its range, in the family's own unit. */
export interface Cause {
  readonly cause: CauseId;
  /** fault key with target, e.g. thermistor-drift:suctionLine; '' for no fault */
  readonly key: string;
  readonly from: number;
  readonly to: number;
  readonly step: number;
  readonly unit: FaultFamily['unit'];
}

/** What a machine is asked to show, settled, in each of these states. */
export interface Trial {
  readonly setup: MachineSetup;
  readonly states: readonly JudgedState[];
}

export type TrialOutcome =
  | { readonly as: 'runs'; readonly snapshots: Readonly<Partial<Record<JudgedState, Snapshot>>> }
  /** it would stop by itself; `limit`: which switch, as the physics names it */
  | { readonly as: 'stops'; readonly limit: string }
  /** the model found no steady state, or was asked beyond its range */
  | { readonly as: 'unsolved'; readonly code: string };

/** What was read, to be laid beside what another cause would have shown. */
export type ReadRow = {
  readonly state: JudgedState;
  readonly notes: readonly number[];
  readonly quantum: Quantum;
} & (
  | { readonly as: 'number'; readonly kind: ValueKind; readonly read: number; readonly error: number }
  /** number of the class in the channel's sense */
  | { readonly as: 'look'; readonly read: number }
);
