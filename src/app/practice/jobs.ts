/** Jobs of practice by their name: drawn on the spot, or kept on the device. */
import type { Pack } from '../../attempt/pack/types';
import { isJobPack, jobPack } from '../../practice/jobs';
import { isKept, keptPacks } from './kept';

export { keptPacks } from './kept';

export function practisedPack(packId: string, calloutId: string, shelf: readonly Pack[]): Pack | null {
  if (isJobPack(packId)) return jobPack(packId, calloutId, shelf);
  return isKept(packId) ? (keptPacks().find(({ id }) => id === packId) ?? null) : null;
}
