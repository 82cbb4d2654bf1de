import { OPEN_CIRCUIT, R25 } from '../parts/thermistor';
import type { Fault } from './types';

/**
 * The plug of a controller's sensor has lost contact, up to a broken wire. Severity: x for x/(1 − x) times 10 kΩ in series with
 * it, 1 = cut. It reads too cold; from about 0.97 on what it reads cannot be, and the controller keeps the machine off (common
 * practice, no source: others go on by a fallback). Seen: the cold end of the scale on the data link, ohms without end at the
 * plug. Remedy: new sensor.
 */
export const THERMISTOR_OPEN: Fault = {
  id: 'thermistor-open',
  plants: ['inverter-split'],
  slight: 0.97,
  clear: 0.98,
  severe: 0.99,
  max: 1,
  unit: 'share',
  targets: ['suctionLine', 'evaporatorCoil'],
  apply(machine, severity, _design, _data, target) {
    if (target === null || target === 'suctionPressure' || target === 'dischargePressure') return;
    const series = severity < 1 ? (R25 * severity) / (1 - severity) : OPEN_CIRCUIT;
    machine.sensorCircuit[target] = { ...machine.sensorCircuit[target], series };
  },
};
