import type { Fault } from './types';

/**
 * The solenoid valve in the liquid line does not shut: dirt under its seat. Severity: share of its area that it passes when
 * it should be shut. Seen: while running nothing at all; the low side is never emptied, the room gets too cold, the
 * pressures meet at rest. Remedy: new valve.
 */
export const SOLENOID_STUCK_OPEN: Fault = {
  id: 'solenoid-stuck-open',
  plants: ['cold-room'],
  slight: 0.02,
  clear: 0.1,
  severe: 0.4,
  max: 1,
  unit: 'share',
  apply(machine, severity) {
    machine.solenoidPassing = severity;
  },
};
