import type { Fault } from './types';

/**
 * An orifice too small or partly blocked. Severity: relative change of area.
 * Seen: low suction, high superheat, high subcooling with a warm drier. Remedy: fit the right one.
 */
export const ORIFICE_UNDERSIZE: Fault = {
  id: 'orifice-undersize',
  plants: ['orifice-split'],
  slight: 0.1,
  clear: 0.24,
  severe: 0.33,
  max: 0.45,
  unit: 'share',
  apply(machine, severity) {
    machine.metering *= 1 - severity;
  },
};
