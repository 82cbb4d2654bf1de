import type { Fault } from './types';

/**
 * Burnt contactor: its poles drop voltage while they carry the compressor. Severity: V over the poles under load, taken as
 * one number whatever the current. Seen: sound volts before it, low volts behind it, more current and more slip; nothing to
 * see with the machine off. Remedy: new contactor. That 2…3 V is already too much is common practice, no source.
 */
export const CONTACTOR_BURNT: Fault = {
  id: 'contactor-burnt',
  plants: ['orifice-split', 'thermostatic-heat-pump'],
  slight: 4,
  clear: 12,
  severe: 20,
  max: 28,
  unit: 'V',
  apply(machine, severity) {
    machine.contactDrop += severity;
  },
};
