import type { Fault } from './types';

/**
 * Worn bearings and scraping scrolls: the compressor takes more power for the same work, and the gas carries that heat away.
 * Severity: share by which its power is more. It still pumps what it should – what leaks back inside is `compressor-leak-by`.
 * Seen: high current and hot discharge with ordinary pressures, sound volts and a sound capacitor. Remedy: new compressor.
 * Common practice, no source. Not on the cold room: its starts against an empty low side would leave the gas tables.
 */
export const COMPRESSOR_WORN: Fault = {
  id: 'compressor-worn',
  plants: ['orifice-split', 'inverter-split', 'thermostatic-heat-pump'],
  slight: 0.1,
  clear: 0.2,
  severe: 0.3,
  max: 0.4,
  unit: 'share',
  apply(machine, severity) {
    machine.friction *= 1 + severity;
  },
};
