import type { Fault } from './types';

/**
 * Too little refrigerant. Severity: missing share of the nominal charge.
 * Seen: low suction pressure, high superheat, subcooling near zero, gas in the sight glass; a regulating valve opens first.
 * Remedy: find and mend the leak, evacuate, weigh the charge in.
 */
export const UNDERCHARGE: Fault = {
  id: 'undercharge',
  plants: ['orifice-split', 'inverter-split', 'cold-room', 'multi-split', 'heat-recovery', 'thermostatic-heat-pump'],
  slight: 0.08,
  clear: 0.18,
  severe: 0.28,
  max: 0.45,
  unit: 'share',
  apply(machine, severity) {
    machine.charge *= 1 - severity;
  },
};
