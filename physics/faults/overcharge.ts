import type { Fault } from './types';

/**
 * Too much refrigerant. Severity: extra share of the nominal charge.
 * Seen: high head pressure, high subcooling; with a fixed orifice low superheat, in the end liquid to the compressor.
 * Remedy: recover, weigh, charge by weight.
 */
export const OVERCHARGE: Fault = {
  id: 'overcharge',
  plants: ['orifice-split', 'inverter-split', 'cold-room', 'multi-split', 'heat-recovery', 'thermostatic-heat-pump'],
  slight: 0.1,
  clear: 0.2,
  severe: 0.3,
  max: 0.45,
  unit: 'share',
  apply(machine, severity) {
    machine.charge *= 1 + severity;
  },
};
