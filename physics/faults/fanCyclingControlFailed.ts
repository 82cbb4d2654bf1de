import type { Fault } from './types';

/**
 * The switch that stops the condenser's fan at low head is set too low or welded. Severity: share of its two pressures that
 * is missing (1: the fan never stops). Seen: only in the cold: low head, wide-open valve, starved coil.
 * Remedy: new switch.
 */
export const FAN_CYCLING_CONTROL_FAILED: Fault = {
  id: 'fan-cycling-control-failed',
  plants: ['cold-room'],
  slight: 0.15,
  clear: 0.35,
  severe: 0.7,
  max: 1,
  unit: 'share',
  apply(machine, severity) {
    machine.fanSwitchLost = severity;
  },
};
