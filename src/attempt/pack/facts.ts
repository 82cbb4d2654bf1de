/** What the rules of a pack must know of the machines, from the machines themselves. */
import { FAULTS, plantDescription } from '../../../physics';
import type { MachineFacts } from './rules';

export const machineFacts: MachineFacts = {
  families: FAULTS,
  refrigerants: (plant) => plantDescription(plant).refrigerants,
  modes: (plant) => Object.keys(plantDescription(plant).modes),
  units: (plant) => plantDescription(plant).units ?? [],
};
