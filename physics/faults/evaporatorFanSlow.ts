import type { Fault } from './types';

/**
 * Indoor fan below its speed. Severity: relative loss of speed, 1 = dead.
 * Seen: as a clogged filter, but the filter's own pressure drop is low. Remedy: new fan motor.
 */
export const EVAPORATOR_FAN_SLOW: Fault = {
  id: 'evaporator-fan-slow',
  plants: ['orifice-split', 'inverter-split', 'cold-room', 'multi-split', 'heat-recovery', 'thermostatic-heat-pump'],
  slight: 0.2,
  clear: 0.45,
  severe: 0.6,
  max: 0.7,
  unit: 'share',
  perUnit: true,
  apply(machine, severity) {
    machine.indoorFanSpeed *= 1 - severity;
  },
};
