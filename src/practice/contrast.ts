/** The worked contrast of an edge: what both causes do alike, and what parts them. Ninety seconds to read. */
import { Expectations, rangeOf, separation } from '../examiner/explain/bands';
import { type Edge, movement } from './edges';
import { type Compared, comparedOn, expectedOf, isLook, isOfUnit } from './quanta';
import { benchAt, type Setting } from './setting';

export interface Range {
  readonly middle: number;
  readonly low: number;
  readonly high: number;
}

export interface ContrastRow {
  readonly compared: Compared;
  readonly sound: Range;
  /** in the order of the edge */
  readonly of: readonly [Range, Range];
  /** which way each moves against the sound machine */
  readonly ways: readonly [Way, Way];
  readonly apart: number;
}

export type Way = 'lower' | 'same' | 'higher';

export interface Contrast {
  readonly alike: readonly ContrastRow[];
  readonly parting: readonly ContrastRow[];
}

const MOST_ALIKE = 3;
const MOST_PARTING = 2;
/** Standard deviations of the sound machine that count as moved. */
const MOVED = 1;
/** A sum is what a technician thinks in: it goes before a bare reading that parts hardly better. */
const SUMS_FIRST = 1.3;

export function contrastOf(setting: Setting, edge: Pick<Edge, 'causes'>): Contrast {
  const { differential, callout } = setting;
  const expectations = new Expectations(differential, []);
  const rows = comparedOn(benchAt(callout), differential)
    .filter((one) => !isOfUnit(one))
    .flatMap((one): ContrastRow[] => {
      const [sound, x, y] = (['no-fault', ...edge.causes] as const).map((cause) =>
        expectedOf(expectations, cause, one),
      );
      if (!sound || !x || !y) return [];
      const range = (of: typeof x) => ({ middle: of.mean, ...rangeOf(of) });
      const way = (of: typeof x) => wayOf(movement(of, sound));
      return [
        {
          compared: one,
          sound: range(sound),
          of: [range(x), range(y)],
          ways: [way(x), way(y)],
          apart: separation(x, y),
        },
      ];
    });
  const worth = ({ compared, apart }: ContrastRow) => apart * (compared.quantum.sum === undefined ? 1 : SUMS_FIRST);
  const parting = distinct(
    [...rows].sort((a, b) => worth(b) - worth(a)),
    MOST_PARTING,
    [],
  );
  const alike = rows.filter(
    ({ compared, ways: [a, b] }) => compared.state === 'running' && !isLook(compared) && a === b && a !== 'same',
  );
  return {
    parting,
    alike: distinct(
      alike.sort((a, b) => a.apart - b.apart),
      MOST_ALIKE,
      parting,
    ),
  };
}

export function wayOf(moved: number): Way {
  return moved >= MOVED ? 'higher' : moved <= -MOVED ? 'lower' : 'same';
}

/** The first ones that share no reading with each other, nor with those. */
function distinct(rows: readonly ContrastRow[], most: number, not: readonly ContrastRow[]): ContrastRow[] {
  const chosen: ContrastRow[] = [];
  const channels = ({ compared }: ContrastRow) => compared.inputs.map(({ channel }) => channel);
  const taken = new Set(not.flatMap(channels));
  for (const row of rows) {
    if (chosen.length === most) break;
    if (channels(row).some((channel) => taken.has(channel))) continue;
    chosen.push(row);
    for (const channel of channels(row)) taken.add(channel);
  }
  return chosen;
}
