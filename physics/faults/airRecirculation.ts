import type { Fault } from './types';

/**
 * The outdoor coil draws in part of its own outlet air (a wall, a fence or stacked goods too close). Severity: share of its
 * inlet air that is its own outlet air. The fan moves as much as ever; its air is taken at outdoor density.
 * Seen: air at the coil's face warmer than outdoors, high head and current, yet an ordinary rise over the coil and an
 * ordinary condensing temperature over the face. On a machine that heats: air at the face colder than outdoors, low suction,
 * more ice. Remedy: clear the way of the air.
 */
export const AIR_RECIRCULATION: Fault = {
  id: 'air-recirculation',
  plants: ['orifice-split', 'inverter-split', 'cold-room', 'thermostatic-heat-pump'],
  slight: 0.12,
  clear: 0.3,
  severe: 0.42,
  max: 0.5,
  unit: 'share',
  apply(machine, severity) {
    machine.recirculated = 1 - (1 - machine.recirculated) * (1 - severity);
  },
};
