/** Which dangers the work brings near on this machine, and what a careful person does before. Local rules come first. */
import type { Place } from '../../physics/types';
import { CATALOGUE, type InstrumentId } from '../instruments';
import type { AttemptState, Hazard, HazardMet } from './state';
import type { SafetyStep } from './types';

/** Common practice, no source; the maker's instructions and licensed practice come before it. */
export const HAZARD_NEEDS: Readonly<Record<Hazard, readonly SafetyStep[]>> = {
  'refrigerant-under-pressure': ['eye-and-hand-protection'],
  'flammable-refrigerant': ['ventilate', 'no-ignition-source'],
  'live-parts': ['isolate-and-prove-dead'],
  'charged-capacitor': ['isolate-and-prove-dead', 'wait-for-capacitors'],
};

/** Simulated seconds that each takes (from memory). */
export const SAFETY_SECONDS: Readonly<Record<SafetyStep, number>> = {
  'eye-and-hand-protection': 20,
  'isolate-and-prove-dead': 180,
  'wait-for-capacitors': 300,
  ventilate: 60,
  'no-ignition-source': 30,
  'zero-gauges': 30,
  'compare-thermometers': 180,
};

/** Safety steps that can matter on this machine: flammable refrigerant asks for more. */
export function safetyStepsFor(state: Pick<AttemptState, 'site'>): SafetyStep[] {
  const always: SafetyStep[] = [
    'eye-and-hand-protection',
    'isolate-and-prove-dead',
    'wait-for-capacitors',
    'zero-gauges',
    'compare-thermometers',
  ];
  return state.site.flammable ? [...always, 'ventilate', 'no-ignition-source'] : always;
}

/** Dangers of putting this instrument on this place. */
export function hazardsOfReading(instrument: InstrumentId, place: Place, flammable: boolean): Hazard[] {
  const found: Hazard[] = [];
  if (CATALOGUE[instrument].invasive) {
    found.push('refrigerant-under-pressure');
    if (flammable) found.push('flammable-refrigerant');
  }
  const electric = place.kind === 'wire' || place.kind === 'terminals';
  if (electric && place.needs?.includes('isolated')) found.push('charged-capacitor');
  else if (electric && place.needs?.includes('panel-open')) found.push('live-parts');
  return found;
}

/** Dangers of a remedy: an opened circuit, or work on electric parts. */
export function hazardsOfRepair(opensCircuit: boolean, electric: boolean, flammable: boolean): Hazard[] {
  const found: Hazard[] = [];
  if (opensCircuit) found.push('refrigerant-under-pressure');
  if (opensCircuit && flammable) found.push('flammable-refrigerant');
  if (electric) found.push('charged-capacitor');
  return found;
}

/** Those that are met for the first time now, with what had and had not been done before. */
export function newlyMet(state: AttemptState, hazards: readonly Hazard[]): HazardMet[] {
  const fresh = hazards.filter((hazard) => !state.hazards.some((met) => met.hazard === hazard));
  return fresh.map((hazard) => {
    const needs = HAZARD_NEEDS[hazard];
    const missing = needs.filter((step) => !state.safety[step]?.taken);
    const action = state.attempt.actions.length;
    return { hazard, action, time: state.clock, needs, missing, handled: missing.length === 0 };
  });
}
