/**
 * Heat pumps that look alike and what parts them (cases of the trade review): dirty outdoor coil against overcharge, leak in
 * the compressor against leak in the reversing valve, lost bulb charge against a drier, undercharge against a coil that
 * nobody defrosts; and faults that are felt in one mode only. At the rating point and in other weather with less indoor air.
 */
import { type Finding, finding } from './finding';
import {
  type Case,
  HEAT_PUMP_R410A,
  HEAT_PUMPS,
  type Reading,
  type Readings,
  steadyReadings,
  type Variant,
} from './machines';
import { SOURCES } from './sources';

type Bound = readonly [Reading, number, number];
interface Pair {
  readonly name: string;
  readonly design: Case;
  readonly weather: Case;
  readonly A: Case['faults'];
  readonly B: Case['faults'];
  /** changes against the healthy machine that both show at the design point, as '+' or '-' beyond twice the uncertainty */
  readonly alike: readonly (readonly [Reading, '+' | '-'])[];
  /** what parts them, in any weather: A less B */
  readonly parts: readonly Bound[];
  /** bands at the design point (R-410A) */
  readonly bandsA: readonly Bound[];
  readonly bandsB: readonly Bound[];
}

const ANY = Number.POSITIVE_INFINITY;
const MILD: Case = { outdoor: 22, nuisance: { evaporatorAir: 0.9 } };
/** What a '+' or '-' must exceed: twice the instruments' uncertainty. */
const SEEN: Readonly<Partial<Record<Reading, number>>> = {
  Te: 1,
  Tc: 1,
  SH: 2.4,
  SHout: 2.4,
  SC: 2.4,
  Td: 1.4,
  supply: 1,
};

const PAIRS: readonly Pair[] = [
  {
    name: 'dirty outdoor coil | overcharge',
    design: {},
    weather: MILD,
    A: { 'condenser-dirty': 0.5 },
    B: { overcharge: 0.25 },
    alike: [['Tc', '+']],
    parts: [
      ['rise', 3, ANY],
      ['SC', -ANY, -2.4],
      ['liquidOverAir', 1.7, ANY],
    ],
    bandsA: [
      ['Tc', 53, 56],
      ['rise', 19, 23],
      ['SC', 5, 8],
      ['liquidOverAir', 11, 15],
    ],
    bandsB: [
      ['Tc', 48, 51],
      ['rise', 10.5, 11.5],
      ['SC', 11, 16],
      ['liquidOverAir', 2, 4],
    ],
  },
  {
    // half of the air lost (what drifts through makes it 0.51) without dirt on the fins, as on the splits
    name: 'outdoor air lost | outdoor air recirculating',
    design: {},
    weather: MILD,
    A: { 'condenser-fan-slow': 0.51 },
    B: { 'air-recirculation': 0.35 },
    alike: [['Tc', '+']],
    parts: [
      ['face', -ANY, -1],
      ['rise', 1, ANY],
      ['TcOverFace', 1.4, ANY],
    ],
    bandsA: [
      ['pd', 3200, 3500],
      ['face', 34.5, 36],
      ['rise', 19, 23],
      ['TcOverFace', 18, 21],
    ],
    bandsB: [
      ['pd', 3200, 3500],
      ['face', 40, 42],
      ['rise', 9, 12],
      ['TcOverFace', 11, 13],
    ],
  },
  {
    name: 'leak in the compressor | leak in the reversing valve',
    design: {},
    weather: MILD,
    A: { 'compressor-leak-by': 0.15 },
    B: { 'reversing-valve-leak': 0.15 },
    alike: [
      ['Te', '+'],
      ['Td', '+'],
    ],
    parts: [['valveRise', -ANY, -2.4]],
    bandsA: [
      ['ps', 1090, 1200],
      ['pd', 2420, 2600],
      ['valveRise', 0, 1.5],
    ],
    bandsB: [
      ['ps', 1090, 1200],
      ['pd', 2420, 2600],
      ['valveRise', 5, 10],
    ],
  },
  {
    name: 'bulb charge lost | heavy drier',
    design: {},
    weather: MILD,
    A: { 'bulb-charge-lost': 0.5 },
    B: { 'drier-restriction': 0.94 },
    alike: [
      ['Te', '-'],
      ['SHout', '+'],
    ],
    parts: [['drierDrop', -ANY, -110]],
    bandsA: [
      ['ps', 530, 720],
      ['SHout', 20, ANY],
      ['SC', 9, 14],
      ['drierFall', -0.3, 0.3],
    ],
    bandsB: [
      ['ps', 530, 720],
      ['SHout', 20, ANY],
      ['SC', 9, 14],
      ['drierFall', 4, 14],
      ['drierDrop', 1000, 1300],
    ],
  },
  {
    name: 'undercharge | iced coil',
    design: { mode: 'heating', outdoor: 2 },
    weather: { mode: 'heating', outdoor: -5, nuisance: { evaporatorAir: 0.9 } },
    A: { undercharge: 0.45 },
    B: { 'defrost-not-starting': 0.7 },
    alike: [
      ['Te', '-'],
      ['supply', '-'],
    ],
    parts: [
      ['SHout', 2.4, ANY],
      ['SC', -ANY, -2.4],
    ],
    bandsA: [
      ['Te', -12, -8],
      ['supply', 26, 30],
      ['SC', -1, 3],
      ['SHout', 10, ANY],
    ],
    bandsB: [
      ['Te', -12, -8],
      ['supply', 26, 30],
    ],
  },
];

