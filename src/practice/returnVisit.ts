/** The van comes back: after a repair that does not hold, the next visit finds the machine as it was left. */
import { FAULTS } from '../../physics';
import type { CauseId, Faults } from '../../physics/types';
import { type AttemptState, CHARGE_WITHIN, familyOf, isSound, netCharge } from '../attempt';
import type { Callout, Localized, Pack } from '../attempt/pack/types';
import { USUAL_ROOT } from '../attempt/roots';

/** Count in a hundred that a cause gets which the first work order did not name: the repair may have brought it. */
const BROUGHT = 6;

/** What the dispatcher writes on the second work order. */
export interface ReturnTexts {
  readonly title: Localized;
  readonly about: Localized;
  readonly history: Localized;
}

/**
 * Null where the van need not come back: the job is still open, the repair holds, or the machine is sound after all.
 * A leak that nobody mended has let the charge out again by then.
 */
export function returnVisit(state: AttemptState, texts: ReturnTexts): Pack | null {
  const { verification, repairs, site, attempt } = state;
  const repair = repairs.at(-1);
  if (!verification || !repair || repair.fits) return null;
  const faults = asFoundAgain(state.faults, site.callout.faults, isLeaking(state));
  if (isSound(faults)) return null;
  const { lookAlike: _none, ...home } = site.callout;
  const causes = [...new Set(Object.keys(faults).map(familyOf))];
  const callout: Callout = {
    ...home,
    id: `${home.id.slice(0, 56)}-again`,
    text: { ...home.text, history: texts.history },
    faults,
    rootCause: causes.includes(familyOf(Object.keys(home.faults)[0] ?? '')) ? home.rootCause : USUAL_ROOT[causes[0]!],
    tally: withCauses(home.tally, causes),
    mode: 'solo',
  };
  const { weights } = site.pack;
  const id = `van-${attempt.seed.replace(/[^a-z0-9-]/g, '').slice(0, 50)}`;
  return { format: 1, id, version: 1, title: texts.title, about: texts.about, weights, callouts: [callout] };
}

/** The machine was short of refrigerant when it was found, and nobody has mended why. */
function isLeaking({ site, repairs }: AttemptState): boolean {
  const mended = repairs.some(({ remedy }) => remedy === 'find-leak-mend-and-weigh-in');
  return (site.callout.faults.undercharge ?? 0) > 0 && !mended;
}

/** What hoses took within the tolerance of the charge is no fault; the rest stays as it is. */
function asFoundAgain(now: Faults, before: Faults, leaked: boolean): Faults {
  const kept = Object.entries(now).flatMap(([key, severity]): [string, number][] => {
    const family = FAULTS.find(({ id }) => id === familyOf(key))!;
    const isCharge = family.id === 'undercharge' || family.id === 'overcharge';
    if (severity === 0 || (isCharge && Math.abs(netCharge(now)) <= CHARGE_WITHIN)) return [];
    return [[key, Math.max(-family.max, Math.min(family.max, severity))]];
  });
  const faults = Object.fromEntries(kept);
  if (!leaked) return faults;
  const { overcharge: _gone, ...rest } = faults;
  return { ...rest, undercharge: before.undercharge! };
}

/** The tally with these causes in it; what they get is taken from the most frequent. */
function withCauses(tally: Callout['tally'], causes: readonly CauseId[]): Callout['tally'] {
  const counts: Partial<Record<CauseId, number>> = { ...tally };
  for (const cause of causes) {
    if ((counts[cause] ?? 0) > 0) continue;
    const [richest] = (Object.entries(counts) as [CauseId, number][]).reduce((a, b) => (b[1] > a[1] ? b : a));
    counts[richest] = counts[richest]! - BROUGHT;
    counts[cause] = BROUGHT;
  }
  return counts;
}
