import type { Fault } from './types';

/**
 * Dirt on the indoor coil. Severity: share of the clean air flow lost at the design fan; the dirt also insulates the fins.
 * Seen: as a clogged filter, yet the filter is clean with a low pressure drop and the coil has a high one.
 * Remedy: clean the coil. That three tenths of the lost share are also lost in air-side conductance is our choice, as for
 * the outdoor coil, no source.
 */
export const EVAPORATOR_DIRTY: Fault = {
  id: 'evaporator-dirty',
  plants: ['orifice-split', 'inverter-split', 'cold-room', 'multi-split', 'heat-recovery', 'thermostatic-heat-pump'],
  slight: 0.2,
  clear: 0.45,
  severe: 0.6,
  max: 0.7,
  unit: 'share',
  perUnit: true,
  apply(machine, severity) {
    machine.evaporatorLost = 1 - (1 - machine.evaporatorLost) * (1 - severity);
    machine.evaporatorUa *= 1 - 0.3 * severity;
  },
};
