import { R25 } from '../parts/thermistor';
import type { Fault } from './types';

/** 1/Ohm of two wires that touch */
const TOUCHING = 1;

/**
 * Water in the sleeve of a controller's sensor or a chafed wire: current passes beside it. Severity: x for 100 kΩ times
 * (1 − x)/x beside it, 1 = the wires touch. It reads too warm; from about 0.993 on what it reads cannot be, and the controller
 * keeps the machine off (common practice, no source). Seen: the hot end of the scale on the data link, hardly any ohms at the
 * plug. Remedy: new sensor.
 */
export const THERMISTOR_SHORTED: Fault = {
  id: 'thermistor-shorted',
  plants: ['inverter-split'],
  slight: 0.995,
  clear: 0.997,
  severe: 0.999,
  max: 1,
  unit: 'share',
  targets: ['suctionLine', 'evaporatorCoil'],
  apply(machine, severity, _design, _data, target) {
    if (target === null || target === 'suctionPressure' || target === 'dischargePressure') return;
    const leak = severity < 1 ? severity / (10 * R25 * (1 - severity)) : TOUCHING;
    machine.sensorCircuit[target] = { ...machine.sensorCircuit[target], leak };
  },
};
