import type { Fault } from './types';

/**
 * The superheat setting of a metering valve is off: somebody turned the spindle. Severity: kelvin that it asks for beyond the
 * right setting (negative: less, the coil runs wet).
 * Seen: superheat away from the plate's, with a valve that still answers. Remedy: set it, wait, read again.
 */
export const SUPERHEAT_SET: Fault = {
  id: 'metering-valve-superheat-set',
  plants: ['cold-room', 'thermostatic-heat-pump'],
  atValveInUse: true,
  slight: 2,
  clear: 4,
  severe: 7,
  max: 12,
  unit: 'K',
  signed: true,
  apply(machine, severity) {
    machine.superheatSet = severity;
  },
};
