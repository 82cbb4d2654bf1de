import type { Fault } from './types';

/**
 * The liquid service valve of the second outdoor module was left shut: its coil takes no part. Cooling, it stays under hot
 * gas and fills with liquid that the rest of the machine lacks. Its compressor works on with the others on the common pipes.
 * Severity has no scale: any is shut. Seen: that coil's air does not warm or cool. Remedy: open the valve.
 */
export const MODULE_VALVE_SHUT: Fault = {
  id: 'module-valve-shut',
  plants: ['heat-recovery'],
  slight: 0.25,
  clear: 0.5,
  severe: 0.75,
  max: 1,
  unit: 'share',
  apply(machine, severity) {
    machine.moduleShut = severity;
  },
};
