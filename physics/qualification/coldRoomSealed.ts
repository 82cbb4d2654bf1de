/**
 * The sealed cold room unit for propane, which has no receiver: bands at its design point, what charge and restrictions do
 * where nothing takes them up, and that its charge stays small.
 */
import { type Finding, finding } from './finding';
import { type Case, COLD_ROOM_R290, type Reading, steadyReadings } from './machines';
import { SOURCES } from './sources';

const ANY = Number.POSITIVE_INFINITY;

/** Pressures, flow and subcooling of the review; temperatures computed for a dew point of −7…−5 °C and propane's own cycle. */
const BANDS: Readonly<Partial<Record<Reading, readonly [number, number]>>> = {
  ps: [360, 410],
  pd: [1430, 1570],
  Te: [-10, -5],
  Tc: [41, 48],
  SHout: [4, 7],
  SHcomp: [8, 20],
  SC: [4, 9],
  Td: [58, 85],
  DSH: [22, 40],
  drop: [3, 5],
  rise: [7, 11],
  flow: [14, 14.5],
  current: [7, 9.5],
};

/** Most that the product standard lets such a unit hold, kg (from memory). */
const LIMIT = 0.5;

interface Row {
  readonly name: string;
  readonly faults: Case['faults'];
  readonly signs: Readonly<Partial<Record<Reading, '+' | '-' | '0' | '0/+' | '0/-'>>>;
}

/** What a sign must exceed and a zero keep within: twice the instruments' uncertainty; the review's bounds. */
const SEEN: Readonly<Partial<Record<Reading, number>>> = { Te: 1, SHout: 2.4, Tc: 1, SC: 2.4, Td: 1 };
const ZERO: Readonly<Partial<Record<Reading, number>>> = { Te: 0.5, SHout: 1.5, Tc: 0.5, SC: 1.5, Td: 1 };

/** A thermostatic valve without receiver: subcooling answers at once, superheat only beyond the valve's stroke. */
const ROWS: readonly Row[] = [
  { name: 'undercharge 10 %', faults: { undercharge: 0.1 }, signs: { Te: '0', SHout: '0', SC: '-' } },
  {
    name: 'undercharge 40 %, valve open',
    faults: { undercharge: 0.4 },
    signs: { Te: '-', SHout: '+', Tc: '-', SC: '-', Td: '+' },
  },
  { name: 'overcharge 15 %', faults: { overcharge: 0.15 }, signs: { Te: '0', SHout: '0', Tc: '+', SC: '+', Td: '+' } },
  {
    name: 'drier, mild',
    faults: { 'drier-restriction': 0.15 },
    signs: { Te: '0', SHout: '0', Tc: '0', SC: '0/+', Td: '0' },
  },
  {
    name: 'drier, heavy',
    faults: { 'drier-restriction': 0.5 },
    signs: { Te: '-', SHout: '+', Tc: '0/-', SC: '+', Td: '+' },
  },
];

export function coldRoomSealed(): Finding[] {
  const healthy = steadyReadings(COLD_ROOM_R290);
  const id = `coldRoom/${COLD_ROOM_R290.id}`;
  const bands = Object.entries(BANDS).map(([name, [low, high]]) =>
    finding(
      `${id}/healthy/${name}`,
      SOURCES.review,
      `${name} at +2 °C in the room, 32 °C outdoors`,
      '',
      healthy[name as Reading],
      low,
      high,
    ),
  );
  const rows = ROWS.flatMap(({ name, faults, signs }) => {
    const ours = steadyReadings(COLD_ROOM_R290, { faults });
    return Object.entries(signs).map(([key, sign]) => {
      const reading = key as Reading;
      const [seen = 0, zero = 0] = [SEEN[reading], ZERO[reading]];
      const low = sign === '+' ? seen : sign === '-' || sign === '0/-' ? -ANY : -zero;
      const high = sign === '-' ? -seen : sign === '+' || sign === '0/+' ? ANY : zero;
      const change = ours[reading] - healthy[reading];
      return finding(`${id}/${name}/${key}`, SOURCES.field, `change of ${key}`, 'K', change, low, high);
    });
  });
  const limit = finding(`${id}/small charge`, SOURCES.review, 'charge, kg', 'kg', healthy.charge, 0.15, LIMIT);
  return [...bands, limit, ...rows];
}
