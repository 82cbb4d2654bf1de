import type { Fault } from './types';

/**
 * Low voltage at the terminals (weak line, long or poor feeder). Severity: relative loss of voltage.
 * Seen: low volts on the supply side too, more current, more slip. Remedy: have the supply put right.
 * The fans' speeds do not follow.
 */
export const SUPPLY_VOLTAGE_LOW: Fault = {
  id: 'supply-voltage-low',
  plants: ['orifice-split', 'inverter-split', 'cold-room', 'multi-split', 'heat-recovery', 'thermostatic-heat-pump'],
  slight: 0.06,
  clear: 0.11,
  severe: 0.15,
  max: 0.18,
  unit: 'share',
  apply(machine, severity) {
    machine.voltage *= 1 - severity;
  },
};
