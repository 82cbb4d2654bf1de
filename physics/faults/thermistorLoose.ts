import type { Fault } from './types';

/**
 * A sensor of the controller has slipped out of its pocket and reads partly the air round it; the controller follows it.
 * Severity: share of its thermal contact that is lost. Seen: what the data link says lies between pipe and air; the sensor
 * hangs. Remedy: put it back and fasten it.
 */
export const THERMISTOR_LOOSE: Fault = {
  id: 'thermistor-out-of-its-pocket',
  plants: ['inverter-split'],
  slight: 0.08,
  clear: 0.15,
  severe: 0.3,
  max: 0.5,
  unit: 'share',
  targets: ['suctionLine', 'evaporatorCoil'],
  apply(machine, severity, _design, _data, target) {
    if (target === null || target === 'suctionPressure' || target === 'dischargePressure') return;
    machine.loose[target] = 1 - (1 - machine.loose[target]) * (1 - severity);
  },
};
