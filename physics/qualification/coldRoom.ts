/**
 * The cold room at its design point (+2 °C and about 85 % in the room, 32 °C outdoors): bands, what a receiver hides, its
 * look-alike pair, slopes, the valve's bulb, times.
 */

import { fluidTable } from '../fluids/fluid';
import type { Snapshot } from '../index';
import { type Finding, finding, statement } from './finding';
import { type Case, COLD_ROOM, type Reading, type Readings, readingsOf, steadySnapshot } from './machines';
import { books, first, machineOf, run, settledFrom } from './runs';
import { SOURCES } from './sources';

const DESIGN = { outdoor: 32, indoor: 2, wetBulb: 1.05 } as const;
const ANY = Number.POSITIVE_INFINITY;

const shot = (change: Case = {}): Snapshot => steadySnapshot(COLD_ROOM, { ...DESIGN, ...change });
const read = (change: Case = {}): Readings => readingsOf(shot(change));

/** K under the bubble line at a station. */
function subcooledAt(snapshot: Snapshot, id: 'condenser-out' | 'metering-in'): number {
  const { pressure, temperature } = snapshot.stations[id];
  return fluidTable(COLD_ROOM.refrigerant).tBubble(pressure) - temperature;
}

const BANDS: Readonly<Partial<Record<Reading, readonly [number, number]>>> = {
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

function bands(): Finding[] {
  const snapshot = shot();
  const ours = readingsOf(snapshot);
  const source = `${SOURCES.review}; ${SOURCES.field}`;
  const band = (name: string, value: number, low: number, high: number): Finding =>
    finding(
      `coldRoom/cold-room/healthy/${name}`,
      source,
      `${name} at +2 °C in the room, 32 °C outdoors`,
      '',
      value,
      low,
      high,
    );
  return [
    ...Object.entries(BANDS).map(([name, [low, high]]) => band(name, ours[name as Reading], low, high)),
    band('room over evaporating', 2 - ours.Te, 7, 10),
    band('SC into the receiver', subcooledAt(snapshot, 'condenser-out'), 0, 3),
    band('SC at the valve', subcooledAt(snapshot, 'metering-in'), 2, 6),
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

function receiverRows(): Finding[] {
  const healthy = read();
  return RECEIVER.flatMap(({ name, faults, signs, also }) => {
    const ours = read({ faults });
    const checked = Object.entries(signs).map(([key, sign]) => {
      const id = key as Sign;
      const low = sign === '0' ? -ZERO[id] : sign === '+' ? SEEN[id] : -ANY;
      const high = sign === '0' ? ZERO[id] : sign === '+' ? ANY : sign === '-' ? -SEEN[id] : ZERO[id];
      const change = ours[id] - healthy[id];
      return finding(`coldRoom/cold-room/${name}/${id}`, SOURCES.review, `change of ${id}`, 'K', change, low, high);
    });
    const bounded = also.map(([id, low, high]) =>
      finding(`coldRoom/cold-room/${name}/${id} itself`, SOURCES.review, id, '', ours[id], low, high),
    );
    return [...checked, ...bounded];
  });
}

/** An empty receiver against a drier behind a full one: alike behind the drier, told apart before it. */
function emptyOrRestricted(): Finding[] {
  const weathers: readonly (readonly [string, Case])[] = [
    ['design', {}],
    ['22 °C, air −10 %', { outdoor: 22, nuisance: { evaporatorAir: 0.9 } }],
  ];
  return weathers.flatMap(([weather, change]) => {
    const short = shot({ ...change, faults: { undercharge: 0.35 } });
    const drier = shot({ ...change, faults: { 'drier-restriction': 0.3 } });
    const a = readingsOf(short);
    const b = readingsOf(drier);
    const item = (name: string, value: number, low: number, high: number): Finding =>
      finding(
        `coldRoom/cold-room/empty receiver | drier/${weather}/${name}`,
        SOURCES.review,
        name,
        '',
        value,
        low,
        high,
      );
    const topped = read({ ...change, faults: { undercharge: 0.25 } });
    const still = read({ ...change, faults: { 'drier-restriction': 0.3, overcharge: 0.1 } });
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
        item(`ps of ${letter}`, r.ps, 145, 185),
        item(`SH of ${letter}`, r.SH, 12, 20),
        item(`Tc of ${letter}`, r.Tc, 36, 41),
      ];
    });
    return [...apart, item('drier drop of B', b.drierDrop, 150, 250), ...alike];
  });
}

function slopesAndValve(): Finding[] {
  const healthy = read();
  const hot = read({ outdoor: 40 });
  const mild = read({ outdoor: 22 });
  const lessAir = read({ nuisance: { evaporatorAir: 0.75 } });
  const lost = read({ faults: { 'bulb-charge-lost': 0.5 } });
  const loose = read({ faults: { 'bulb-loose': 0.9 } });
  const review = (name: string, value: number, low: number, high: number): Finding =>
    finding(`coldRoom/cold-room/${name}`, SOURCES.review, name, '', value, low, high);
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
      read({ faults: { 'bulb-charge-lost': 0.15 } }).SHout - healthy.SHout,
      -1.5,
      1.5,
    ),
    review('bulb loose/SH', loose.SHout - healthy.SHout, -ANY, -2.4),
    review('bulb loose/Td', loose.Td - healthy.Td, -ANY, -2),
  ];
}

function times(): Finding[] {
  const { machine, on } = machineOf(COLD_ROOM, DESIGN);
  const normal = readingsOf(machine.steady());
  const started = run(machine, machine.start('standing', on), on, 1800);
  const calm = run(machine, machine.start('settled', on), { ...on, outdoorFanRunning: false }, 200);
  const blown = run(machine, machine.start('settled', on), { ...on, indoorFanRunning: false }, 180);
  const stopped = first(calm.moments, ({ controller }) => controller === 'stopped-on-high-pressure');
  const down = first(started.moments, ({ readings }) => readings.ps < 245) / 60;
  const solid = settledFrom(started.moments, ({ readings }) => readings.SC > 1) / 60;
  const held = settledFrom(started.moments, ({ readings }) => Math.abs(readings.SHout - normal.SHout) < 1.5) / 60;
  const fall = Math.min(...blown.moments.map(({ readings }) => readings.Te)) - normal.Te;
  const time = (name: string, value: number, low: number, high: number): Finding =>
    finding(`coldRoom/cold-room/time/${name}`, SOURCES.review, name, '', value, low, high);
  return [
    time('low side down after a start, min', down, 0.1, 2),
    time('subcooling after a start, min', solid, 2, 6),
    time('superheat settled after a start, min', held, 0.5, 15),
    time('outdoor fan stopped: high pressure stops it, s', stopped, 40, 150),
    time('indoor fan stopped: evaporating temperature in 3 min, K', fall, -15, -8),
    statement(
      'coldRoom/cold-room/time/start reaches the steady state',
      SOURCES.own,
      'suction within 1 % of the steady one half an hour after a start',
      Math.abs(started.moments[1799].readings.ps / normal.ps - 1) < 0.01,
    ),
    ...books('coldRoom/cold-room/time/start', started.ledger),
    ...books('coldRoom/cold-room/time/indoor fan stopped', blown.ledger),
    ...books('coldRoom/cold-room/time/outdoor fan stopped', calm.ledger),
  ];
}

export function coldRoom(): readonly Finding[] {
  return [...bands(), ...receiverRows(), ...emptyOrRestricted(), ...slopesAndValve(), ...times()];
}
