import type { Fault } from './types';

/**
 * The liquid service valve of the second outdoor module was left shut: its coil takes no part. Cooling, it stays under hot
 * gas and fills with liquid that the rest of the machine lacks. Its compressor works on with the others on the common pipes.
 * Severity: 1, shut or open. Seen: that coil's air does not warm or cool. Remedy: open the valve.
 */
export const MODULE_VALVE_SHUT: Fault = {
  id: 'module-valve-shut',
  plants: ['heat-recovery'],
  slight: 1,
  clear: 1,
  severe: 1,
  max: 1,
  unit: 'share',
  apply(machine, severity) {
    machine.moduleShut = severity;
  },
};
