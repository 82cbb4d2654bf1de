import type { Fault } from './types';

/**
 * Electronic valve of an indoor unit that does not shut tightly. Severity: opening that is left, share of its stroke.
 * Seen: with the unit off, its three sensors do not come to the room's temperature. Remedy: new valve.
 */
export const VALVE_NOT_CLOSING: Fault = {
  id: 'metering-valve-not-closing',
  plants: ['multi-split', 'heat-recovery'],
  slight: 0.03,
  clear: 0.08,
  severe: 0.15,
  max: 0.25,
  unit: 'share',
  perUnit: true,
  apply(machine, severity) {
    machine.valvePasses = severity;
  },
};
