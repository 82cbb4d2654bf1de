import { nozzleFlux } from '../parts/compressor';
import type { Fault } from './types';

/**
 * Gas leaks back inside the compressor. Severity: a leak area, sized so that this share of the discharge flow returns at
 * the design point; it then flows by pressure, off-cycle too. It mixes inside the shell: the suction pipe stays normal.
 * Seen: high suction, low head, low current, low capacity, hot discharge. Remedy: new compressor.
 */
export const COMPRESSOR_LEAK_BY: Fault = {
  id: 'compressor-leak-by',
  plants: ['orifice-split', 'inverter-split', 'cold-room', 'multi-split', 'heat-recovery', 'thermostatic-heat-pump'],
  slight: 0.08,
  clear: 0.22,
  severe: 0.32,
  max: 0.45,
  unit: 'share',
  apply(machine, severity, design) {
    const flux = nozzleFlux(design.pDischarge, design.rhoDischarge, design.pSuction);
    machine.leakArea += (severity * design.dischargeFlow) / flux;
  },
};