function parted(variant: Variant, pair: Pair): Finding[] {
  const of = (base: Case, faults: Case['faults']): Readings => steadyReadings(variant, { ...base, faults });
  const id = `heatPump/${variant.id}/${pair.name}`;
  const item = (name: string, value: number, low: number, high: number): Finding =>
    finding(`${id}/${name}`, SOURCES.review, name, '', value, low, high);
  const healthy = steadyReadings(variant, pair.design);
  const at = (['design', 'weather'] as const).map((where) => ({
    where,
    a: of(pair[where], pair.A),
    b: of(pair[where], pair.B),
  }));
  const [{ a, b }] = at;
  const alike = pair.alike.flatMap(([reading, sign]) =>
    [a, b].map((one, k) => {
      const seen = SEEN[reading] ?? 0;
      const change = one[reading] - healthy[reading];
      const [low, high] = sign === '+' ? [seen, ANY] : [-ANY, -seen];
      return item(`alike in ${reading}, ${k === 0 ? 'A' : 'B'}`, change, low, high);
    }),
  );
  const apart = at.flatMap(({ where, a, b }) =>
    pair.parts.map(([reading, low, high]) =>
      item(`parted by ${reading}, ${where}`, a[reading] - b[reading], low, high),
    ),
  );
  const banded = variant === HEAT_PUMP_R410A;
  const bands = banded
    ? [
        ...pair.bandsA.map(([reading, low, high]) => item(`${reading} of A`, a[reading], low, high)),
        ...pair.bandsB.map(([reading, low, high]) => item(`${reading} of B`, b[reading], low, high)),
      ]
    : [];
  return [...alike, ...apart, ...bands];
}

/** Once the ice is cleared, the undercharged machine stays low and the other is itself again. */
function cleared(variant: Variant): Finding[] {
  const base: Case = { mode: 'heating', outdoor: 2 };
  const item = (name: string, value: number, low: number, high: number): Finding =>
    finding(`heatPump/${variant.id}/ice cleared/${name}`, SOURCES.review, name, '', value, low, high);
  const healthy = steadyReadings(variant, base);
  const short = steadyReadings(variant, { ...base, faults: { undercharge: 0.45 } });
  return [
    item('Te of the machine that was iced', healthy.Te, -6, -4),
    item('SH of the machine that was iced', healthy.SHout, 3, 7),
    item('SC of the machine that was iced', healthy.SC, 6, 12),
    item('Te that undercharge leaves', short.Te - healthy.Te, -ANY, -2),
    item('SH that undercharge leaves', short.SHout, 10, ANY),
    item('SC that undercharge leaves', short.SC, -1, 3),
  ];
}

/** What sits at one valve station or at the outdoor coil's control is not felt in the other mode. */
function oneModeOnly(variant: Variant): Finding[] {
  const faults: Case['faults'][] = [{ 'defrost-not-starting': 0.7 }, { 'defrost-not-ending': 18 }];
  const healthy = steadyReadings(variant, {});
  return faults.map((fault) => {
    const name = Object.keys(fault ?? {})[0];
    const change = steadyReadings(variant, { faults: fault }).capacity - healthy.capacity;
    return finding(
      `heatPump/${variant.id}/one mode only/${name}`,
      SOURCES.review,
      `${name} in cooling`,
      'W',
      change,
      0,
      0,
    );
  });
}

export function heatPumpLookalikes(): readonly Finding[] {
  return HEAT_PUMPS.flatMap((variant) => [
    ...PAIRS.flatMap((pair) => parted(variant, pair)),
    ...cleared(variant),
    ...oneModeOnly(variant),
  ]);
}
