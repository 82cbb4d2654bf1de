/** Differentials that ship with packs: one file a callout, good only for the very machine and physics it was made for. */
import type { World } from '../attempt';
import type { PackedDifferential } from './compact';
import { differentialKey } from './key';
import { sourceOf } from './source';
import type { DifferentialInput } from './types';

/** The file of a callout inside `scenarios/differentials`. */
export function differentialFile(pack: string, callout: string): string {
  return `${pack}.${callout}.differential.json`;
}

/** False when weather, machine, physics or the way of computing have changed since: then it is computed anew. */
export function isCurrent(packed: PackedDifferential, input: DifferentialInput, world: World): boolean {
  return packed.format === 1 && packed.key === differentialKey(input, sourceOf(world));
}
