import type { Fault } from './types';

/**
 * The bulb of a thermostatic valve has come loose and feels the room's air instead of its pipe, which is warmer: the valve
 * opens too far. Severity: share of its thermal contact lost.
 * Seen: low superheat, wet suction, heavy frost on the suction line. Remedy: clamp and insulate the bulb.
 */
export const BULB_LOOSE: Fault = {
  id: 'bulb-loose',
  plants: ['cold-room', 'thermostatic-heat-pump'],
  atValveInUse: true,
  slight: 0.3,
  clear: 0.7,
  severe: 0.9,
  max: 0.95,
  unit: 'share',
  apply(machine, severity) {
    machine.bulbLoose = severity;
  },
};
