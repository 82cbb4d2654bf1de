/** Machines with many units that look alike, and which unit stands out among its siblings. */
import { plantDescription, type Snapshot } from '../index';
import { networkDesign } from '../network/design';
import { type Finding, finding, statement } from './finding';
import {
  LIFT,
  MODULE_SHUT,
  RANKINGS,
  type Ranking,
  RECOVERY_SHORT,
  SHORT_OR_HELD,
  TURNING,
} from './networkExpectations';
import {
  MULTI_R410A,
  type NetworkCase,
  type NetworkReadings,
  type NetworkVariant,
  networkMachine,
  networkRead,
  networkReadings,
  networkShot,
  RECOVERY,
  type UnitReadings,
} from './networkMachines';
import { SOURCES } from './sources';

const ANY = Number.POSITIVE_INFINITY;
const FAR = ['unit5', 'unit6', 'unit7', 'unit8'];

/** 30 % short of charge (A) against unit 3's valve at a tenth (B), forced full load. */
export function shortOrHeld(section: string): Finding[] {
  const { openings } = networkDesign('multi-split', 'R-410A', 'cooling');
  const held = 1 - SHORT_OR_HELD.held / openings[2];
  const weathers: readonly (readonly [string, Partial<NetworkCase>])[] = [
    ['design', {}],
    ['22 °C outdoors', { outdoor: 22 }],
    ['air −10 %', { nuisance: { evaporatorAir: 0.9 } }],
  ];
  return weathers.flatMap(([weather, change]) => {
    const read = (faults: NetworkCase['faults']): NetworkReadings =>
      networkRead(MULTI_R410A, { mode: 'cooling', fixed: true, ...change, faults });
    const a = read({ undercharge: 0.3 });
    const b = read({ 'metering-valve-stuck-closing@unit3': held });
    const third = (r: NetworkReadings): UnitReadings => r.units[2];
    const far = (r: NetworkReadings): number =>
      Math.max(...r.units.filter(({ id }) => FAR.includes(id)).map((unit) => unit.evaporatorSuperheat));
    const others = b.units.filter((_, i) => i !== 2);
    const item = (name: string, value: number, [low, high]: readonly number[]): Finding =>
      finding(
        `${section}/multi-r410a/short of charge | unit 3 held/${weather}/${name}`,
        SOURCES.review,
        name,
        '',
        value,
        low,
        high,
      );
    const least = (r: readonly UnitReadings[], of: (unit: UnitReadings) => number): number => Math.min(...r.map(of));
    const most = (r: readonly UnitReadings[], of: (unit: UnitReadings) => number): number => Math.max(...r.map(of));
    const { apart, alike } = SHORT_OR_HELD;
    const parted = [
      item('SC, B over A', b.SC - a.SC, [apart.SC, ANY]),
      item('superheat of far units, A over B', far(a) - far(b), [apart.farSH, ANY]),
      item(
        'opening of the neighbours, A over B',
        least(a.units, (u) => u.valveOpening) - most(others, (u) => u.valveOpening),
        [apart.opening, 1],
      ),
      item('only unit 3 stands out in B', third(b).evaporatorSuperheat - most(others, (u) => u.evaporatorSuperheat), [
        5,
        ANY,
      ]),
      item(
        'no unit stands out in A',
        most(a.units, (u) => u.evaporatorSuperheat) - least(a.units, (u) => u.evaporatorSuperheat),
        [0, 5],
      ),
    ];
    if (weather !== 'design') return parted;
    const { A, B } = SHORT_OR_HELD;
    return [
      ...parted,
      ...(['A', 'B'] as const).flatMap((letter) => {
        const unit = third(letter === 'A' ? a : b);
        return [
          item(`unit 3 SH of ${letter}`, unit.evaporatorSuperheat, alike.unitSH),
          item(`unit 3 drop of ${letter}`, unit.drop, alike.unitDrop),
        ];
      }),
      item(
        'openings of A, least',
        least(a.units, (u) => u.valveOpening),
        A.opening,
      ),
      item('SH of far units of A', far(a), A.farSH),
      item('SC of A', a.SC, A.SC),
      item('Td of A', a.Td, A.Td),
      item(
        'openings of the neighbours of B, least',
        least(others, (u) => u.valveOpening),
        B.otherOpening,
      ),
      item(
        'openings of the neighbours of B, most',
        most(others, (u) => u.valveOpening),
        B.otherOpening,
      ),
      item(
        'SH of the neighbours of B, least',
        least(others, (u) => u.evaporatorSuperheat),
        B.otherSH,
      ),
      item(
        'SH of the neighbours of B, most',
        most(others, (u) => u.evaporatorSuperheat),
        B.otherSH,
      ),
      item('SC of B', b.SC, B.SC),
      item('Td of B', b.Td, B.Td),
    ];
  });
}

