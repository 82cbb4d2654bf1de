import { nozzleFlux } from '../parts/compressor';
import type { Fault } from './types';

/** Factor on the passages' pressure drop that a slide at half way adds at severity 1 (ours, no source). */
const NARROWED = 12;

/**
 * The slide of the reversing valve stopped on its way at the last change of mode: a wide gap from discharge to suction, and
 * both passages narrowed. Severity: share of the discharge flow that goes across at the design point. The next change may
 * move the slide home. Seen: little capacity, suction and head close together, valve body hot on its suction side.
 * Remedy: shift it under pressure difference; if it stays, a new reversing valve.
 */
export const REVERSING_VALVE_HALF_SHIFTED: Fault = {
  id: 'reversing-valve-half-shifted',
  plants: ['thermostatic-heat-pump'],
  slight: 0.3,
  clear: 0.42,
  severe: 0.52,
  max: 0.62,
  unit: 'share',
  apply(machine, severity, design) {
    const flux = nozzleFlux(design.pDischarge, design.rhoDischarge, design.pSuction);
    machine.reversingLeak += (severity * design.dischargeFlow) / flux;
    machine.reversingDrop *= 1 + NARROWED * severity;
  },
};
