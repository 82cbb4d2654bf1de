import type { Fault } from './types';

/**
 * The drain of the condensate pan is blocked. Severity: share of the pan that water fills, as found; what the coil adds
 * during a visit is not followed, since a machine that stands makes no water. From `PAN_FLOAT` on the float switch opens the
 * safety circuit and the machine stands, fans too (where the float breaks the thermostat's feed: common practice, no source).
 * Seen: a pan full of water. Remedy: clear the drain. Not felt in heating, when the pan is dry.
 */
export const DRAIN_BLOCKED: Fault = {
  id: 'drain-blocked',
  plants: ['orifice-split', 'inverter-split', 'thermostatic-heat-pump'],
  modes: { 'thermostatic-heat-pump': ['cooling'] },
  slight: 0.9,
  clear: 0.93,
  severe: 0.96,
  max: 1,
  unit: 'share',
  apply(machine, severity) {
    machine.panWater = severity;
  },
};
