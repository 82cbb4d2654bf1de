/** What was seen rather than measured: which look speaks for one cause against another. */
import type { CauseId } from '../../../physics/types';
import { causeLogLikelihoods } from '../belief';
import { LN2 } from '../numeric';
import type { Classed, Differential, Observation } from '../types';

/** Bits by which a look has to speak. */
const SPEAKS = 1;

/** The look that speaks most for the one against the other; null where none speaks by a bit. */
export function tellingLook(
  differential: Differential,
  observations: readonly Observation[],
  one: CauseId,
  other: CauseId,
): Classed | null {
  const looks = observations.filter((each): each is Classed => each.kind === 'classed');
  const weighed = looks.map((look) => {
    const likelihoods = causeLogLikelihoods(differential, [look], [one, other]);
    return { look, bits: (likelihoods.get(one)! - likelihoods.get(other)!) / LN2 };
  });
  const best = weighed.sort((a, b) => b.bits - a.bits)[0];
  return best && best.bits >= SPEAKS ? best.look : null;
}
