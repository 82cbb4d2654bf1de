import { FUSION } from '../solve/walls';
import type { Fault } from './types';

/** Share of the heater's heat that gets into the ice, defrosts since it broke, share of the passage that is filled at most. */
const INTO_ICE = 0.8;
const FOUND_AFTER = 4;
const MOST = 0.6;

/**
 * Elements of the defrost heater have burnt through. Severity: share of its power that is lost. As long as what is left melts
 * what an interval brings, nothing is seen but the current; beyond, ice stays: found after some defrosts like that.
 * Remedy: new heater.
 */
export const DEFROST_HEATER_DEAD: Fault = {
  id: 'defrost-heater-dead',
  plants: ['cold-room'],
  slight: 0.35,
  clear: 0.6,
  severe: 0.8,
  max: 1,
  unit: 'share',
  apply(machine, severity, _design, data) {
    machine.heaterLost = severity;
    const { ice, coldStore } = data;
    if (ice === undefined || coldStore === undefined) return;
    const { heater, longest, growth } = coldStore.defrost;
    const melted = (INTO_ICE * heater * (1 - severity) * longest) / FUSION;
    const left = FOUND_AFTER * Math.max(0, growth - melted);
    machine.ice = Math.max(machine.ice, Math.min(left, MOST * ice.full));
  },
};
