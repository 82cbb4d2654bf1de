/** What the examiner knows and says. It emits numbers and message keys; text is made by the catalogues. */
import type { RefrigerantId } from '../../physics/fluids/fluid';
import type { CauseId, Conditions, Controls, Faults, Nuisance, PlantId, Station, StationId } from '../../physics/types';
import type { Callout } from '../attempt/pack/types';
import type { OperatingState, SumKind } from '../attempt/types';
import type { ChannelName, InstrumentId, PhysicalQuantity } from '../instruments/types';

/** Channels on which expectations exist: what instruments read, the controller's own sensors, looks. */
export type Channel = ChannelName;

/** Operating states in which a reading is judged; in any other it is shown, not judged. */
export type JudgedState = Extract<OperatingState, 'running' | 'full-speed' | 'standing'>;

// ------------------------------------------------------------------------------------------------- the differential

/**
 * One component of the expected channels of one node in one operating state:
 * x = mean + loadings · f + e,  f ~ N(0, 1) for each factor, e ~ N(0, unique²) for each channel.
 * The factors are the machine's own differences that are no fault and the severity within the node's cell. They are
 * the same for all states of a node, so that readings in two states do not count the same difference twice.
 */
export interface Component {
  readonly weight: number;
  /** per channel, in the order of `Differential.channels`, SI */
  readonly mean: readonly number[];
  /** per channel, per factor (row by row), SI per standard deviation of the factor */
  readonly loadings: readonly number[];
  /** per channel, standard deviation that no factor explains, SI */
  readonly unique: readonly number[];
}

/** One cell of severity of one fault (and target). */
export interface Node {
  readonly cause: CauseId;
  /** fault key with target, e.g. thermistor-drift:suctionLine; '' for no fault */
  readonly key: string;
  /** the cell of severity that the node stands for, and its middle */
  readonly from: number;
  readonly severity: number;
  readonly to: number;
  /** prior weight of this node within its cause (sums to 1 over the cause's nodes) */
  readonly weight: number;
  /** a state is missing where the machine cannot be brought into it (it trips) */
  readonly states: Readonly<Partial<Record<JudgedState, readonly Component[]>>>;
}

/** Expected reading of every channel under every rival, for one machine in one weather. Shipped with packs. */
export interface Differential {
  readonly format: 1;
  /** version of the physics that computed it */
  readonly physics: string;
  /** content hash of everything that it was computed from */
  readonly key: string;
  readonly plant: PlantId;
  readonly refrigerant: RefrigerantId;
  readonly conditions: Conditions;
  readonly channels: readonly Channel[];
  readonly factors: readonly string[];
  readonly states: readonly JudgedState[];
  readonly nodes: readonly Node[];
  /** draws per node, and how many (node, state, draw) gave no steady state */
  readonly draws: number;
  readonly failed: number;
}

export interface DifferentialProgress {
  readonly done: number;
  readonly total: number;
}

/** The part of a callout that a differential depends on. */
export type DifferentialInput = Pick<Callout, 'plant' | 'refrigerant' | 'conditions'>;

// ----------------------------------------------------------------------------------------------------------- belief

export type Posterior = Readonly<Partial<Record<CauseId, number>>>;

/** A measured note as the examiner takes it: absolute SI value with what is known of its error. */
export interface Measured {
  readonly kind: 'measured';
  /** number of the note, -1 for a reading that is only considered */
  readonly note: number;
  readonly channel: Channel;
  readonly state: JudgedState;
  /** SI, pressures absolute */
  readonly value: number;
  /** standard deviation, SI, of this reading alone: instrument noise and rounding */
  readonly noise: number;
  /** standard deviation, SI, of what all readings with the same `biasKey` share */
  readonly bias: number;
  readonly biasKey: string;
}

/** Something seen or felt, in classes. */
export interface Classed {
  readonly kind: 'classed';
  readonly note: number;
  /** the channel whose expected value decides the class */
  readonly channel: Channel;
  readonly state: JudgedState;
  readonly value: number;
  /** rising bounds between the classes 0, 1, 2 …, SI */
  readonly edges: readonly number[];
  /** standard deviation of a person's judgement, SI */
  readonly sd: number;
}

export type Observation = Measured | Classed;

