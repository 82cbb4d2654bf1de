import type { Fault } from './types';

/**
 * Electronic or thermostatic valve held above the area that it regulates to at the design point. Severity: relative departure, 1 = twice.
 * Seen: superheat gone, wet suction, low subcooling. Remedy: new valve.
 */
export const VALVE_STUCK_OPENING: Fault = {
  id: 'metering-valve-stuck-opening',
  plants: ['inverter-split', 'cold-room', 'multi-split', 'heat-recovery', 'thermostatic-heat-pump'],
  atValveInUse: true,
  slight: 0.08,
  clear: 0.15,
  severe: 0.7,
  max: 0.9,
  unit: 'share',
  perUnit: true,
  apply(machine, severity, design) {
    const held = design.opening * (1 + severity);
    machine.stuckOpening = held < 1 ? held : 1;
  },
};
