/** The name of a differential: changes with everything that the result depends on. */
import { NUISANCE_SPREAD } from '../attempt/seeds';
import { channelsOf } from './channels';
import { fingerprint } from './fingerprint';
import { cellsOf } from './nodes';
import type { MachineSource } from './source';
import type { DifferentialInput } from './types';

/** Draws of the machine's own differences for each cell. */
export const DRAWS = 24;

export interface DifferentialOptions {
  readonly draws?: number;
  /** seed of the draws of the machine's own differences */
  readonly seed?: string;
}

export function differentialKey(
  input: DifferentialInput,
  source: MachineSource,
  { draws = DRAWS, seed = 'differential' }: DifferentialOptions = {},
): string {
  const { plant, refrigerant, conditions } = input;
  const cells = cellsOf(plant, conditions.mode, source.families, refrigerant);
  return fingerprint({
    physics: source.version,
    plant,
    refrigerant,
    conditions,
    cells,
    draws,
    seed,
    spread: NUISANCE_SPREAD,
    channels: channelsOf(source.plant(input)),
  });
}
