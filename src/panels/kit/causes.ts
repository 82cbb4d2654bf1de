/** The causes of a callout in the order in which every list shows them: the tally's, most frequent first. */
import type { CauseId } from '../../../physics/types';
import type { Callout } from '../../attempt/pack/types';

export function causesOf(callout: Callout): CauseId[] {
  return (Object.entries(callout.tally) as [CauseId, number][])
    .sort(([a, x], [b, y]) => y - x || a.localeCompare(b))
    .map(([cause]) => cause);
}
