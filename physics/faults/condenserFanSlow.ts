import type { Fault } from './types';

/**
 * Outdoor fan below its speed (tired motor, weak fan capacitor). Severity: relative loss of speed, 1 = dead.
 * Seen: as a dirty coil, yet the coil is clean and the fan slow. Remedy: new fan motor.
 */
export const CONDENSER_FAN_SLOW: Fault = {
  id: 'condenser-fan-slow',
  plants: ['orifice-split', 'inverter-split', 'cold-room', 'multi-split', 'heat-recovery', 'thermostatic-heat-pump'],
  slight: 0.25,
  clear: 0.5,
  severe: 0.6,
  max: 0.65,
  unit: 'share',
  apply(machine, severity) {
    machine.outdoorFanSpeed *= 1 - severity;
  },
};
