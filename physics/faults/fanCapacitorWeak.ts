import type { Fault } from './types';

/**
 * Run capacitor of the outdoor fan has lost capacitance: its motor lacks torque and slips. Severity: relative loss.
 * Seen: as a slow fan, high head; the motor is sound and its capacitor reads low. Remedy: new capacitor.
 * How speed falls with capacitance is ours, from memory: hardly at first, to a third with a fifth of it left.
 */
export const FAN_CAPACITOR_WEAK: Fault = {
  id: 'fan-capacitor-weak',
  plants: ['orifice-split', 'thermostatic-heat-pump'],
  slight: 0.3,
  clear: 0.55,
  severe: 0.65,
  max: 0.72,
  unit: 'share',
  apply(machine, severity) {
    machine.weakFanCapacitor = 1 - (1 - machine.weakFanCapacitor) * (1 - severity);
    machine.outdoorFanSpeed *= 1 - 0.35 * severity - 0.6 * severity * severity;
  },
};
