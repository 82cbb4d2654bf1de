import type { Fault } from './types';

/**
 * Room thermostat in a place that is not like its room (in the supply air, over a lamp, on a sunlit wall). Severity: K by
 * which its air is warmer than the room's; negative = cooler. Seen: a sound machine that stops too early or never.
 * Remedy: move the thermostat.
 */
export const THERMOSTAT_MISPLACED: Fault = {
  id: 'thermostat-misplaced',
  plants: ['orifice-split', 'thermostatic-heat-pump'],
  slight: 1.5,
  clear: 3,
  severe: 4.5,
  max: 6,
  unit: 'K',
  signed: true,
  apply(machine, severity) {
    machine.thermostatOffset += severity;
  },
};
