import type { Fault } from './types';

/**
 * An orifice one or two sizes too large, or not seated. Severity: relative change of area.
 * Seen: high suction, superheat near zero, low subcooling. Remedy: fit the right one.
 */
export const ORIFICE_OVERSIZE: Fault = {
  id: 'orifice-oversize',
  plants: ['orifice-split'],
  slight: 0.08,
  clear: 0.18,
  severe: 0.4,
  max: 0.5,
  unit: 'share',
  apply(machine, severity) {
    machine.metering *= 1 + severity;
  },
};
