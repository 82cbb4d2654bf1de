import { LIQUID_BORE } from '../parts/line';
import type { Fault } from './types';

/**
 * The outdoor unit was charged for itself, and nobody weighed in what the liquid line holds. Severity: metres of line left
 * out, each short of its liquid at the design point. The line itself is as ever. Seen: as too little refrigerant, and nothing
 * leaks; the charge label shows no allowance for that length. Remedy: weigh in the allowance and write it on the label.
 * Not where the line to the room carries expanded refrigerant, nor where a receiver takes up the difference.
 */
export const LINE_CHARGE_NOT_ADDED: Fault = {
  id: 'line-charge-not-added',
  plants: ['orifice-split'],
  slight: 4,
  clear: 8,
  severe: 10.5,
  max: 11.9,
  unit: 'm',
  apply(machine, severity, design, data) {
    machine.charge *= 1 - (severity * LIQUID_BORE * design.rhoLiquid) / data.charge;
    machine.lineUncharged += severity;
  },
};