/** Half of the rooms in turn, as the mode asks where nobody says otherwise. */
function duty(variant: NetworkVariant, one: Ranking, id: string): string {
  const ids = plantDescription(variant.plant).units ?? [];
  const asked = one.demands?.[id];
  if (asked !== undefined) return asked;
  return one.mode !== 'simultaneous' ? one.mode : ids.indexOf(id) % 2 === 0 ? 'cooling' : 'heating';
}

/** Who stands out among those that are asked the same, against what the same unit reads on the sound machine. */
export function rankings(section: string, variant: NetworkVariant): Finding[] {
  return RANKINGS.filter(({ mode, fault }) => {
    const recovery = mode === 'simultaneous' || fault.startsWith('changeover');
    return variant === RECOVERY || !recovery;
  }).flatMap((one) => {
    const change: NetworkCase = { mode: one.mode, units: one.demands };
    const ill = networkRead(variant, { ...change, faults: { [one.fault]: one.severity } });
    const siblings = ill.units.filter(({ id }) => duty(variant, one, id) === duty(variant, one, one.worst));
    const value = (unit: UnitReadings): number => unit[one.reading];
    const [sick] = siblings.filter(({ id }) => id === one.worst);
    const rest = siblings.filter(({ id }) => id !== one.worst).map(value);
    const middle = rest.reduce((sum, each) => sum + each, 0) / rest.length;
    const off = value(sick) - middle;
    const furthest = rest.every((each) => Math.abs(each - middle) < Math.abs(off));
    const id = `${section}/${variant.id}/siblings/${one.name}/${one.reading}`;
    return [
      finding(id, SOURCES.review, `${one.worst} off its siblings' mean`, '', off, one.by[0], one.by[1]),
      statement(`${id} first`, SOURCES.review, `${one.worst} is the furthest off`, furthest),
    ];
  });
}

/** K that the air gains over one outdoor module. */
function riseOf(module: string, { probes }: Snapshot): number {
  return probes[`condenserLeavingAirTemp@${module}`].value - probes[`condenserEnteringAirTemp@${module}`].value;
}

/** Heat recovery: what leaves everyone alike. */
export function wholeMachine(section: string): Finding[] {
  const id = `${section}/recovery`;
  const item = (name: string, value: number, [low, high]: readonly number[]): Finding =>
    finding(`${id}/${name}`, SOURCES.review, name, '', value, low, high);
  const spread = (units: readonly UnitReadings[], of: (u: UnitReadings) => number): number =>
    Math.max(...units.map(of)) - Math.min(...units.map(of));
  const coolingShot = networkShot(RECOVERY, { mode: 'cooling', fixed: true });
  const shutShot = networkShot(RECOVERY, { mode: 'cooling', fixed: true, faults: { 'module-valve-shut': 1 } });
  const cooling = networkReadings(RECOVERY, coolingShot);
  const shut = networkReadings(RECOVERY, shutShot);
  const half = networkRead(RECOVERY, { mode: 'simultaneous' });
  const short = networkRead(RECOVERY, { mode: 'simultaneous', faults: { undercharge: 0.3 } });
  const cools = (r: NetworkReadings): UnitReadings[] => r.units.filter(({ role }) => role === 'evaporator');
  const mean = (units: readonly UnitReadings[]): number =>
    units.reduce((sum, { valveOpening }) => sum + valveOpening, 0) / units.length;
  const heated = (r: NetworkReadings): number =>
    r.units.filter(({ role }) => role === 'condenser').reduce((sum, { load }) => sum + load, 0);
  const one = networkRead(RECOVERY, {
    mode: 'simultaneous',
    faults: { 'metering-valve-stuck-closing@unit4': 0.75 },
  });
  const byId = (r: NetworkReadings, unit: string): UnitReadings => r.units.filter((each) => each.id === unit)[0];
  // unit 1 lies 7 m below unit 8, both on pipes of their own length
  const ground = byId(cooling, 'unit1').valveOpening;
  const roof = byId(cooling, 'unit8').valveOpening;
  return [
    item('module valve shut/Tc', shut.Tc - cooling.Tc, MODULE_SHUT.Tc),
    item(
      'module valve shut/rise over a module that works',
      riseOf('module1', shutShot) - riseOf('module1', coolingShot),
      MODULE_SHUT.rise,
    ),
    item('module valve shut/rise over the module that is shut', riseOf('module2', shutShot), [-0.5, 0.5]),
    item(
      'module valve shut/no unit stands out',
      spread(shut.units, (u) => u.evaporatorSuperheat),
      MODULE_SHUT.siblings,
    ),
    item('30 % short, half and half/opening', mean(cools(short)) - mean(cools(half)), RECOVERY_SHORT.opening),
    item('30 % short, half and half/SC of heated rooms', short.SCunit - half.SCunit, RECOVERY_SHORT.SCunit),
    item(
      '30 % short, half and half/no room stands out',
      spread(cools(short), (u) => u.evaporatorSuperheat),
      [0, 5],
    ),
    item('unequal lift/opening of the highest unit over the lowest', roof - ground, LIFT),
    item('a heated room shut off/others take over', heated(one) - heated(half), [-ANY, 0]),
    item('a heated room shut off/hot gas', one.Tc - half.Tc, [0, 6]),
  ];
}

