/**
 * The cold room at its design point (+2 °C and about 85 % in the room, 32 °C outdoors): bands, what a receiver hides, its
 * look-alike pair, slopes, the valve's bulb, times.
 */

import { fluidTable } from '../fluids/fluid';
import type { Snapshot } from '../index';
import { coldRoomSealed } from './coldRoomSealed';
import { type Finding, finding } from './finding';
import {
  type Case,
  COLD_ROOM,
  COLD_ROOMS,
  type Reading,
  type Readings,
  readingsOf,
  steadySnapshot,
  type Variant,
  WITH_RECEIVER,
} from './machines';
import { SOURCES } from './sources';

const ANY = Number.POSITIVE_INFINITY;

const shot = (variant: Variant, change: Case = {}): Snapshot => steadySnapshot(variant, change);
const read = (variant: Variant, change: Case = {}): Readings => readingsOf(shot(variant, change));

/** K under the bubble line at a station. */
function subcooledAt(variant: Variant, snapshot: Snapshot, id: 'condenser-out' | 'metering-in'): number {
  const { pressure, temperature } = snapshot.stations[id];
  return fluidTable(variant.refrigerant).tBubble(pressure) - temperature;
}

type Bands = Readonly<Partial<Record<Reading, readonly [number, number]>>>;

const R134A: Bands = {
  ps: [200, 245],
  pd: [1050, 1250],
  Te: [-10, -5],
  Tc: [41, 48],
  SHout: [4, 7],
  SHcomp: [8, 20],
  Td: [60, 88],
  DSH: [28, 42],
  drop: [3, 5],
  rise: [7, 11],
  flow: [25, 28],
  current: [7.5, 9.5],
  charge: [3, 6],
  level: [0.35, 0.65],
};
/** Pressures computed for dew −7 °C and bubble 43 °C, ± what those bands allow; the discharge 5…10 K over R-134a (estimate). */
const R448A: Bands = {
  ...R134A,
  ps: [370, 430],
  pd: [1920, 2160],
  Td: [72, 98],
  DSH: [28, 47],
};

function bands(variant: Variant): Finding[] {
  const snapshot = shot(variant);
  const ours = readingsOf(snapshot);
  const source = `${SOURCES.review}; ${SOURCES.field}`;
  const band = (name: string, value: number, low: number, high: number): Finding =>
    finding(
      `coldRoom/${variant.id}/healthy/${name}`,
      source,
      `${name} at +2 °C in the room, 32 °C outdoors`,
      '',
      value,
      low,
      high,
    );
  return [
    ...Object.entries(variant === COLD_ROOM ? R134A : R448A).map(([name, [low, high]]) =>
      band(name, ours[name as Reading], low, high),
    ),
    band('room over evaporating', 2 - ours.Te, 7, 10),
    band('SC into the receiver', subcooledAt(variant, snapshot, 'condenser-out'), 0, 3),
    band('SC at the valve', subcooledAt(variant, snapshot, 'metering-in'), 2, 6),
  ];
}

/** Bounds of a zero: K, from the review; a superheat or subcooling 1.5, a temperature 0.5, a discharge 1. */
const ZERO = { Te: 0.5, SHout: 1.5, Tc: 0.5, SC: 1.5, Td: 1 } as const;
type Sign = keyof typeof ZERO;
/** What a sign must exceed: twice what the instruments tell apart, K. */
const SEEN = { Te: 1, SHout: 2.4, Tc: 1, SC: 2.4, Td: 1 } as const;

interface Row {
  readonly name: string;
  readonly faults: Case['faults'];
  readonly signs: Readonly<Partial<Record<Sign, '0' | '+' | '-' | '-/0'>>>;
  /** further readings with their bounds */
  readonly also: readonly (readonly [Reading, number, number])[];
}

/** Rows "receiver" of the review's table. */
const RECEIVER: readonly Row[] = [
  {
    name: 'undercharge 20 %, receiver not yet empty',
    faults: { undercharge: 0.2 },
    signs: { Te: '0', SHout: '0', Tc: '0', SC: '0', Td: '0' },
    also: [
      ['level', 0, 0.25],
      ['glass', 0, 0],
    ],
  },
  {
    name: 'undercharge 50 %, receiver empty',
    faults: { undercharge: 0.5 },
    signs: { Te: '-', SHout: '+', Tc: '-', Td: '+' },
    also: [
      ['SC', -ANY, 0.5],
      ['level', 0, 0.05],
      ['glass', 0.1, 1],
    ],
  },
  {
    name: 'overcharge 15 %, receiver not yet full',
    faults: { overcharge: 0.15 },
    signs: { Te: '0', SHout: '0', Tc: '0', SC: '0', Td: '0' },
    also: [['level', 0.6, 1]],
  },
  {
    name: 'overcharge 50 %, receiver full',
    faults: { overcharge: 0.5 },
    signs: { Te: '0', SHout: '0', Tc: '+', SC: '+', Td: '+' },
    also: [['level', 0.95, 1]],
  },
  {
    name: 'drier 30 % of the pressure difference',
    faults: { 'drier-restriction': 0.3 },
    signs: { Te: '-', SHout: '+', Tc: '-/0', SC: '0', Td: '+' },
    also: [['drierFall', 2, 8]],
  },
];

