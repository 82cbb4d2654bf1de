import type { Fault } from './types';

/**
 * Electronic or thermostatic valve held below the area that it regulates to at the design point. Severity: relative departure, 1 = shut.
 * Seen: low suction, high superheat, liquid backed up; the command and the answer disagree. Remedy: new valve.
 */
export const VALVE_STUCK_CLOSING: Fault = {
  id: 'metering-valve-stuck-closing',
  plants: ['inverter-split', 'cold-room', 'multi-split', 'heat-recovery', 'thermostatic-heat-pump'],
  atValveInUse: true,
  slight: 0.12,
  clear: 0.3,
  severe: 0.45,
  max: 0.6,
  unit: 'share',
  perUnit: true,
  apply(machine, severity, design) {
    machine.stuckOpening = design.opening * (1 - severity);
  },
};
