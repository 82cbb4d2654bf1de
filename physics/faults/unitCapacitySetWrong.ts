import type { Fault } from './types';

/**
 * The capacity set on an indoor unit's board is too small: its valve is never driven further than suits the smaller size.
 * Severity: share of the stroke that is never used.
 * Seen: one unit short at full load, its valve at a stop that the data link names; sound at part load. Remedy: set it right.
 */
export const UNIT_CAPACITY_SET_WRONG: Fault = {
  id: 'unit-capacity-set-wrong',
  plants: ['multi-split', 'heat-recovery'],
  slight: 0.6,
  clear: 0.7,
  severe: 0.78,
  max: 0.85,
  unit: 'share',
  perUnit: true,
  apply(machine, severity) {
    machine.stroke = 1 - severity;
  },
};
