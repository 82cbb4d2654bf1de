import type { Fault } from './types';

/**
 * Liquid line bent flat between drier and metering device. Severity: its pressure drop at the healthy design flow as a
 * share of the design difference between high and low side, as for the drier.
 * Seen: as a blocked drier, yet port, drier and sight glass read normal; the pipe is flat somewhere on its run, and cold
 * behind that place once the liquid flashes. Remedy: recover, cut the bend out, new drier, evacuate, recharge.
 * In heating it lies before the drier and its ports, which then read like too little refrigerant.
 * Not where the metering device sits in the outdoor unit: there no length of liquid line lies between.
 */
export const LIQUID_LINE_KINK: Fault = {
  id: 'liquid-line-kink',
  plants: ['orifice-split', 'cold-room', 'multi-split', 'heat-recovery', 'thermostatic-heat-pump'],
  slight: 0.25,
  clear: 0.6,
  severe: 0.85,
  max: 0.94,
  unit: 'share',
  apply(machine, severity, design) {
    const { pHigh, pLow, rhoLiquid, liquidFlow } = design.cooling ?? design;
    const drop = severity * (pHigh - pLow);
    machine.line += (drop * rhoLiquid) / (liquidFlow * liquidFlow);
  },
};
