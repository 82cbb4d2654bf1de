import type { Fault } from './types';

/**
 * A loose clamp of the signal bus at an indoor unit. Severity: share of the bus voltage that is gone there; from half on the
 * outdoor side hears nothing from the unit. Its valve goes shut and its fan runs on, the other units go on (common practice,
 * no source; other machines stop altogether). The voltage of the bus is ours.
 * Seen: one room with air as warm as it is, its pipes at room temperature, the data link without an answer of that unit, little
 * voltage on its bus clamps. Remedy: make the clamp good.
 */
export const COMMUNICATION_LOST: Fault = {
  id: 'communication-lost',
  plants: ['multi-split', 'heat-recovery'],
  slight: 0.6,
  clear: 0.8,
  severe: 0.9,
  max: 1,
  unit: 'share',
  perUnit: true,
  apply(machine, severity) {
    machine.busLost = severity;
  },
};
