/**
 * One attempt: an append-only list of actions. Everything on a screen is derived from it by `replay`.
 * Actions are immutable data; toolbar, keyboard, command line and tests all dispatch the same records.
 */
import type { CauseId, Controls, FamilyId } from '../../physics/types';
import type { InstrumentId, PhysicalQuantity, Reading } from '../instruments/types';

/** Fixed moments of declaring belief (after the survey, after the third measured note, before the verdict), and free ones. */
export const STAKE_MOMENTS = ['survey', 'third', 'verdict', 'free'] as const;
export type StakeMoment = (typeof STAKE_MOMENTS)[number];

export const SIZE_WORDS = ['slight', 'clear', 'severe'] as const;
export type SizeWord = (typeof SIZE_WORDS)[number];

/** The trainee's own sums; which notes each takes is in sums.ts. */
export const SUM_KINDS = [
  'superheat',
  'subcooling',
  'air-drop',
  'air-rise',
  'approach',
  'absolute-pressure',
  'saturation-temperature',
  'line-difference',
] as const;
export type SumKind = (typeof SUM_KINDS)[number];

/** What a careful person does before touching; each a deliberate choice with consequence for Care. */
export const SAFETY_STEPS = [
  'eye-and-hand-protection',
  'isolate-and-prove-dead',
  'wait-for-capacitors',
  'ventilate',
  'no-ignition-source',
  /** takes the gauges' zero offset away (without it every gauge reading carries one) */
  'zero-gauges',
  /** brings the thermometers within the ice-bath tolerance */
  'compare-thermometers',
] as const;
export type SafetyStep = (typeof SAFETY_STEPS)[number];

/** Remedies, each acting on the machine (band-aids included: they fit or do not). */
export const REMEDIES = [
  'find-leak-mend-and-weigh-in',
  'top-up-only',
  'recover-excess',
  'weigh-in-allowance',
  'relay-lines',
  'recover-evacuate-recharge',
  'replace-drier',
  'replace-line-section',
  'open-service-valve',
  'insulate-lines',
  'clean-outdoor-coil',
  'clear-air-path',
  'replace-outdoor-fan-motor',
  'replace-filter',
  'clean-indoor-coil',
  'replace-indoor-fan-motor',
  'seal-duct',
  'replace-compressor',
  'fit-right-orifice',
  'replace-valve',
  'fasten-bulb',
  'set-superheat',
  'replace-solenoid',
  'replace-fan-switch',
  'replace-defrost-clock',
  'replace-defrost-heater',
  'replace-capacitor',
  'replace-fan-capacitor',
  'replace-contactor',
  'mend-supply',
  'replace-thermistor',
  'replace-transducer',
  'fasten-sensor',
  'plug-in-valve-coil',
  'clear-drain',
  'move-thermostat',
  'replace-valve-station',
  'shift-reversing-valve',
  'replace-reversing-valve',
  'swap-port-pipes',
  'open-module-valve',
  'set-addresses',
  'set-unit-capacity',
  'make-bus-clamp-good',
  'nothing-to-mend',
] as const;
export type RemedyId = (typeof REMEDIES)[number];

/** Steps of workmanship that a repair may need, chosen in order. */
export const PROCEDURE_STEPS = [
  'isolate',
  'recover',
  'nitrogen-purge',
  'new-drier',
  'pressure-test',
  'evacuate-and-hold',
  'weigh-in',
  'discharge-capacitor',
  'restart-and-settle',
  'record',
] as const;
export type ProcedureStep = (typeof PROCEDURE_STEPS)[number];

export const ROOT_CAUSES = [
  'leak-at-joint',
  'overfilled-at-last-service',
  'air-left-in-at-installation',
  'allowance-forgotten',
  'wet-or-dirty-circuit',
  'no-cleaning',
  'air-path-blocked',
  'worn-motor',
  'worn-compressor',
  'wrong-part-fitted',
  'badly-laid-pipe',
  'left-part-shut',
  'worn-valve',
  'poor-fastening',
  'wrongly-set',
  'badly-placed',
  'aged-part',
  'weak-supply',
  'wrongly-connected',
  'customer-expectation',
] as const;
export type RootCause = (typeof ROOT_CAUSES)[number];

/** Where to look; which pair to separate; the step worked out. */
export type HintLevel = 1 | 2 | 3;

/** What a person expects of a reading before it is there, against the same machine with nothing wrong. */
export const EXPECTATIONS = ['lower', 'same', 'higher'] as const;
export type Expectation = (typeof EXPECTATIONS)[number];

