import { nozzleFlux } from '../parts/compressor';
import type { Fault } from './types';

/**
 * Gas leaks across the slide of the reversing valve. Severity: a leak area, sized so that this share of the discharge flow
 * returns at the design point; it then flows by pressure, off-cycle too. It mixes in the valve's body.
 * Seen: as a leak inside the compressor, but the pipe from the valve to the compressor is warmer than the pipe to the valve.
 * Remedy: new reversing valve.
 */
export const REVERSING_VALVE_LEAK: Fault = {
  id: 'reversing-valve-leak',
  plants: ['thermostatic-heat-pump'],
  slight: 0.08,
  clear: 0.22,
  severe: 0.32,
  max: 0.45,
  unit: 'share',
  apply(machine, severity, design) {
    const flux = nozzleFlux(design.pDischarge, design.rhoDischarge, design.pSuction);
    machine.reversingLeak += (severity * design.dischargeFlow) / flux;
  },
};
