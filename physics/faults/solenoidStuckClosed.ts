import type { Fault } from './types';

/**
 * The solenoid valve in the liquid line does not open all the way: a weak coil, a torn diaphragm. Severity: share of its
 * area that is missing. Nothing is felt before it is the narrowest place of the line.
 * Seen: the coil starves, the liquid is cold behind the solenoid and not behind the drier. Remedy: new valve.
 */
export const SOLENOID_STUCK_CLOSED: Fault = {
  id: 'solenoid-stuck-closed',
  plants: ['cold-room'],
  slight: 0.6,
  clear: 0.74,
  severe: 0.82,
  max: 0.86,
  unit: 'share',
  apply(machine, severity) {
    machine.solenoidLost = severity;
  },
};
