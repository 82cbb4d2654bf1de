/** How wrong a display is: bias drawn once an attempt, noise drawn for each reading, the zero of a gauge. */
import { CATALOGUE } from './catalogue';
import { stream } from './streams';
import type { ChannelName, InstrumentId, PhysicalQuantity } from './types';

/**
 * The accuracy band (2 SD) split into what an instrument keeps for the whole attempt and what changes with each
 * reading, so that two readings agree but two instruments differ: 0.46² + 0.196² = 0.5².
 */
export const BIAS_SHARE = 0.46;
export const NOISE_SHARE = 0.196;

/** Sea level, Pa: where a gauge was zeroed that nobody zeroed on site. */
export const STANDARD_ATMOSPHERE = 101_325;
/** Standard deviation of a gauge's zero from one day to another, Pa (from memory). */
export const ZERO_DRIFT = 12e3;
/** Thermometers that were compared in ice water are put right beyond 1 °F (ice-bath check of a field protocol), K. */
export const COMPARED_WITHIN = 0.55;

/** Readings with the same word share one bias. The data link's sensors and a person's senses are each their own. */
export function biasGroup(instrument: InstrumentId, quantity: PhysicalQuantity, channel: ChannelName): string {
  const own = instrument === 'data-link' || instrument === 'eyes' || instrument === 'hand';
  return `${instrument}/${own ? channel : quantity}`;
}

/** Half-width of the accuracy band at this value, SI; 0 where the display has no error but its rounding. */
export function accuracyAt(instrument: InstrumentId, quantity: PhysicalQuantity, value: number): number {
  const band = CATALOGUE[instrument].accuracy[quantity];
  return band ? band.absolute + band.ofReading * Math.abs(value) : 0;
}

/** Standard deviation of what readings of one bias group share, SI. */
export function biasSd(instrument: InstrumentId, quantity: PhysicalQuantity, value: number): number {
  return BIAS_SHARE * accuracyAt(instrument, quantity, value);
}

/** Standard deviation of a reading's own error, rounding to the display's step included, SI. */
export function noiseSd(instrument: InstrumentId, quantity: PhysicalQuantity, value: number): number {
  const noise = NOISE_SHARE * accuracyAt(instrument, quantity, value);
  const step = CATALOGUE[instrument].resolution[quantity] ?? 0;
  return Math.sqrt(noise * noise + (step * step) / 12);
}

/** The attempt's bias of a group, in standard deviations. */
export function biasDraw(seed: string, group: string): number {
  const [instrument, what] = group.split('/');
  return stream(`${seed}/instrument/${instrument}/bias/${what}`).normal();
}

/** What a gauge shows with nothing on it unless it was zeroed on site, Pa: yesterday's drift and the altitude. */
export function zeroOffset(seed: string, instrument: InstrumentId, atmosphere: number): number {
  const drift = ZERO_DRIFT * stream(`${seed}/instrument/${instrument}/zero`).normal();
  return drift + atmosphere - STANDARD_ATMOSPHERE;
}

/** To the display's step; temperatures step in whole parts of a degree Celsius. */
export function rounded(instrument: InstrumentId, quantity: PhysicalQuantity, value: number): number {
  const step = CATALOGUE[instrument].resolution[quantity];
  if (!step) return value;
  const from = quantity === 'temperature' || quantity === 'wetBulb' ? 273.15 : 0;
  // toFixed takes away the last bits of a product such as 3 × 0.1; nothing measured here is finer than 1e-9.
  return Number((from + Math.round((value - from) / step) * step).toFixed(9));
}
