/** What every rival of a callout would show, as it ships with the packs. */
import { REAL_WORLD } from '../../attempt';
import type { Callout, Pack } from '../../attempt/pack/types';
import type { PackedDifferential } from '../../examiner';
import { differentialFile, isCurrent } from '../../examiner/shipped';

const FOLDER = '../../../scenarios/differentials/';
const files = import.meta.glob<PackedDifferential>('../../../scenarios/differentials/*.differential.json', {
  import: 'default',
});

/**
 * Null where none ships, where it cannot be fetched, or where it was made for another machine or physics: then it has
 * to be computed here.
 */
export async function shippedDifferential(pack: Pack, callout: Callout): Promise<PackedDifferential | null> {
  const shipped = await files[FOLDER + differentialFile(pack.id, callout.id)]?.().catch(() => null);
  return shipped && isCurrent(shipped, callout, REAL_WORLD) ? shipped : null;
}
