/**
 * The cold rooms in time: starts, stopped fans, pump-down and restart, rest, the condenser fan's cycling.
 * Figures of the review where it has any; the rest common practice, no source.
 */
import { type Finding, finding, statement } from './finding';
import { type Case, COLD_ROOMS, readingsOf, type Variant } from './machines';
import { books, first, lowest, type Moment, machineOf, momentOf, type Run, run, settledFrom } from './runs';
import { SOURCES } from './sources';

/** K above any room: the thermostat is satisfied at once; K below any: it never is. */
const SATISFIED = 283.15;

/** Seconds until the compressor stops by itself after the thermostat has shut the solenoid. */
function stopsAfter(moments: readonly Moment[]): number {
  return first(moments, ({ controller }) => controller === 'room-satisfied');
}

/** The sides have met (through a solenoid that does not shut and the valve's bleed); then it is switched on. */
function start(variant: Variant): Finding[] {
  const id = `coldRoom/${variant.id}/time`;
  const { machine, on } = machineOf(variant, { faults: { 'solenoid-stuck-open': 0.1 } });
  const normal = readingsOf(machine.steady());
  const started = run(machine, machine.start('standing', on), on, 1800);
  const time = (name: string, value: number, low: number, high: number): Finding =>
    finding(`${id}/${name}`, SOURCES.review, name, '', value, low, high);
  const down = first(started.moments, ({ readings }) => readings.ps < 1.05 * normal.ps) / 60;
  const solid = settledFrom(started.moments, ({ readings }) => readings.SC > 1) / 60;
  const held = settledFrom(started.moments, ({ readings }) => Math.abs(readings.SHout - normal.SHout) < 1.5) / 60;
  return [
    time('low side down after a start from equal, min', down, 0.1, 2),
    time('subcooling after a start from equal, min', solid, 2, 6),
    time('superheat settled after a start, min', held, 0.5, 15),
    statement(
      `${id}/start reaches the steady state`,
      SOURCES.model,
      'suction within 1 % of the steady one half an hour after a start',
      Math.abs((started.moments.at(-1)?.readings.ps ?? 0) / normal.ps - 1) < 0.01,
    ),
    ...books(`${id}/start`, started.ledger),
  ];
}

function stoppedFans(variant: Variant): Finding[] {
  const id = `coldRoom/${variant.id}/time`;
  const { machine, on } = machineOf(variant);
  const normal = readingsOf(machine.steady());
  const calm = run(machine, machine.start('settled', on), { ...on, outdoorFanRunning: false }, 200);
  const blown = run(machine, machine.start('settled', on), { ...on, indoorFanRunning: false }, 180);
  const stopped = first(calm.moments, ({ controller }) => controller === 'stopped-on-high-pressure');
  const fall = lowest(blown.moments, ({ Te }) => Te) - normal.Te;
  const time = (name: string, value: number, low: number, high: number): Finding =>
    finding(`${id}/${name}`, SOURCES.review, name, '', value, low, high);
  return [
    time('outdoor fan stopped: high pressure stops it, s', stopped, 40, 150),
    time('indoor fan stopped: evaporating temperature in 3 min, K', fall, -15, -8),
    ...books(`${id}/indoor fan stopped`, blown.ledger),
    ...books(`${id}/outdoor fan stopped`, calm.ledger),
  ];
}

/** The thermostat is turned up, and ten minutes later down again. */
function pumpDown(variant: Variant, weather: string, change: Case): Finding[] {
  const id = `coldRoom/${variant.id}/pump-down/${weather}`;
  const { machine, on } = machineOf(variant, change);
  const found = machine.start('settled', on);
  const before = readingsOf(machine.snapshot(found));
  const emptied = run(machine, found, { ...on, setPoint: SATISFIED }, 600);
  const again = run(machine, emptied.last, on, 1500);
  const { moments } = emptied;
  const stop = stopsAfter(moments);
  const end = moments[moments.length - 1].readings;
  const cooling = first(again.moments, ({ controller }) => controller === 'cooling');
  const item = (name: string, value: number, low: number, high: number, source: string = SOURCES.field): Finding =>
    finding(`${id}/${name}`, source, name, '', value, low, high);
  return [
    item('cut-out after, s', stop, 20, 60, SOURCES.review),
    statement(
      `${id}/says so`,
      SOURCES.model,
      'it says that it pumps down until then',
      moments.slice(0, Math.max(0, stop - 1)).every(({ controller }) => controller === 'pumping-down'),
    ),
    item('suction at the end over before', end.ps / before.ps, 0.2, 0.7),
    item('suction climbs in the rest, kPa', end.ps - lowest(moments, ({ ps }) => ps), 0, 60),
    item('sides apart ten minutes on, kPa', end.pd - end.ps, change.outdoor === 0 ? 100 : 400, 3000),
    item('solenoid opens to compressor starts, s', cooling, 1, 20),
    item('suction a quarter of an hour later over before', again.moments[900].readings.ps / before.ps, 0.9, 1.2),
    // both runs together: a change of regime counts a second twice, which is much of a run that hardly moves heat
    ...books(`${id}/books`, both(emptied, again)),
  ];
}

