/** What an instrument is and what a reading is. Values SI; rounding to the instrument's own display happens here. */
import type { LookKey, PlaceKind, ProbeKey, SensorKey } from '../../physics/types';

export const INSTRUMENTS = [
  'eyes',
  'hand',
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

export const QUANTITIES = [
  'pressure',
  'temperature',
  'wetBulb',
  'current',
  'voltage',
  'capacitance',
  'resistance',
  'differentialPressure',
  'speed',
  'opening',
  /** what the eye sees: `value` is the class number, `word` the class (see looks.ts) */
  'look',
  /** what the hand feels on a pipe: `value` is the class number, `word` the class; never a temperature */
  'touch',
] as const;
export type PhysicalQuantity = (typeof QUANTITIES)[number];

export type ChannelName = ProbeKey | `sensor:${SensorKey}` | `look:${LookKey}` | `touch:${ProbeKey}`;

/** Half-width of an accuracy band, taken as 2 standard deviations: `absolute` + `ofReading` × |value|, SI. */
export interface Accuracy {
  readonly absolute: number;
  readonly ofReading: number;
}

export interface Instrument {
  readonly id: InstrumentId;
  /** places it physically goes on, the unwise ones included */
  readonly fits: readonly PlaceKind[];
  readonly measures: readonly PhysicalQuantity[];
  readonly accuracy: Readonly<Partial<Record<PhysicalQuantity, Accuracy>>>;
  /** full scale where it has one, SI (gauges: Pa above atmosphere) */
  readonly span?: number;
  /** display step, SI (K, Pa, A …) */
  readonly resolution: Readonly<Partial<Record<PhysicalQuantity, number>>>;
  /** first-order time constant, s */
  readonly lag: number;
  /** seconds that a careful person lets it settle after it is put on; the default of a reading */
  readonly dwell: number;
  /** simulated seconds: putting it on a place, and each reading there (`dwell` comes on top of `connect`) */
  readonly cost: { readonly connect: number; readonly read: number };
  /** true when a hose goes on the circuit: risks charge and air each time */
  readonly invasive: boolean;
  /** kg that leave the circuit where the port holds liquid (planning figure; `spillOf` gives the real one) */
  readonly spill: number;
  /** m3 inside its hose; filled from the circuit when it is connected */
  readonly hose: number;
}

/** fresh = only just put on; moving, nearly = it still changes; settled = instrument and machine both stand still. */
export const SETTLE_WORDS = ['fresh', 'moving', 'nearly', 'settled'] as const;
export type SettleWord = (typeof SETTLE_WORDS)[number];

/** Ways in which a reading can be wrong by its use; each is computed into the value, none is only a label. */
export const MISUSES = [
  /** bare clamp, fan of that unit turning: pulled to the air by the place's whole exposure */
  'wind-on-clamp',
  /** bare clamp in still air: pulled half as far */
  'uninsulated-clamp',
  /** the sensor has not come to the value yet */
  'instrument-not-settled',
  /** the machine itself still moves */
  'machine-not-settled',
  /** gauge with the zero of another day and another altitude */
  'not-zeroed',
  'over-range',
  /** ammeter for sine waves on the pulsed output of an inverter */
  'inverter-output',
  /** an air probe held on a pipe, a clamp hung in the air */
  'wrong-tool',
] as const;
export type Misuse = (typeof MISUSES)[number];

/** A reading as noted. `value` is what the display showed, in SI, already rounded to the display's step. */
export interface Reading {
  readonly instrument: InstrumentId;
  readonly place: string;
  readonly quantity: PhysicalQuantity;
  readonly channel: ChannelName;
  readonly value: number;
  /** class of a look or touch (see looks.ts) */
  readonly word?: string;
  /** pressures are shown as gauge pressure: value is Pa above the site's atmosphere and gauge = true */
  readonly gauge: boolean;
  /** simulated second at which the display was read */
  readonly time: number;
  readonly settled: SettleWord;
  readonly misuse: readonly Misuse[];
}
