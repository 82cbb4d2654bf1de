/** What the examiner knows and says. It emits numbers and message keys; text is made by the catalogues. */
import type { CauseId, ProbeName } from '../../physics/types';
import type { OperatingState } from '../attempt/types';

/** channels on which expectations exist: probes, the controller's own sensors and looks */
export type Channel = ProbeName | `sensor:${string}` | `look:${string}`;

/** One Gaussian component of the expected channels of one (cause, severity) node in one operating state. */
export interface Component {
  readonly weight: number;
  /** per channel, in the order of Differential.channels */
  readonly mean: readonly number[];
  /** lower triangle, row by row */
  readonly covariance: readonly number[];
}

export interface Node {
  readonly cause: CauseId;
  /** fault key with target, e.g. thermistor-drift:suctionLine; '' for no fault */
  readonly key: string;
  readonly severity: number;
  /** prior weight of this node within its cause (sums to 1 over the cause's nodes) */
  readonly weight: number;
  readonly states: Readonly<Partial<Record<OperatingState, readonly Component[]>>>;
}

/** Expected reading of every channel under every rival, for one callout. Cached by content, shipped with packs. */
export interface Differential {
  readonly format: 1;
  readonly physics: string;
  readonly callout: string;
  readonly channels: readonly Channel[];
  readonly states: readonly OperatingState[];
  readonly nodes: readonly Node[];
  readonly draws: number;
  readonly failed: number;
}

export type Posterior = Readonly<Partial<Record<CauseId, number>>>;

export type PartName = 'cause' | 'belief' | 'evidence' | 'working' | 'repair' | 'economy';

export interface PartScore {
  readonly part: PartName;
  readonly weight: number;
  /** null = not measured (its weight is shared out over the measured ones) */
  readonly points: number | null;
  /** reasons as message keys with computed values */
  readonly reasons: readonly Message[];
}

export interface Message {
  readonly key: string;
  readonly values: Readonly<Record<string, MessageValue>>;
}

/** A value with its physical kind, so that the reader's units apply; `run` traces the number to a model run. */
export type MessageValue =
  | string
  | number
  | {
      readonly kind:
        | 'pressure'
        | 'temperature'
        | 'difference'
        | 'current'
        | 'share'
        | 'flow'
        | 'capacitance'
        | 'minutes';
      readonly value: number;
      readonly run?: string;
    }
  | { readonly kind: 'cause' | 'channel' | 'instrument' | 'place' | 'remedy' | 'state'; readonly id: string };

export interface Grade {
  readonly total: number;
  readonly uncapped: number;
  readonly cap: 40 | 70 | 100;
  readonly parts: readonly PartScore[];
  readonly hazards: { readonly met: number; readonly handled: number };
  readonly posterior: Posterior;
  readonly trail: readonly { readonly note: number; readonly posterior: Posterior; readonly bits: number }[];
}
