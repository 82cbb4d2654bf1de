import type { Fault } from './types';

/**
 * Run capacitor of the compressor has lost capacitance. Severity: relative loss.
 * Seen: high current with ordinary pressures, hard start. Remedy: new capacitor of the printed value.
 */
export const CAPACITOR_WEAK: Fault = {
  id: 'capacitor-weak',
  plants: ['orifice-split', 'cold-room', 'thermostatic-heat-pump'],
  slight: 0.2,
  clear: 0.4,
  severe: 0.55,
  max: 0.65,
  unit: 'share',
  apply(machine, severity) {
    machine.weakCapacitor = 1 - (1 - machine.weakCapacitor) * (1 - severity);
  },
};
