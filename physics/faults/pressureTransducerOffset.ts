import type { Fault } from './types';

/**
 * A pressure sensor of the controller reads wrong by a fixed amount; the controller takes it for the truth, and the machine
 * really changes: speed by the suction's in cooling, by the discharge's in heating, step-down limits, what heated units let
 * through. Its switches are apart and feel the true pressure. Severity: Pa added to the named sensor's reading; a key that
 * names none means the suction's. Seen: the data link and a gauge on the same pipe differ by as much running and standing.
 * Remedy: new sensor. That 1…4 % of a span of 5 MPa are ordinary faults is from memory, no source.
 */
export const PRESSURE_TRANSDUCER_OFFSET: Fault = {
  id: 'pressure-transducer-offset',
  plants: ['multi-split', 'heat-recovery'],
  slight: 4e4,
  clear: 9e4,
  severe: 1.4e5,
  max: 2e5,
  unit: 'Pa',
  targets: ['suctionPressure', 'dischargePressure'],
  signed: true,
  apply(machine, severity, _design, _data, target) {
    if (target !== null) machine.drift[target] += severity;
  },
};
