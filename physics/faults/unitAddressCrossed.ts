import type { Fault } from './types';

/**
 * A room's control answers to the address of the next unit, and the other way round: fan, valve and changeover of the
 * wrong unit follow. Severity has no scale: any is crossed.
 * Seen: one unit asked at a time, another one starts, fan and all. Remedy: set the addresses anew.
 */
export const UNIT_ADDRESS_CROSSED: Fault = {
  id: 'unit-address-crossed',
  plants: ['multi-split', 'heat-recovery'],
  slight: 0.25,
  clear: 0.5,
  severe: 0.75,
  max: 1,
  unit: 'share',
  perUnit: true,
  apply(machine, severity) {
    machine.addressCrossed = severity;
  },
};
