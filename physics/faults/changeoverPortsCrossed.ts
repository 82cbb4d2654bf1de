import type { Fault } from './types';

/**
 * The pipes of an indoor unit hang on the next unit's port of the changeover box, and the next one's on its own: each room
 * gets what the other asks. Severity has no scale: any is crossed.
 * Seen: one unit asked at a time, the other's pipes change temperature while its own valve drives open. Remedy: swap the pipes.
 */
export const CHANGEOVER_PORTS_CROSSED: Fault = {
  id: 'changeover-ports-crossed',
  plants: ['heat-recovery'],
  slight: 0.25,
  clear: 0.5,
  severe: 0.75,
  max: 1,
  unit: 'share',
  perUnit: true,
  apply(machine, severity) {
    machine.portsCrossed = severity;
  },
};
