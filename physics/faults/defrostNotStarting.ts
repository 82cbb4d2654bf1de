import { iceFor } from '../parts/ice';
import type { Fault } from './types';

/**
 * The clock or its contact does not start a defrost: ice has grown between the fins since. Severity: share of clean air
 * flow that the ice takes away as found. Seen: ice, little air, low suction. Remedy: clear the coil, new clock.
 */
export const DEFROST_NOT_STARTING: Fault = {
  id: 'defrost-not-starting',
  plants: ['cold-room'],
  slight: 0.1,
  clear: 0.3,
  severe: 0.5,
  max: 0.7,
  unit: 'share',
  apply(machine, severity, _design, data) {
    machine.defrostNotStarting = severity;
    const { ice, indoorFan } = data;
    if (ice && indoorFan) machine.ice = Math.max(machine.ice, iceFor(ice, severity, indoorFan.flatness));
  },
};
