import type { Fault } from './types';

/**
 * The pipes of an indoor unit hang on the next unit's port of the changeover box, and the next one's on its own: each room
 * gets what the other asks. Severity: 1, crossed or not.
 * Seen: one unit asked at a time, the other's pipes change temperature while its own valve drives open. Remedy: swap the pipes.
 */
export const CHANGEOVER_PORTS_CROSSED: Fault = {
  id: 'changeover-ports-crossed',
  plants: ['heat-recovery'],
  slight: 1,
  clear: 1,
  severe: 1,
  max: 1,
  unit: 'share',
  perUnit: true,
  apply(machine, severity) {
    machine.portsCrossed = severity;
  },
};
