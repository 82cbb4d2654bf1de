/** Care: no points, a cap. Only deliberate hazardous acts count, each chosen on a sheet that names it. */
import type { HazardAct } from '../../attempt';
import type { Case } from '../case';
import type { Message } from '../types';

const GRAVE_CAP = 40;
const SERIOUS_CAP = 70;

const GRADES: Readonly<Record<HazardAct, 'grave' | 'serious'>> = {
  'open-live-panel': 'serious',
  'touch-capacitor-unproved': 'grave',
  'loosen-pressurised-joint': 'grave',
  'vent-refrigerant': 'grave',
  'flame-near-flammable': 'grave',
};

export function capOf({ state }: Case): 40 | 70 | 100 {
  const grades = state.hazardActs.map(({ act }) => GRADES[act]);
  if (grades.includes('grave')) return GRAVE_CAP;
  return grades.includes('serious') ? SERIOUS_CAP : 100;
}

export function hazardsOf({ state }: Case): { met: number; handled: number } {
  return { met: state.hazards.length, handled: state.hazards.filter(({ handled }) => handled).length };
}

export function careReasons({ state }: Case): Message[] {
  return state.hazardActs.map(({ act }) => ({ key: `reason.care.${act}`, values: {} }));
}