function receiverRows(variant: Variant): Finding[] {
  const healthy = read(variant);
  return RECEIVER.flatMap(({ name, faults, signs, also }) => {
    const ours = read(variant, { faults });
    const checked = Object.entries(signs).map(([key, sign]) => {
      const id = key as Sign;
      const low = sign === '0' ? -ZERO[id] : sign === '+' ? SEEN[id] : -ANY;
      const high = sign === '0' ? ZERO[id] : sign === '+' ? ANY : sign === '-' ? -SEEN[id] : ZERO[id];
      const change = ours[id] - healthy[id];
      return finding(`coldRoom/${variant.id}/${name}/${id}`, SOURCES.review, `change of ${id}`, 'K', change, low, high);
    });
    const bounded = also.map(([id, low, high]) =>
      finding(`coldRoom/${variant.id}/${name}/${id} itself`, SOURCES.review, id, '', ours[id], low, high),
    );
    return [...checked, ...bounded];
  });
}

/** An empty receiver against a drier behind a full one: alike behind the drier, told apart before it. */
function emptyOrRestricted(variant: Variant): Finding[] {
  const weathers: readonly (readonly [string, Case])[] = [
    ['design', {}],
    ['22 °C, air −10 %', { outdoor: 22, nuisance: { evaporatorAir: 0.9 } }],
  ];
  return weathers.flatMap(([weather, change]) => {
    // charge that the receiver's own leaves: a little less for the blend
    const missing = variant === COLD_ROOM ? 0.35 : 0.3;
    const short = shot(variant, { ...change, faults: { undercharge: missing } });
    const drier = shot(variant, { ...change, faults: { 'drier-restriction': 0.3 } });
    const a = readingsOf(short);
    const b = readingsOf(drier);
    const item = (name: string, value: number, low: number, high: number): Finding =>
      finding(
        `coldRoom/${variant.id}/empty receiver | drier/${weather}/${name}`,
        SOURCES.review,
        name,
        '',
        value,
        low,
        high,
      );
    const topped = read(variant, { ...change, faults: { undercharge: missing - 0.1 } });
    const still = read(variant, { ...change, faults: { 'drier-restriction': 0.3, overcharge: 0.1 } });
    const apart = [
      item('gas before the drier, A', short.stations['liquid-port'].quality, 0, 0.2),
      item('gas before the drier, B', drier.stations['liquid-port'].quality, -1, -1e-3),
      item('level of A', a.level, 0, 0.06),
      item('level of B', b.level, 0.4, 1),
      item('drier fall of A', a.drierFall, -0.5, 0.5),
      // in other weather: what two clamps can tell apart
      item('drier fall of B', b.drierFall, weather === 'design' ? 3 : 1.2, 8),
      item('glass of A after 10 % more', topped.glass, 0, 0.03),
      item('glass of B after 10 % more', still.glass, 0.03, 1),
    ];
    if (weather !== 'design') return apart;
    const alike = (['A', 'B'] as const).flatMap((letter) => {
      const r = letter === 'A' ? a : b;
      return [
        item(`glass of ${letter}`, r.glass, 0.03, 1),
        ...(variant === COLD_ROOM
          ? [item(`ps of ${letter}`, r.ps, 145, 185)]
          : [item(`Te of ${letter}`, r.Te, -18, -12)]),
        item(`SH of ${letter}`, r.SH, 12, 20),
        item(`Tc of ${letter}`, r.Tc, 36, 41),
      ];
    });
    // the drop is stated for R-134a; the blend's pressures are nearly twice as high
    const drop = variant === COLD_ROOM ? [item('drier drop of B', b.drierDrop, 150, 250)] : [];
    return [...apart, ...drop, ...alike];
  });
}

function slopesAndValve(variant: Variant): Finding[] {
  const healthy = read(variant);
  const hot = read(variant, { outdoor: 40 });
  const mild = read(variant, { outdoor: 22 });
  const lessAir = read(variant, { nuisance: { evaporatorAir: 0.75 } });
  const lost = read(variant, { faults: { 'bulb-charge-lost': 0.5 } });
  const loose = read(variant, { faults: { 'bulb-loose': 0.9 } });
  const review = (name: string, value: number, low: number, high: number): Finding =>
    finding(`coldRoom/${variant.id}/${name}`, SOURCES.review, name, '', value, low, high);
  return [
    review('slopes/Tc per K outdoors', (hot.Tc - healthy.Tc) / 8, 0.95, 1.05),
    review('slopes/Te, 25 % less air', lessAir.Te - healthy.Te, -3, -2),
    review('slopes/SH, 22 °C against 40 °C outdoors', mild.SHout - hot.SHout, -1.5, 1.5),
    review('bulb charge lost/SH', lost.SHout, 12, ANY),
    review('bulb charge lost/ps', lost.ps - healthy.ps, -ANY, -20),
    review('bulb charge lost/drier fall', lost.drierFall, -0.3, 0.3),
    review('bulb charge lost/level', lost.level - healthy.level, 0, ANY),
    review(
      'bulb charge lost while liquid is left/SH',
      read(variant, { faults: { 'bulb-charge-lost': 0.15 } }).SHout - healthy.SHout,
      -1.5,
      1.5,
    ),
    review('bulb loose/SH', loose.SHout - healthy.SHout, -ANY, -2.4),
    review('bulb loose/Td', loose.Td - healthy.Td, -ANY, -2),
  ];
}

export function coldRoom(): readonly Finding[] {
  return [
    ...WITH_RECEIVER.flatMap((variant) => [...bands(variant), ...receiverRows(variant), ...emptyOrRestricted(variant)]),
    ...coldRoomSealed(),
    ...COLD_ROOMS.flatMap(slopesAndValve),
  ];
}
