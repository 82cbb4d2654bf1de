/** What an instrument is and what a reading is. Values SI; rounding to the instrument's own display happens here. */
import type { LookName, PlaceKind, ProbeName, SensorName } from '../../physics/types';

export const INSTRUMENTS = [
  'eyes',
  'low-gauge',
  'high-gauge',
  'pipe-clamp',
  'air-probe',
  'clamp-ammeter',
  'multimeter',
  'manometer',
  'data-link',
] as const;
export type InstrumentId = (typeof INSTRUMENTS)[number];

export type PhysicalQuantity =
  | 'pressure'
  | 'temperature'
  | 'wetBulb'
  | 'current'
  | 'voltage'
  | 'capacitance'
  | 'differentialPressure'
  | 'speed'
  | 'opening'
  | 'look';

export type ChannelName = ProbeName | `sensor:${SensorName}` | `look:${LookName}`;

export interface Instrument {
  readonly id: InstrumentId;
  readonly fits: readonly PlaceKind[];
  readonly measures: readonly PhysicalQuantity[];
  /** half-width of the accuracy band (taken as 2 SD) : absolute + share of reading + share of span, SI */
  readonly accuracy: Readonly<
    Partial<Record<PhysicalQuantity, { readonly absolute: number; readonly ofReading: number }>>
  >;
  /** full scale where it has one, SI (gauges: absolute Pa of the top mark above atmosphere) */
  readonly span?: number;
  /** display step, SI (K, Pa, A …) */
  readonly resolution: Readonly<Partial<Record<PhysicalQuantity, number>>>;
  /** first-order time constant, s */
  readonly lag: number;
  /** simulated seconds: first use at a place, and each later reading there */
  readonly cost: { readonly connect: number; readonly read: number };
  /** kg of refrigerant that leaves the circuit when it is connected */
  readonly spill: number;
}

export type SettleWord = 'moving' | 'nearly' | 'settled';

/** Ways in which a reading can be wrong by its use; each is computed into the value, none is only a label. */
export type Misuse =
  | 'wind-on-clamp'
  | 'uninsulated-clamp'
  | 'instrument-not-settled'
  | 'machine-not-settled'
  | 'not-zeroed'
  | 'over-range'
  | 'inverter-output';

/** A reading as noted. `value` is what the display showed, in SI, already rounded to the display's step. */
export interface Reading {
  readonly instrument: InstrumentId;
  readonly place: string;
  readonly quantity: PhysicalQuantity;
  readonly channel: ChannelName;
  readonly value: number;
  /** pressures are shown as gauge pressure: value is Pa above the site's atmosphere and gauge = true */
  readonly gauge: boolean;
  readonly time: number;
  readonly settled: SettleWord;
  readonly misuse: readonly Misuse[];
}
