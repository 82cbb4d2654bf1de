/** Where something is practised: a callout's machine, weather and bag, and what every cause shows there. */
import { REAL_WORLD } from '../attempt';
import type { Callout } from '../attempt/pack/types';
import type { Bench } from '../examiner/candidates';
import { sourceOf, statesOf } from '../examiner/source';
import type { Differential } from '../examiner/types';

export interface Setting {
  /** pack that the callout is of */
  readonly pack: string;
  readonly callout: Callout;
  readonly differential: Differential;
}

export function benchAt({ plant: id, refrigerant, conditions, toolbag }: Callout): Bench {
  const plant = sourceOf(REAL_WORLD).plant({ plant: id, refrigerant, conditions });
  const { charge } = plant.nameplate(refrigerant);
  return { plant, toolbag, charge, states: statesOf(plant) };
}
