/** What an attempt has come to: everything that a screen shows or the examiner judges, derived from the actions. */
import type { CauseId, Controls, FamilyId, Faults, Place } from '../../physics/types';
import type { ChannelName, InstrumentId, PhysicalQuantity } from '../instruments/types';
import type { Procedure } from './remedies';
import type { Site } from './site';
import type { MachineEvent } from './trajectory';
import type {
  Attempt,
  Expectation,
  HazardAct,
  HintLevel,
  Note,
  ProcedureStep,
  RemedyId,
  RootCause,
  SafetyStep,
  SizeWord,
  StakeMoment,
  SumKind,
} from './types';

/** A danger that the work brought near, by what was done. */
export const HAZARDS = [
  'refrigerant-under-pressure',
  'flammable-refrigerant',
  'live-parts',
  'charged-capacitor',
] as const;
export type Hazard = (typeof HAZARDS)[number];

export interface HazardMet {
  readonly hazard: Hazard;
  /** number of the action that met it first */
  readonly action: number;
  readonly time: number;
  /** what a careful person does before it, and what of it had not been done */
  readonly needs: readonly SafetyStep[];
  readonly missing: readonly SafetyStep[];
  readonly handled: boolean;
}

export interface Stake {
  readonly moment: StakeMoment;
  readonly chips: Readonly<Partial<Record<CauseId, number>>>;
  /** chips left on "not sure yet", 1…20 */
  readonly unsure: number;
  readonly time: number;
  /** notes that existed when it was declared */
  readonly notes: number;
  readonly action: number;
}

/** What kind of slip explains a wrong sum. */
export const SUM_SLIPS = [
  /** dew taken where bubble belongs, or the other way */
  'wrong-saturation-line',
  'gauge-for-absolute',
  /** sea-level air pressure at a site that is higher up */
  'altitude',
  /** a difference turned from one temperature scale to the other as if it were a temperature, or not turned at all */
  'difference-as-temperature',
  'reversed',
  'arithmetic',
  'saturation-misread',
] as const;
export type SumSlip = (typeof SUM_SLIPS)[number];

export interface MarkedSum {
  readonly sum: SumKind;
  /** which sum this is an answer to: kind, channels and the machine's epoch */
  readonly task: string;
  readonly notes: readonly number[];
  readonly saturation: number | null;
  readonly answer: number;
  readonly action: number;
  readonly time: number;
  /** from the trainee's own inputs, SI */
  readonly expected: number;
  readonly expectedSaturation: number | null;
  readonly tolerance: number;
  /** the notes are those that this sum is made of (their places), whatever the arithmetic */
  readonly inputsFit: boolean;
  readonly right: boolean;
  readonly slip: SumSlip | null;
  /** 1 for the first answer to this sum, 2, 3 … */
  readonly trial: number;
  /** 1, ½ or 0 */
  readonly credit: number;
  /** true when the worked sum may be shown now (right, or two answers given) */
  readonly shown: boolean;
}

export interface Verdict {
  readonly cause: CauseId;
  readonly size: SizeWord;
  readonly rival: CauseId;
  readonly cites: readonly number[];
  readonly time: number;
  readonly notes: number;
  readonly action: number;
}

/** Why the van has to come back although the machine runs for now. */
export type CallBack = 'leak-left' | 'cause-left';

export interface Repair {
  readonly remedy: RemedyId;
  readonly steps: readonly ProcedureStep[];
  readonly root: RootCause | null;
  readonly action: number;
  /** begin and end, simulated seconds */
  readonly from: number;
  readonly to: number;
  readonly before: Faults;
  readonly after: Faults;
  /** families that it took away, and families that it brought (charge by feel, air left in) */
  readonly mended: readonly FamilyId[];
  readonly caused: readonly FamilyId[];
  /** the machine is sound after it, was not before, and the van need not come back (no fault: nothing was done) */
  readonly fits: boolean;
  readonly rootRight: boolean;
  readonly callBack: CallBack | null;
  readonly procedure: Procedure;
}

export interface Verification {
  readonly notes: readonly number[];
  readonly action: number;
  readonly time: number;
  /** every named note was taken after the last repair */
  readonly after: boolean;
  /** every named note was settled and without misuse */
  readonly settled: boolean;
  /** machine run time between the end of the repair and the first named note, s */
  readonly ran: number;
}

/** A prediction that was chalked before the reading of this number. */
export interface Chalk {
  readonly instrument: InstrumentId;
  readonly place: string;
  readonly quantity: PhysicalQuantity;
  readonly cause: CauseId;
  readonly expect: Expectation;
  readonly note: number;
  readonly action: number;
}

