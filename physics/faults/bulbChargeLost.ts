import type { Fault } from './types';

/**
 * The bulb of a thermostatic valve has lost part of its charge. Nothing is felt while some liquid is left in it; then the
 * gas alone no longer holds the valve open. Severity: share of the charge lost.
 * Seen: low suction, high superheat, liquid backed up into the receiver, no answer to a warm hand. Remedy: new valve.
 */
export const BULB_CHARGE_LOST: Fault = {
  id: 'bulb-charge-lost',
  plants: ['cold-room', 'thermostatic-heat-pump'],
  atValveInUse: true,
  slight: 0.34,
  clear: 0.42,
  severe: 0.5,
  max: 0.6,
  unit: 'share',
  apply(machine, severity) {
    machine.bulbLost = severity;
  },
};
