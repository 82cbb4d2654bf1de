import type { Fault } from './types';

/**
 * The check valve beside the thermostatic valve in use does not close: liquid passes the valve by. Severity: its gap over the
 * area that the valve regulates to at the design point. The valve closes to make up for it, so nothing is felt until the gap
 * alone feeds the coil; and nothing at all in the other mode, in which this check valve has to stand open.
 * Seen: no superheat, wet suction, in one mode only. Remedy: new valve station, drier, evacuate, recharge.
 */
export const CHECK_VALVE_LEAKING: Fault = {
  id: 'check-valve-leaking',
  plants: ['thermostatic-heat-pump'],
  atValveInUse: true,
  slight: 0.95,
  clear: 1.25,
  severe: 1.55,
  max: 1.9,
  unit: 'share',
  apply(machine, severity, design) {
    machine.bypass += severity * design.opening;
  },
};