/** Why a verdict, in two notes. */
export interface Because {
  /** number of the verdict */
  readonly verdict: number;
  readonly shows: number;
  readonly rulesOut: number;
  readonly action: number;
}

/** For, against, missing: notes sorted between a verdict and its rival before the answer is known. */
export interface Reflection {
  /** number of the verdict */
  readonly verdict: number;
  readonly forVerdict: readonly number[];
  readonly forRival: readonly number[];
  readonly missing: string | null;
  readonly action: number;
}

export interface TapeSpan {
  readonly from: number;
  /** null while it runs */
  readonly to: number | null;
}

/** Simulated seconds by what they were spent on (the examiner counts only measuring and waiting). */
export interface Spent {
  readonly survey: number;
  readonly safety: number;
  readonly measuring: number;
  readonly waiting: number;
  readonly controls: number;
  readonly repair: number;
  /** everything after the first repair */
  readonly verifying: number;
}

/** How to take back one action. */
export type Inverse =
  | { readonly kind: 'note'; readonly note: number }
  | { readonly kind: 'star'; readonly note: number; readonly was: Note['star'] }
  | { readonly kind: 'safety'; readonly step: SafetyStep; readonly was: SafetyChoice | null }
  | { readonly kind: 'control'; readonly was: Controls }
  | { readonly kind: 'tape' }
  | { readonly kind: 'mark' };

/** Where an instrument sits. */
export interface Connection {
  readonly place: string;
  readonly since: number;
  readonly insulated: boolean;
}

export interface SafetyChoice {
  readonly taken: boolean;
  readonly time: number;
  readonly action: number;
}

export interface AttemptState {
  /** pack, callout and machine behind it; not part of the record */
  readonly site: Site;
  /** the record: header and every action so far */
  readonly attempt: Attempt;
  /** simulated second now */
  readonly clock: number;
  readonly controls: Controls;
  /** what is wrong with the machine now: the callout's faults, what was spilt, what was repaired */
  readonly faults: Faults;
  /** what acted on the machine, in order; with the site it gives the machine at any second */
  readonly events: readonly MachineEvent[];
  /** number of changes of the machine's state so far */
  readonly epoch: number;
  readonly connections: Readonly<Partial<Record<InstrumentId, Connection>>>;
  /** sides of the machine whose panel has been opened */
  readonly opened: readonly Place['side'][];
  /** readings so far by `instrument/place` */
  readonly readCounts: Readonly<Record<string, number>>;
  readonly notes: readonly Note[];
  readonly safety: Readonly<Partial<Record<SafetyStep, SafetyChoice>>>;
  readonly hazards: readonly HazardMet[];
  readonly hazardActs: readonly { readonly act: HazardAct; readonly time: number; readonly action: number }[];
  readonly sums: readonly MarkedSum[];
  readonly stakes: readonly Stake[];
  /** every verdict given; the last before a repair counts for it (two faults: mend one, read again) */
  readonly verdicts: readonly Verdict[];
  readonly repairs: readonly Repair[];
  readonly verification: Verification | null;
  readonly hints: readonly { readonly level: HintLevel; readonly time: number; readonly action: number }[];
  readonly chalks: readonly Chalk[];
  readonly becauses: readonly Because[];
  readonly reflections: readonly Reflection[];
  readonly tape: readonly TapeSpan[];
  readonly marks: readonly { readonly text: string; readonly time: number; readonly action: number }[];
  readonly spent: Spent;
  /** kg that left through hoses and deliberate acts */
  readonly spilt: number;
  /** what undo would take back, last one last; empty = nothing to take back in this moment */
  readonly undo: readonly Inverse[];
}

/** Channels of which a reading does not depend on whether or how the machine runs. */
export const STATE_FREE: readonly ChannelName[] = [
  'supplyVoltage',
  'busVoltage',
  'compressorCapacitance',
  'fanCapacitance',
  'defrostHeaterResistance',
  'valveCoilResistance',
  'outdoorAirTemp',
  'sensor:outdoorAir',
  'look:filterDust',
  'look:condenserDirt',
  'look:evaporatorDirt',
  'look:liquidLineKink',
  'look:suctionValveOpen',
  'look:evaporatorIce',
  'look:lineCharged',
  'look:linesPlanned',
  'look:suctionSensorContact',
  'look:coilSensorContact',
  'look:condensatePan',
];
