import type { Fault } from './types';

/**
 * One of three phases is missing: a blown fuse, a burnt clamp. Severity: share of its voltage that is gone. The phase monitor
 * in the safety circuit keeps the machine off, indoor units too (common practice, no source).
 * Seen: two of the three voltages between phases are low, at the end as low as one phase against neutral. Remedy: have the
 * supply put right. Left out where rooms cool and heat at once: the two vessels of a standing network then hold coils in
 * different air and take hours to come to rest.
 */
export const PHASE_LOST: Fault = {
  id: 'phase-lost',
  plants: ['multi-split', 'heat-recovery'],
  modes: { 'heat-recovery': ['cooling', 'heating'] },
  slight: 0.6,
  clear: 0.8,
  severe: 0.9,
  max: 1,
  unit: 'share',
  apply(machine, severity) {
    machine.phaseLost = severity;
  },
};
