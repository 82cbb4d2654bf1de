/** Jobs of practice by their name: drawn on the spot. */
import type { Pack } from '../../attempt/pack/types';
import { isJobPack, jobPack } from '../../practice/jobs';

export function practisedPack(packId: string, calloutId: string, shelf: readonly Pack[]): Pack | null {
  return isJobPack(packId) ? jobPack(packId, calloutId, shelf) : null;
}
