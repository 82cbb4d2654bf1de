import { iceFor } from '../parts/ice';
import type { Fault } from './types';

/**
 * The clock or the control does not start a defrost: ice has grown between the fins since (of a cooler, or of the outdoor
 * coil of a machine that heats). Severity: share of clean air
 * flow that the ice takes away as found. Seen: ice, little air, low suction. Remedy: clear the coil, new clock.
 */
export const DEFROST_NOT_STARTING: Fault = {
  id: 'defrost-not-starting',
  plants: ['cold-room', 'thermostatic-heat-pump', 'multi-split', 'heat-recovery'],
  modes: { 'thermostatic-heat-pump': ['heating'], 'multi-split': ['heating'], 'heat-recovery': ['heating'] },
  slight: 0.1,
  clear: 0.3,
  severe: 0.5,
  max: 0.7,
  unit: 'share',
  apply(machine, severity, _design, data) {
    machine.defrostNotStarting = severity;
    const { ice, indoorFan, outdoorIce, outdoorFan } = data;
    if (ice && indoorFan) machine.ice = Math.max(machine.ice, iceFor(ice, severity, indoorFan.flatness));
    if (outdoorIce && outdoorFan) machine.ice = iceFor(outdoorIce, severity, outdoorFan.flatness);
  },
};
