import type { Fault } from './types';

/**
 * Clogged air filter indoors. Severity: share of the clean air flow lost at the design fan. The coil itself stays clean.
 * Seen: low suction pressure, low superheat, large air drop, high pressure drop over the filter, ice in the end.
 * Remedy: new filter.
 */
export const FILTER_DIRTY: Fault = {
  id: 'filter-dirty',
  plants: ['orifice-split', 'inverter-split', 'multi-split', 'heat-recovery', 'thermostatic-heat-pump'],
  slight: 0.2,
  clear: 0.45,
  severe: 0.6,
  max: 0.7,
  unit: 'share',
  perUnit: true,
  apply(machine, severity) {
    machine.filterLost = 1 - (1 - machine.filterLost) * (1 - severity);
  },
};
