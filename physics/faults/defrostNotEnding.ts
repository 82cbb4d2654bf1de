import type { Fault } from './types';

/**
 * The sensor that ends a defrost feels the coil colder than it is: defrosts go on after the coil is clear, at worst until
 * the clock ends them. Severity: kelvin that it reads too low. Seen: while running nothing; the room warms at every
 * defrost. Remedy: new sensor.
 */
export const DEFROST_NOT_ENDING: Fault = {
  id: 'defrost-not-ending',
  plants: ['cold-room', 'thermostatic-heat-pump', 'multi-split', 'heat-recovery'],
  modes: { 'thermostatic-heat-pump': ['heating'], 'multi-split': ['heating'], 'heat-recovery': ['heating'] },
  slight: 5,
  clear: 10,
  severe: 18,
  max: 30,
  unit: 'K',
  apply(machine, severity) {
    machine.defrostNotEnding = severity;
  },
};
