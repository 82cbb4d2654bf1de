import type { Fault } from './types';

/**
 * Liquid line bent flat between drier and metering device. Severity: its pressure drop at the healthy design flow as a
 * share of the design difference between high and low side, as for the drier.
 * Seen: as a blocked drier, yet port, drier and sight glass read normal; the pipe is flat somewhere on its run, and cold
 * behind that place once the liquid flashes. Remedy: recover, cut the bend out, new drier, evacuate, recharge.
 * Not where the metering device sits in the outdoor unit: there no length of liquid line lies between.
 */
export const LIQUID_LINE_KINK: Fault = {
  id: 'liquid-line-kink',
  plants: ['orifice-split', 'cold-room', 'multi-split', 'heat-recovery'],
  slight: 0.25,
  clear: 0.6,
  severe: 0.85,
  max: 0.94,
  unit: 'share',
  apply(machine, severity, design) {
    const drop = severity * (design.pHigh - design.pLow);
    machine.line += (drop * design.rhoLiquid) / (design.liquidFlow * design.liquidFlow);
  },
};
