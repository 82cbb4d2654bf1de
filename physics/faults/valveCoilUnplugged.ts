import type { Fault } from './types';

/**
 * The plug of an electronic valve's coil makes no contact: the valve stays where it was, the controller commands in vain.
 * Severity: how far that is from the opening at the design point, relative; positive = wider, negative = narrower.
 * Seen: as a valve that is stuck, until its coil is measured. Remedy: make the plug good; a new valve would hang on the same one.
 */
export const VALVE_COIL_UNPLUGGED: Fault = {
  id: 'metering-valve-coil-unplugged',
  plants: ['inverter-split'],
  slight: 0.12,
  clear: 0.25,
  severe: 0.4,
  max: 0.55,
  unit: 'share',
  signed: true,
  apply(machine, severity, design) {
    if (severity === 0) return;
    const held = design.opening * (1 + severity);
    machine.stuckOpening = held < 1 ? held : 1;
    machine.valveCoilOpen = true;
  },
};
