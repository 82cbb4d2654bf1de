import type { Fault } from './types';

/**
 * Blocked filter-drier. Severity: its pressure drop at the healthy design flow as a share of the design difference
 * between high and low side. Seen: low suction, high superheat, liquid held back before it; cold only once it flashes.
 * Remedy: recover, new drier, evacuate, recharge; find what blocked it.
 */
export const DRIER_RESTRICTION: Fault = {
  id: 'drier-restriction',
  plants: ['orifice-split', 'inverter-split', 'cold-room', 'multi-split', 'heat-recovery', 'thermostatic-heat-pump'],
  slight: 0.25,
  clear: 0.6,
  severe: 0.85,
  max: 0.94,
  unit: 'share',
  apply(machine, severity, design) {
    const drop = severity * (design.pHigh - design.pLow);
    machine.drier += (drop * design.rhoLiquid) / (design.liquidFlow * design.liquidFlow);
  },
};
