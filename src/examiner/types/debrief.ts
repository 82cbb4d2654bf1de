/** Everything that a debrief shows. */
import type { RefrigerantId } from '../../../physics/fluids/fluid';
import type {
  CauseId,
  Conditions,
  Controls,
  Faults,
  Nuisance,
  PlantId,
  Station,
  StationId,
} from '../../../physics/types';
import type { Posterior, ValuedCandidate } from './belief';
import type { JudgedState } from './channel';
import type { PartScore } from './grade';
import type { Message, Quantum, ValueKind } from './message';

/** A run of the model that a number comes from; can be opened on the bench. */
export interface Run {
  readonly id: string;
  readonly plant: PlantId;
  readonly refrigerant: RefrigerantId;
  readonly conditions: Conditions;
  readonly faults: Faults;
  readonly nuisance: Partial<Nuisance>;
  readonly controls: Partial<Controls>;
}

/** Expected value under one cause: middle and 80 % range, instrument error included, SI. */
export interface Band {
  readonly cause: CauseId;
  readonly middle: number;
  readonly low: number;
  readonly high: number;
  readonly run: string;
}

export interface Picture {
  readonly quantum: Quantum;
  readonly kind: ValueKind;
  readonly state: JudgedState;
  readonly read: number;
  readonly notes: readonly number[];
  /** the true cause first, then the rival that it parts from */
  readonly bands: readonly [Band, Band];
}

export interface RivalRow {
  readonly cause: CauseId;
  readonly posterior: number;
  readonly readings: readonly {
    readonly quantum: Quantum;
    readonly kind: ValueKind;
    readonly state: JudgedState;
    readonly read: number;
    readonly band: Band;
    readonly fits: boolean;
  }[];
}

export interface PressureEnthalpy {
  readonly refrigerant: RefrigerantId;
  readonly cycles: readonly {
    readonly what: 'healthy' | 'as-found' | 'rival' | 'chosen';
    readonly cause: CauseId;
    readonly run: string;
    readonly stations: Readonly<Record<StationId, Pick<Station, 'pressure' | 'enthalpy' | 'temperature'>>>;
  }[];
}

export interface Debrief {
  readonly verdict: Message;
  readonly picture: Picture | null;
  /** at most eight short sentences */
  readonly sentences: readonly Message[];
  readonly lookAlike: string | null;
  readonly rivals: readonly RivalRow[];
  readonly trail: readonly {
    readonly note: number;
    readonly own: Posterior;
    readonly examiner: Posterior;
    readonly bits: number;
  }[];
  readonly parts: readonly PartScore[];
  readonly missed: ValuedCandidate | null;
  readonly cycles: PressureEnthalpy;
  readonly runs: readonly Run[];
}
