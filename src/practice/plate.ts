/** What the nameplate says of a reading. */
import type { Callout } from '../attempt/pack/types';
import type { Compared } from './quanta';
import { benchAt } from './setting';

/** SI; null where the plate says nothing of it. */
export function plateValue(callout: Callout, { quantum, state }: Compared): number | null {
  const plate = benchAt(callout).plant.nameplate(callout.refrigerant);
  if (quantum.sum === 'superheat') return plate.targetSuperheat;
  if (quantum.sum === 'subcooling') return plate.targetSubcooling;
  if (quantum.sum !== undefined) return null;
  switch (quantum.channel) {
    case 'compressorCurrent':
      return state === 'standing' ? null : plate.ratedCurrent;
    case 'supplyVoltage':
      return plate.supplyVoltage;
    case 'compressorCapacitance':
      return plate.capacitance;
    default:
      return null;
  }
}