/** The outdoor side over weather and over how many rooms are heated: solves everywhere, turns where it should, no jump. */
export function turning(section: string): Finding[] {
  const ids = plantDescription('heat-recovery').units ?? [];
  const id = `${section}/recovery/outdoor side`;
  const along = (shots: readonly NetworkReadings[], of: (r: NetworkReadings) => number): number =>
    shots.slice(1).reduce((most, shot, i) => Math.max(most, Math.abs(of(shot) - of(shots[i]))), 0);
  const weathers = Array.from({ length: 21 }, (_, k) =>
    networkRead(RECOVERY, { mode: 'simultaneous', outdoor: -10 + 2 * k }),
  );
  const rooms = ids.slice(1).map((_, k) => {
    const units = Object.fromEntries(
      ids.map((unit, i) => [unit, i <= k ? ('heating' as const) : ('cooling' as const)]),
    );
    return networkShot(RECOVERY, { mode: 'simultaneous', units });
  });
  const outdoorHeat = rooms.map((shot) => {
    const r = networkReadings(RECOVERY, shot);
    const sum = (role: string): number =>
      r.units.filter((unit) => unit.role === role).reduce((total, { load }) => total + load, 0);
    return sum('evaporator') + r.power - sum('condenser');
  });
  const falls = outdoorHeat.slice(1).every((heat, k) => heat < outdoorHeat[k] + 500);
  const step = 2 * TURNING.step;
  return [
    finding(
      `${id}/weather: step of Tc`,
      SOURCES.field,
      'largest change over 2 K outdoors',
      'K',
      along(weathers, ({ Tc }) => Tc),
      0,
      step,
    ),
    finding(
      `${id}/weather: step of Te`,
      SOURCES.field,
      'largest change over 2 K outdoors',
      'K',
      along(weathers, ({ Te }) => Te),
      0,
      step,
    ),
    finding(`${id}/one room heated`, SOURCES.review, 'heat that leaves outdoors', 'W', outdoorHeat[0], 2e4, ANY),
    finding(`${id}/seven rooms heated`, SOURCES.review, 'heat that leaves outdoors', 'W', outdoorHeat[6], -ANY, -1e4),
    statement(`${id}/room by room`, SOURCES.review, 'with every further room heated less leaves outdoors', falls),
    statement(
      `${id}/turns`,
      SOURCES.review,
      'some number of rooms leaves the outdoor side with less than a tenth of what is moved',
      outdoorHeat.some((heat) => Math.abs(heat) < 4000),
    ),
  ];
}

/** Crossed pipes and crossed addresses, one room asked at a time: whose pipes change, whose fan runs, whose valve moves. */
export function crossedOrCrossed(section: string): Finding[] {
  const ids = plantDescription('heat-recovery').units ?? [];
  const only = (unit: string, faults: NetworkCase['faults']) => {
    const units = Object.fromEntries(
      ids.map((each) => [
        each,
        each === unit ? ('cooling' as const) : each === 'unit1' ? ('heating' as const) : ('off' as const),
      ]),
    );
    const snapshot = networkMachine(RECOVERY, { mode: 'simultaneous', faults }).steady({ units });
    const of = (each: string) => snapshot.units?.find(({ id }) => id === each);
    return { third: of('unit3'), fourth: of('unit4') };
  };
  const id = `${section}/recovery/crossed pipes | crossed addresses`;
  const sound = only('unit3', {});
  const address = only('unit3', { 'unit-address-crossed@unit3': 1 });
  const pipes = networkRead(RECOVERY, { mode: 'simultaneous', faults: { 'changeover-ports-crossed@unit3': 1 } });
  const roleOf = (unit: string): string | undefined => pipes.units.find((each) => each.id === unit)?.role;
  const say = (name: string, holds: boolean): Finding => statement(`${id}/${name}`, SOURCES.review, name, holds);
  return [
    say('sound: asked alone, unit 3 cools with its own fan', sound.third?.role === 'evaporator' && sound.third.fan > 0),
    say('sound: unit 4 rests', sound.fourth?.role === 'idle' && sound.fourth.fan === 0),
    say(
      'addresses: room 3 asks, unit 4 cools with its fan',
      address.fourth?.role === 'evaporator' && address.fourth.fan > 0,
    ),
    say('addresses: unit 3 rests', address.third?.role === 'idle' && address.third.fan === 0),
    say('pipes: unit 3, asked to cool, is heated', roleOf('unit3') === 'condenser'),
    say('pipes: unit 4, asked to heat, is cooled', roleOf('unit4') === 'evaporator'),
    say(
      'pipes: the valve of unit 4 is driven open against its coil',
      (pipes.units.find((each) => each.id === 'unit4')?.valveOpening ?? 0) > 0.95,
    ),
  ];
}
