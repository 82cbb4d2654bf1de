/** What the examiner says, before it has words: keys, values with their kind, and what is compared. */
import type { SumKind } from '../../attempt/types';
import type { Channel } from './channel';

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
        | 'resistance'
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
        | 'sense'
        | 'step';
      readonly id: string;
      /** the word begins a sentence inside the message */
      readonly opens?: true;
    };

/** What is compared: one reading, or a sum made of readings. */
export type Quantum = { readonly channel: Channel; readonly sum?: undefined } | { readonly sum: SumKind };

export type ValueKind = Extract<MessageValue, { value: number }>['kind'];
