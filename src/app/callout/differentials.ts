/** What every rival of a callout would show, as it ships with the packs. */
import { REAL_WORLD } from '../../attempt';
import type { Callout, Pack } from '../../attempt/pack/types';
import { differentialInput, keyOfDifferential, type PackedDifferential } from '../../examiner';
import { differentialFile, isCurrent } from '../../examiner/shipped';
import { packs } from '../library';

const FOLDER = '../../../scenarios/differentials/';
const files = import.meta.glob<PackedDifferential>('../../../scenarios/differentials/*.differential.json', {
  import: 'default',
});

/**
 * Null where none ships, where it cannot be fetched, or where it was made for another machine or physics: then it has
 * to be computed here.
 */
export async function shippedDifferential(pack: Pack, callout: Callout): Promise<PackedDifferential | null> {
  const name = FOLDER + differentialFile(pack.id, callout.id);
  const load = files[name] ?? files[await sameMachine(callout)];
  const shipped = await load?.().catch(() => null);
  return shipped && isCurrent(shipped, callout, REAL_WORLD) ? shipped : null;
}

/** The file of a shipped callout on the same machine in the same weather: what causes show does not hang on the job. */
async function sameMachine(callout: Callout): Promise<string> {
  const wanted = keyOfDifferential(differentialInput(callout));
  for (const pack of await packs()) {
    const found = pack.callouts.find((each) => keyOfDifferential(differentialInput(each)) === wanted);
    if (found) return FOLDER + differentialFile(pack.id, found.id);
  }
  return '';
}
