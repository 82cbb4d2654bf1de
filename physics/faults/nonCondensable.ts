import type { Fault } from './types';

/**
 * Nitrogen or air in the circuit. Severity: its partial pressure at 25 °C over the machine's nitrogen-free standing pressure.
 * Seen: head pressure above what the liquid's temperature explains (false subcooling), standing pressure above saturation.
 * Remedy: recover, evacuate, hold, recharge by weight.
 */
export const NON_CONDENSABLE: Fault = {
  id: 'non-condensable',
  plants: ['orifice-split', 'inverter-split', 'cold-room', 'multi-split', 'heat-recovery', 'thermostatic-heat-pump'],
  slight: 0.03,
  clear: 0.065,
  severe: 0.1,
  max: 0.15,
  unit: 'share',
  apply(machine, severity) {
    machine.nitrogen += severity;
  },
};
