/** A pack of callouts: data. The zod schema beside this file validates exactly this shape. */

import type { RefrigerantId } from '../../../physics/fluids/fluid';
import type { CauseId, Conditions, PlantId } from '../../../physics/types';
import type { InstrumentId } from '../../instruments/types';
import type { RootCause } from '../types';

export interface Localized {
  readonly en: string;
  readonly es: string;
}

export interface CalloutText {
  /** place name, e.g. "Harbour bakery, back office" */
  readonly title: Localized;
  /** what the customer says */
  readonly complaint: Localized;
  readonly site: Localized;
  /** last job sheet, if any; may mislead */
  readonly history: Localized;
}

export interface Callout {
  readonly id: string;
  readonly plant: PlantId;
  readonly refrigerant: RefrigerantId;
  readonly conditions: Conditions;
  readonly text: CalloutText;
  /** true causes with severity; empty = no fault. Keys are fault keys. */
  readonly faults: Readonly<Record<string, number>>;
  readonly rootCause: RootCause | null;
  /** "of the last 100 calls like this": counts per cause of the plant, they sum to 100; this is the prior */
  readonly tally: Readonly<Partial<Record<CauseId, number>>>;
  readonly toolbag: readonly InstrumentId[];
  /** simulated minutes */
  readonly budget: number;
  readonly mode: 'guided' | 'solo' | 'exam';
  /** callouts that are its look-alike, offered at the debrief */
  readonly lookAlike?: string;
  /** two causes that nothing which may be read here is meant to tell apart: whoever names either is right */
  readonly deliberatePair?: readonly CauseId[];
  /** seed of the machine's own nuisance draw */
  readonly machineSeed: string;
}

export interface Weights {
  readonly cause: number;
  readonly belief: number;
  readonly evidence: number;
  readonly working: number;
  readonly repair: number;
  readonly economy: number;
}

export interface Pack {
  readonly format: 1;
  readonly id: string;
  readonly version: number;
  readonly title: Localized;
  readonly about: Localized;
  readonly weights: Weights;
  readonly callouts: readonly Callout[];
}