export type Action =
  | { readonly kind: 'safety'; readonly step: SafetyStep; readonly taken: boolean }
  | { readonly kind: 'look'; readonly place: string }
  | {
      readonly kind: 'read';
      readonly instrument: InstrumentId;
      readonly place: string;
      readonly quantity: PhysicalQuantity;
      /** data link only: which of the place's link channels */
      readonly channel?: string;
      /** clamp only: false = bare (quicker, and pulled to the air); left out = with its insulation */
      readonly insulated?: boolean;
      /** whole seconds to let it settle after putting it on; left out = the instrument's own `dwell` */
      readonly dwell?: number;
    }
  | { readonly kind: 'wait'; readonly seconds: number }
  | { readonly kind: 'control'; readonly change: Partial<Controls> }
  | { readonly kind: 'tape'; readonly on: boolean }
  | { readonly kind: 'mark'; readonly text: string }
  | {
      readonly kind: 'sum';
      readonly sum: SumKind;
      /** note indices that go in */
      readonly notes: readonly number[];
      /** the saturation temperature that the trainee read off, K */
      readonly saturation?: number;
      /** SI: K for differences and for saturation temperatures, Pa for absolute pressure */
      readonly answer: number;
    }
  /** chips on causes, 19 at most together: what is left of 20 stays on "not sure yet" (never less than one) */
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
  /** closes the attempt: the notes that prove the repair (none = not verified) */
  | { readonly kind: 'verified'; readonly notes: readonly number[] }
  | { readonly kind: 'hint'; readonly level: HintLevel }
  /** while an instrument settles: what the next reading will be if it is this cause; never scored */
  | {
      readonly kind: 'chalk';
      readonly instrument: InstrumentId;
      readonly place: string;
      readonly quantity: PhysicalQuantity;
      readonly cause: CauseId;
      readonly expect: Expectation;
    }
  /** with a verdict: the note that shows it, and the note that rules the named rival out; never scored */
  | { readonly kind: 'because'; readonly shows: number; readonly rulesOut: number }
  /** before the job is closed: which notes speak for the verdict, which for its rival, and what is missing; never scored */
  | {
      readonly kind: 'reflect';
      readonly forVerdict: readonly number[];
      readonly forRival: readonly number[];
      /** what nobody read, as the channel of a reading; null = nothing */
      readonly missing: string | null;
    }
  | { readonly kind: 'hazard'; readonly act: HazardAct }
  /** takes back the last undoable action of this moment; time does not run back */
  | { readonly kind: 'undo' };

export type ActionKind = Action['kind'];

/** Deliberate hazardous acts, only after a sheet that names the act. */
export const HAZARD_ACTS = [
  'open-live-panel',
  'touch-capacitor-unproved',
  'loosen-pressurised-joint',
  'vent-refrigerant',
  'flame-near-flammable',
] as const;
export type HazardAct = (typeof HAZARD_ACTS)[number];

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

/**
 * Operating states for which the examiner knows expectations. `other` = something else: shown, not judged.
 * running = as found (for a fixed-speed machine the only one under load); full-speed = inverter's test mode; standing =
 * stopped and equalised; repaired = any state after the first repair. A channel that does not depend on how the machine
 * runs (STATE_FREE: voltage, capacitance, dirt …) counts as `standing` when it is off and as `running` else.
 */
export type OperatingState = 'running' | 'full-speed' | 'standing' | 'repaired' | 'other';

/** A reading in the notebook; `index` is its number in the attempt (0, 1, 2 …), stable for ever. */
export interface Note extends Reading {
  readonly index: number;
  /** number of the action that made it */
  readonly action: number;
  readonly star: 'for' | 'against' | 'none';
  /** operating state it was taken in (see `OperatingState`) */
  readonly state: OperatingState;
  /** number of changes of the machine's state before it; notes of an older number are "before …" */
  readonly epoch: number;
  /** simulated seconds that it took */
  readonly cost: number;
  /** kg of refrigerant that it cost */
  readonly spilt: number;
  /** taken back by undo: shown struck through, never judged */
  readonly struck: boolean;
}

/** What a person does, in the order of work; derived from what was done, never a lock. */
export const PHASES = [
  'work-order',
  'survey',
  'make-safe',
  'measure',
  'verdict',
  'repair',
  'verify',
  'debrief',
] as const;
export type Phase = (typeof PHASES)[number];

export type FamilyOrNone = FamilyId | 'no-fault';
