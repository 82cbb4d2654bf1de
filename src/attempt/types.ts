/**
 * One attempt: an append-only list of actions. Everything on a screen is derived from it by `replay`.
 * Actions are immutable data; toolbar, keyboard, command line and tests all dispatch the same records.
 */
import type { CauseId, Controls, FamilyId } from '../../physics/types';
import type { InstrumentId, PhysicalQuantity, Reading } from '../instruments/types';

export type StakeMoment = 'survey' | 'third' | 'verdict' | 'free';
export type SizeWord = 'slight' | 'clear' | 'severe';
export type SumKind =
  | 'superheat'
  | 'subcooling'
  | 'air-drop'
  | 'air-rise'
  | 'approach'
  | 'absolute-pressure'
  | 'saturation-temperature'
  | 'line-difference';

/** What a careful person does before touching; each a deliberate choice with consequence for Care. */
export type SafetyStep =
  | 'eye-and-hand-protection'
  | 'isolate-and-prove-dead'
  | 'wait-for-capacitors'
  | 'ventilate'
  | 'no-ignition-source'
  | 'zero-gauges'
  | 'compare-thermometers';

/** Remedies, each acting on the machine (band-aids included: they fit or do not). */
export const REMEDIES = [
  'find-leak-mend-and-weigh-in',
  'top-up-only',
  'recover-excess',
  'recover-evacuate-recharge',
  'replace-drier',
  'clean-outdoor-coil',
  'replace-outdoor-fan-motor',
  'replace-filter',
  'replace-indoor-fan-motor',
  'replace-compressor',
  'fit-right-orifice',
  'replace-valve',
  'replace-capacitor',
  'replace-thermistor',
  'nothing-to-mend',
] as const;
export type RemedyId = (typeof REMEDIES)[number];

/** Steps of workmanship that a repair may need, chosen in order. */
export type ProcedureStep =
  | 'isolate'
  | 'recover'
  | 'nitrogen-purge'
  | 'new-drier'
  | 'pressure-test'
  | 'evacuate-and-hold'
  | 'weigh-in'
  | 'discharge-capacitor'
  | 'restart-and-settle'
  | 'record';

export type RootCause =
  | 'leak-at-joint'
  | 'overfilled-at-last-service'
  | 'air-left-in-at-installation'
  | 'wet-or-dirty-circuit'
  | 'no-cleaning'
  | 'worn-motor'
  | 'worn-compressor'
  | 'wrong-part-fitted'
  | 'worn-valve'
  | 'aged-part'
  | 'customer-expectation';

export type Action =
  | { readonly kind: 'safety'; readonly step: SafetyStep; readonly taken: boolean }
  | { readonly kind: 'look'; readonly place: string }
  | {
      readonly kind: 'read';
      readonly instrument: InstrumentId;
      readonly place: string;
      readonly quantity: PhysicalQuantity;
      readonly channel?: string;
      readonly insulated?: boolean;
    }
  | { readonly kind: 'wait'; readonly seconds: number }
  | { readonly kind: 'control'; readonly change: Partial<Controls> }
  | { readonly kind: 'tape'; readonly on: boolean }
  | { readonly kind: 'mark'; readonly text: string }
  | {
      readonly kind: 'sum';
      readonly sum: SumKind;
      readonly notes: readonly number[];
      readonly saturation?: number;
      readonly answer: number;
    }
  | { readonly kind: 'stake'; readonly moment: StakeMoment; readonly chips: Readonly<Partial<Record<CauseId, number>>> }
  | { readonly kind: 'star'; readonly note: number; readonly side: 'for' | 'against' | 'none' }
  | {
      readonly kind: 'verdict';
      readonly cause: CauseId;
      readonly size: SizeWord;
      readonly rival: CauseId;
      readonly cites: readonly number[];
    }
  | {
      readonly kind: 'repair';
      readonly remedy: RemedyId;
      readonly steps: readonly ProcedureStep[];
      readonly root: RootCause | null;
    }
  | { readonly kind: 'verified'; readonly notes: readonly number[] }
  | { readonly kind: 'hint'; readonly level: 1 | 2 | 3 }
  | { readonly kind: 'hazard'; readonly act: HazardAct }
  | { readonly kind: 'undo' };

/** Deliberate hazardous acts, only after a sheet that names the act. */
export type HazardAct =
  | 'open-live-panel'
  | 'touch-capacitor-unproved'
  | 'loosen-pressurised-joint'
  | 'vent-refrigerant'
  | 'flame-near-flammable';

export interface TimedAction {
  /** simulated second at which the action began */
  readonly t: number;
  readonly action: Action;
}

export interface Attempt {
  readonly format: 1;
  readonly pack: string;
  readonly packVersion: number;
  readonly callout: string;
  readonly seed: string;
  readonly physics: string;
  readonly actions: readonly TimedAction[];
}

/** A reading in the notebook; `index` is its number in the attempt (0, 1, 2 …), stable for ever. */
export interface Note extends Reading {
  readonly index: number;
  readonly star: 'for' | 'against' | 'none';
  /** operating state it was taken in (see `OperatingState`) */
  readonly state: OperatingState;
  /** number of changes of the machine's state before it; notes of an older number are "before …" */
  readonly epoch: number;
}

/** Operating states for which the examiner knows expectations. `other` = something else: shown, not judged. */
export type OperatingState = 'running' | 'full-speed' | 'standing' | 'repaired' | 'other';

export type FamilyOrNone = FamilyId | 'no-fault';
