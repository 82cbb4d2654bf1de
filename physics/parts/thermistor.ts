/**
 * A controller's temperature sensor: a resistance that falls as it warms, R = R25 · exp(B (1/T − 1/298.15 K)). 10 kΩ at 25 °C
 * and B 3,950 K are common in the trade, from memory.
 */
import { exp, ln } from '../math/elementary';

/** Ohm at 25 °C, and K */
export const R25 = 1e4;
const B = 3950;
const T25 = 298.15;

/** Ohm that a meter shows of what is cut */
export const OPEN_CIRCUIT = 1e6;
/** Ohm of the leads alone */
const LEADS = 1;

/** K at which a controller's scale ends */
const COLDEST = 233.15;
const HOTTEST = 423.15;
/** K beyond which the controller of a split takes a reading of pipe or coil for impossible (ours; a limit is common practice) */
const BELIEVED = [238.15, 373.15] as const;

/** What a bad plug or a wet sleeve does to a sensor: Ohm in series with it, and 1/Ohm beside it. */
export interface SensorCircuit {
  readonly series: number;
  readonly leak: number;
}

/** Ohm between the two pins of the sensor's plug; `felt` K that the sensor stands for, drift included. */
export function sensorResistance(felt: number, { series, leak }: SensorCircuit): number {
  const own = R25 * exp(B * (1 / felt - 1 / T25)) + series;
  const seen = own / (1 + own * leak);
  return seen > OPEN_CIRCUIT ? OPEN_CIRCUIT : seen < LEADS ? LEADS : seen;
}

/** K that the controller takes it for, within the ends of its scale. */
export function reading(felt: number, circuit: SensorCircuit): number {
  if (circuit.series === 0 && circuit.leak === 0) return felt;
  const t = 1 / (1 / T25 + ln(sensorResistance(felt, circuit) / R25) / B);
  return t < COLDEST ? COLDEST : t > HOTTEST ? HOTTEST : t;
}

/** Whether the controller refuses what it reads. */
export function isImpossible(seen: number): boolean {
  return seen < BELIEVED[0] || seen > BELIEVED[1];
}
