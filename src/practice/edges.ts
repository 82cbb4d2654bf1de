/**
 * Edges of the path: pairs of causes that are taken for one another on a plant. Worked out from what the causes show
 * there, never listed by hand: two causes are alike as far as they move the same readings the same way, and an edge is
 * worth practising if some reading still tells them apart.
 */
import type { CauseId, PlantId } from '../../physics/types';
import { Expectations, separation } from '../examiner/explain/bands';
import type { Moments } from '../examiner/quanta';
import { type Compared, comparedOn, expectedOf, isLook, isOfUnit } from './quanta';
import { benchAt, type Setting } from './setting';

export interface Edge {
  /** plant and both causes, whatever their order */
  readonly id: string;
  readonly plant: PlantId;
  /** the one that the tally names more often first */
  readonly causes: readonly [CauseId, CauseId];
  /** 0 = nothing in common, 1 = moves every reading alike */
  readonly alike: number;
  /** common standard deviations by which the best reading parts them */
  readonly apart: number;
  /** share of calls that have one of the two, from the tally */
  readonly met: number;
}

/** Movements are counted up to this many standard deviations: what is clear is clear. */
const CLEAR = 3;
/** Less in common, and nobody takes one for the other. Judgement: the pairs that the trade warns of lie above it. */
const LEAST_ALIKE = 0.35;
/** Less between them with the best reading, and no reading settles it. */
const LEAST_APART = 1.6;

export function edgeId(plant: PlantId, causes: readonly [CauseId, CauseId]): string {
  return `${plant}/${[...causes].sort().join('+')}`;
}

/** The plant and the causes (in the order of the alphabet) of an id; null where it is none. */
export function edgeOfId(id: string): Pick<Edge, 'plant' | 'causes'> | null {
  const [, plant, a, b] = /^([a-z-]+)\/([a-z-]+)\+([a-z-]+)$/.exec(id) ?? [];
  return plant && a && b ? { plant: plant as PlantId, causes: [a as CauseId, b as CauseId] } : null;
}

/** Causes that the work order names, the most frequent first. */
export function namedCauses({ callout }: Pick<Setting, 'callout'>): CauseId[] {
  const { tally } = callout;
  const named = (Object.keys(tally) as CauseId[]).filter((cause) => (tally[cause] ?? 0) > 0);
  return named.sort((a, b) => tally[b]! - tally[a]! || (a < b ? -1 : 1));
}

/** All edges among the causes that a work order names, the closest first. Readings of single rooms are left out. */
export function edgesOf(setting: Setting): Edge[] {
  const { differential } = setting;
  const { plant } = differential;
  const named = namedCauses(setting);
  const expectations = new Expectations(differential, []);
  const all = comparedOn(benchAt(setting.callout), differential).filter((one) => !isOfUnit(one));
  const numbers = all.filter((one) => one.state === 'running' && !isLook(one));
  const sound = numbers.map((one) => expectedOf(expectations, 'no-fault', one));
  const movements = new Map(
    named.map((cause) => [
      cause,
      numbers.map((one, i) => movement(expectedOf(expectations, cause, one), sound[i] ?? null)),
    ]),
  );
  return named
    .flatMap((a, i) => named.slice(i + 1).map((b) => [a, b] as const))
    .map((causes): Edge => {
      const [a, b] = causes;
      const alike = likeness(movements.get(a)!, movements.get(b)!);
      const apart = alike < LEAST_ALIKE ? 0 : Math.max(0, ...all.map((one) => parted(expectations, causes, one)));
      const met = (setting.callout.tally[a]! + setting.callout.tally[b]!) / 100;
      return { id: edgeId(plant, causes), plant, causes, alike, apart, met };
    })
    .filter(({ alike, apart }) => alike >= LEAST_ALIKE && apart >= LEAST_APART)
    .sort((x, y) => y.alike - x.alike);
}

/** What is met often and looks much alike comes first on the path. */
export function byNeed(a: Edge, b: Edge): number {
  return b.met * b.alike - a.met * a.alike || (a.id < b.id ? -1 : 1);
}

/** Signed standard deviations by which a cause moves a reading from where the sound machine has it, within ±3. */
export function movement(of: Moments | null, sound: Moments | null): number {
  if (!of || !sound) return 0;
  return Math.max(-CLEAR, Math.min(CLEAR, (of.mean - sound.mean) / sound.sd));
}

/** What is moved alike over what is moved at all. */
export function likeness(a: readonly number[], b: readonly number[]): number {
  let common = 0;
  let all = 0;
  a.forEach((x, i) => {
    const y = b[i]!;
    if (x * y > 0) common += Math.min(Math.abs(x), Math.abs(y));
    all += Math.max(Math.abs(x), Math.abs(y));
  });
  return all === 0 ? 0 : common / all;
}

/** Common standard deviations by which a reading parts two causes; 0 where one of them has no such state. */
export function parted(expectations: Expectations, [a, b]: Edge['causes'], one: Compared): number {
  const [x, y] = [a, b].map((cause) => expectedOf(expectations, cause, one));
  return x && y ? separation(x, y) : 0;
}
