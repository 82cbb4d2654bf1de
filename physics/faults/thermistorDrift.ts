import type { Fault } from './types';

/**
 * A sensor of the controller reads wrong; the controller follows it and the machine really changes.
 * Severity: kelvin added to the named sensor's reading. Remedy: new sensor.
 */
export const THERMISTOR_DRIFT: Fault = {
  id: 'thermistor-drift',
  plants: ['inverter-split', 'multi-split', 'heat-recovery'],
  slight: 1.5,
  clear: 3,
  severe: 5,
  max: 8,
  unit: 'K',
  perUnit: true,
  targets: ['suctionLine', 'evaporatorCoil'],
  signed: true,
  apply(machine, severity, _design, _data, target) {
    if (target !== null) machine.drift[target] += severity;
  },
};
