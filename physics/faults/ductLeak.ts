import type { Fault } from './types';

/**
 * Joint of the supply duct open in the loft. Severity: share of the supply air that is lost there. Less air sees the duct's
 * resistance, so the fan moves a little more than before. Seen: an ordinary machine and a warm room; little static pressure
 * in the duct. Remedy: close the joint. What the loft gets is not given back to the room.
 */
export const DUCT_LEAK: Fault = {
  id: 'duct-leak',
  plants: ['orifice-split', 'thermostatic-heat-pump'],
  slight: 0.12,
  clear: 0.28,
  severe: 0.42,
  max: 0.55,
  unit: 'share',
  apply(machine, severity) {
    machine.supplyLeak = 1 - (1 - machine.supplyLeak) * (1 - severity);
  },
};

/**
 * Joint of the return duct open in the loft: the unit draws in hot air beside the room's. Severity: share of its intake.
 * Seen: air at the unit warmer than at the grille, suction and head up, supply air too warm. Remedy: close the joint.
 */
export const RETURN_DUCT_LEAK: Fault = {
  id: 'return-duct-leak',
  plants: ['orifice-split'],
  slight: 0.08,
  clear: 0.18,
  severe: 0.28,
  max: 0.38,
  unit: 'share',
  apply(machine, severity) {
    machine.returnLeak = 1 - (1 - machine.returnLeak) * (1 - severity);
  },
};