/** Why a note is not judged. */
export type NotJudged = 'struck' | 'unsettled' | 'other-state' | 'other-conditions' | 'misused' | 'repeated-look';

/** What can be read: one choice of instrument, place, quantity and operating state. */
export interface Candidate {
  readonly id: string;
  readonly instrument: InstrumentId;
  readonly place: string;
  readonly quantity: PhysicalQuantity;
  readonly channel: Channel;
  readonly state: JudgedState;
  /** minutes for the first reading there, invasiveness and refrigerant lost included, change of state excluded */
  readonly minutes: number;
}

export interface ValuedCandidate extends Candidate {
  /** expected gain about the cause, bits */
  readonly bits: number;
  /** minutes with everything that has to be done first */
  readonly cost: number;
  /** what has to be read first to keep the order of work */
  readonly first: readonly Candidate[];
}

export interface GreedyPath {
  readonly steps: readonly { readonly candidate: Candidate; readonly bits: number; readonly posterior: Posterior }[];
  /** minutes (`Candidate.minutes` summed, survey looks free) */
  readonly cost: number;
  /** true when the path ended at the asked belief */
  readonly reached: boolean;
}

// ------------------------------------------------------------------------------------------------------------ grade

export type PartName = 'cause' | 'belief' | 'evidence' | 'working' | 'repair' | 'economy';

export interface PartScore {
  readonly part: PartName;
  /** points that this part can give in this attempt: the pack's weight, and its share of what was not measured */
  readonly weight: number;
  /** null = not measured (its weight is shared out over the measured ones) */
  readonly points: number | null;
  /** reasons as message keys with computed values */
  readonly reasons: readonly Message[];
}

/** Keys lie below `examiner.` in the catalogues. */
export interface Message {
  readonly key: string;
  readonly values: Readonly<Record<string, MessageValue>>;
}

/** A value with its physical kind, so that the reader's units apply; `run` is an id in `Debrief.runs`. */
export type MessageValue =
  | string
  | number
  | {
      readonly kind:
        | 'pressure'
        | 'temperature'
        | 'difference'
        | 'current'
        | 'voltage'
        | 'share'
        | 'flow'
        | 'capacitance'
        | 'frequency'
        | 'pressureDifference'
        | 'minutes'
        | 'bits';
      readonly value: number;
      readonly run?: string;
    }
  | {
      readonly kind:
        | 'cause'
        | 'channel'
        | 'instrument'
        | 'place'
        | 'remedy'
        | 'state'
        | 'sum'
        | 'size'
        | 'root'
        | 'step';
      readonly id: string;
    };

export interface TrailStep {
  readonly note: number;
  /** the examiner's belief after this note */
  readonly posterior: Posterior;
  /** KL of the belief after from the belief before, bits: what the reading moved */
  readonly bits: number;
  /** null when the note was judged */
  readonly notJudged: NotJudged | null;
}

export interface Grade {
  /** 0…100 after the cap */
  readonly total: number;
  readonly uncapped: number;
  readonly cap: 40 | 70 | 100;
  /** false when the last hint was opened: a study, no score */
  readonly scored: boolean;
  readonly parts: readonly PartScore[];
  readonly hazards: { readonly met: number; readonly handled: number };
  /** the examiner's belief from all readings judged, before the verdict */
  readonly posterior: Posterior;
  /** the same if the trainee's own recorded slip were no slip (follow-through) */
  readonly followThrough: Posterior;
  /** 1 right or an information twin, 0.8 the remedy would mend it, 0 else */
  readonly right: 0 | 0.8 | 1;
  /** min(1, belief in the verdict / 0.8) */
  readonly support: number;
  /** causes that no allowed reading tells from the truth by 3 to 1 on this machine, the truth included */
  readonly twins: readonly CauseId[];
  /** points still open by one more reading: right but not yet proven */
  readonly proveIt: number;
  readonly trail: readonly TrailStep[];
  readonly path: GreedyPath;
  readonly used: number;
}

// ---------------------------------------------------------------------------------------------------------- debrief

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

/** What is compared: one reading, or a sum made of readings. */
export type Quantum = { readonly channel: Channel; readonly sum?: undefined } | { readonly sum: SumKind };

export type ValueKind = Extract<MessageValue, { value: number }>['kind'];

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
    readonly what: 'healthy' | 'as-found' | 'rival';
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
