/** The differential: what every rival would show. Changes when its file format does. */
import type { RefrigerantId } from '../../../physics/fluids/fluid';
import type { CauseId, Conditions, PlantId } from '../../../physics/types';
import type { Callout } from '../../attempt/pack/types';
import type { Channel, JudgedState } from './channel';

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