const both = (a: Run, b: Run): Run['ledger'] => ({
  defect: a.ledger.defect + b.ledger.defect,
  moved: a.ledger.moved + b.ledger.moved,
  mass: Math.max(a.ledger.mass, b.ledger.mass),
});

/** Switched off at the isolator: who keeps the sides apart, and who lets them meet. */
function rest(variant: Variant): Finding[] {
  const off = (faults: Case['faults'], seconds: number): Moment[] => {
    const { machine, on } = machineOf(variant, { faults });
    let state = machine.start('settled', on);
    const moments: Moment[] = [];
    for (let t = 30; t <= seconds; t += 30) {
      state = machine.step(state, { ...on, running: false }, 30);
      moments.push(momentOf(t, machine.snapshot(state)));
    }
    return moments;
  };
  const apart = (moment: Moment | undefined): number =>
    moment === undefined ? Number.NaN : moment.readings.pd - moment.readings.ps;
  const id = `coldRoom/${variant.id}/rest`;
  const shut = off({}, 4 * 3600);
  const passing = off({ 'solenoid-stuck-open': 0.5 }, 4 * 3600);
  const leaking = off({ 'compressor-leak-by': 0.2 }, 3600);
  const met = settledFrom(passing, (moment) => apart(moment) < 20) / 60;
  return [
    finding(
      `${id}/apart after 4 h`,
      SOURCES.review,
      'a shut solenoid keeps the sides apart',
      'kPa',
      apart(shut.at(-1)),
      200,
      2000,
    ),
    finding(
      `${id}/met through the bleed`,
      SOURCES.field,
      'they meet through an open solenoid and the bleed',
      'min',
      met,
      5,
      180,
    ),
    finding(
      `${id}/met through the compressor`,
      SOURCES.field,
      'a leaking compressor lets them meet within the hour',
      'kPa',
      apart(leaking.at(-1)),
      -60,
      60,
    ),
  ];
}

/** Condenser fan at 0 °C outdoors: both pressures are reached, and the mean is what the steady state declares. */
function fanCycling(variant: Variant): Finding[] {
  const id = `coldRoom/${variant.id}/fan cycling`;
  const { machine, on } = machineOf(variant, { outdoor: 0 });
  const steady = readingsOf(machine.steady());
  const { moments, ledger } = run(machine, machine.start('settled', on), on, 1500);
  const later = moments.slice(600);
  const mean = (pick: (m: Moment) => number): number => later.reduce((sum, m) => sum + pick(m), 0) / later.length;
  const turns = later.filter(({ fan }, i) => i > 0 && fan && !later[i - 1].fan).length;
  const duty = mean(({ fan }) => (fan ? 1 : 0));
  const declared = machine.steady().probes.condenserAirFlow.value;
  const item = (name: string, source: string, value: number, low: number, high: number): Finding =>
    finding(`${id}/${name}`, source, name, '', value, low, high);
  return [
    item('times it starts in a quarter of an hour', SOURCES.field, turns, 3, 60),
    item('share of the time that it runs', SOURCES.field, duty, 0.05, 0.5),
    item('mean head over the declared one', SOURCES.model, mean(({ readings }) => readings.pd) / steady.pd, 0.95, 1.05),
    item(
      'mean suction over the steady one',
      SOURCES.model,
      mean(({ readings }) => readings.ps) / steady.ps,
      0.97,
      1.03,
    ),
    item('mean air over the declared one', SOURCES.model, mean(({ air }) => air) / declared, 0.7, 1.3),
    ...books(`${id}/books`, ledger),
  ];
}

export function coldRoomTimes(): readonly Finding[] {
  return COLD_ROOMS.flatMap((variant) => [
    ...start(variant),
    ...stoppedFans(variant),
    ...pumpDown(variant, 'design', {}),
    ...pumpDown(variant, '46 °C', { outdoor: 46 }),
    ...pumpDown(variant, '0 °C', { outdoor: 0 }),
    ...rest(variant),
    ...fanCycling(variant),
  ]);
}
