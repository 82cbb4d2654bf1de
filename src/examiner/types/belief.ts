/** Belief, what it is made of, and what can still be read for it. */
import type { CauseId } from '../../../physics/types';
import type { InstrumentId, PhysicalQuantity } from '../../instruments/types';
import type { Channel, JudgedState } from './channel';

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
