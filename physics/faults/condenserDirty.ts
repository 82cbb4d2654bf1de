import type { Fault } from './types';

/**
 * Dirt on the outdoor coil. Severity: share of the clean air flow lost at the design fan; the dirt also insulates the fins.
 * Seen: high head pressure and current, large air rise over the coil. Remedy: clean the coil.
 * That three tenths of the lost share are also lost in air-side conductance is our choice, no source.
 */
export const CONDENSER_DIRTY: Fault = {
  id: 'condenser-dirty',
  plants: ['orifice-split', 'inverter-split', 'cold-room', 'multi-split', 'heat-recovery', 'thermostatic-heat-pump'],
  slight: 0.25,
  clear: 0.5,
  severe: 0.6,
  max: 0.65,
  unit: 'share',
  apply(machine, severity) {
    machine.condenserLost = 1 - (1 - machine.condenserLost) * (1 - severity);
    machine.condenserUa *= 1 - 0.3 * severity;
  },
};
