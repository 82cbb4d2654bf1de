/**
 * The ladder of one pressure: even steps of temperature on the one edge, the pressures that belong to them on the
 * other. Pure geometry, in SI; drawing and words are elsewhere.
 */
import type { Saturation } from '../../attempt/saturation';
import { fromShown, toShown, type UnitSystem } from '../../i18n';

export interface Rung {
  /** 0 bottom … 1 top */
  readonly at: number;
  readonly label: number | null;
}

export interface Ladder {
  readonly low: number;
  readonly high: number;
  readonly temperatures: readonly Rung[];
  readonly pressures: readonly Rung[];
}

/** Saturation temperatures, K, that the ladders of the two sides reach from and to. */
const REACH = { low: [253.15, 293.15], high: [298.15, 338.15] } as const;
/** K beyond the pointer that stay on the ladder. */
const ROOM = 6;

/** `pressure` Pa absolute. `offset` Pa is taken off each pressure before it is labelled: 0, or the air of the site. */
export function ladder(
  saturation: Saturation,
  side: 'high' | 'low',
  pressure: number,
  offset: number,
  system: UnitSystem,
): Ladder {
  const here = saturation.tDew(pressure) ?? REACH[side][0];
  const low = Math.min(REACH[side][0], here - ROOM);
  const high = Math.max(REACH[side][1], here + ROOM);
  const at = (t: number) => (t - low) / (high - low);
  const temperatures = steps(toShown('temperature', low, system), toShown('temperature', high, system), 1, 5).map(
    ({ value, major }) => ({ at: at(fromShown('temperature', value, system)), label: major ? value : null }),
  );
  const kind = offset === 0 ? 'pressure' : 'pressureGauge';
  const from = pressureAt(saturation, low);
  const to = pressureAt(saturation, high);
  const [minor, each] = system === 'si' ? [50, 2] : [10, 2];
  const rungs = steps(toShown(kind, from - offset, system), toShown(kind, to - offset, system), minor, each);
  const pressures: Rung[] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (const { value, major } of rungs) {
    const t = saturation.tDew(fromShown(kind, value, system) + offset);
    if (t === null) continue;
    // Near the bottom the rungs crowd: a label needs its room.
    const free = at(t) - last >= 0.085;
    if (major && free) last = at(t);
    pressures.push({ at: at(t), label: major && free ? value : null });
  }
  return { low, high, temperatures, pressures };
}

/** Multiples of `minor` between two numbers; every `each`-th carries a label. */
function steps(from: number, to: number, minor: number, each: number): { value: number; major: boolean }[] {
  const list = [];
  for (let n = Math.ceil(from / minor); n * minor <= to; n += 1) {
    list.push({ value: n * minor, major: n % each === 0 });
  }
  return list;
}

/** Dew pressure at a temperature, Pa, by halving: the table that the ladder is drawn from runs the other way. */
export function pressureAt(saturation: Saturation, t: number): number {
  let low = 2e4;
  let high = 4.5e6;
  for (let i = 0; i < 60; i += 1) {
    const middle = 0.5 * (low + high);
    const found = saturation.tDew(middle);
    // Beyond the table counts as beyond the wanted temperature on the side that was reached.
    if (found === null ? middle > 1e6 : found > t) high = middle;
    else low = middle;
  }
  return 0.5 * (low + high);
}
