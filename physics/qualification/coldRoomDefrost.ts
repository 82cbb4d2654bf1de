/**
 * The cold rooms' defrosts and a day of them: what starts and ends a defrost, what happens where a part of it fails, and
 * whether the charge is still all there a day later. An electric defrost of a quarter to half an hour: common practice, no source.
 */
import type { MachineState } from '../index';
import type { CircuitState } from '../solve/state';
import { type Finding, finding, statement } from './finding';
import { type Case, COLD_ROOMS, type Variant } from './machines';
import { books, first, type Moment, machineOf, momentOf, type Run, run } from './runs';
import { SOURCES } from './sources';

/** kg of ice on each of the eight segments, and s to the next defrost, with which a defrost is watched. */
const ICED = 0.6;
const SOON = 5;

/** The machine running, iced as after some hours, just before its clock starts a defrost. */
function beforeDefrost(found: MachineState): CircuitState {
  const state = found as CircuitState;
  if (state.cold === undefined) throw new RangeError('no cold room');
  return { ...state, frost: state.frost.map(() => ICED), cold: { ...state.cold, defrostIn: SOON } };
}

interface Watched {
  readonly run: Run;
  /** s from the first to the last second of a word; NaN where it never comes */
  readonly lasts: (word: string) => number;
  readonly iceAfter: number;
}

function watch(variant: Variant, faults: Case['faults'], seconds: number): Watched {
  const { machine, on } = machineOf(variant, { faults });
  const one = run(machine, beforeDefrost(machine.start('settled', on)), on, seconds);
  const lasts = (word: string): number => {
    const times = one.moments.flatMap(({ controller, t }) => (controller === word ? [t] : []));
    return times.length === 0 ? Number.NaN : times[times.length - 1] - times[0] + 1;
  };
  const ended = first(one.moments, ({ controller }) => controller === 'dripping');
  return { run: one, lasts, iceAfter: one.moments[ended - 1]?.readings.ice ?? Number.NaN };
}

/** The words of one defrost, in their order, each once. */
const ORDER = ['cooling', 'pumping-down', 'defrosting', 'dripping', 'fan-waiting', 'cooling'] as const;

function inOrder(moments: readonly Moment[]): boolean {
  const words = moments.flatMap(({ controller }, i) =>
    i > 0 && controller === moments[i - 1].controller ? [] : [controller],
  );
  // between two of them the low-pressure switch may be named for a moment
  const said = words.filter((word) => (ORDER as readonly string[]).includes(word));
  const once = said.filter((word, i) => word !== said[i - 1]);
  return once.length === ORDER.length && once.every((word, i) => word === ORDER[i]);
}

function defrosts(variant: Variant): Finding[] {
  const id = `coldRoom/${variant.id}/defrost`;
  const item = (name: string, value: number, low: number, high: number, source: string = SOURCES.field): Finding =>
    finding(`${id}/${name}`, source, name, '', value, low, high);
  const sound = watch(variant, {}, 2400);
  const weak = watch(variant, { 'defrost-heater-dead': 0.85 }, 2700);
  const late = watch(variant, { 'defrost-not-ending': 25 }, 2700);
  const never = watch(variant, { 'defrost-not-starting': 0.3 }, 300);
  const { moments, ledger } = sound.run;
  const started = first(moments, ({ controller }) => controller === 'defrosting');
  const over = moments.filter(({ t, controller }) => t > started && controller === 'cooling');
  return [
    statement(`${id}/order`, SOURCES.model, 'its words follow each other as the work does', inOrder(moments)),
    item('pump-down before it, s', sound.lasts('pumping-down'), 10, 90),
    item('heater on, min', sound.lasts('defrosting') / 60, 5, 30),
    item('water drips off, min', sound.lasts('dripping') / 60, 2, 5),
    item('fan waits for a cold coil, s', sound.lasts('fan-waiting'), 5, 180),
    item('ice left', sound.iceAfter, 0, 0.001, SOURCES.model),
    statement(
      `${id}/fan stands`,
      SOURCES.model,
      'no air is blown over the coil from the first heat to the cold coil',
      moments
        .filter(
          ({ controller }) => controller === 'defrosting' || controller === 'dripping' || controller === 'fan-waiting',
        )
        .every(({ blown }) => blown === 0),
    ),
    item('room warms by, K', moments[started + 900].room - moments[started].room, 0.5, 4),
    item('it cools again, W', over[over.length - 1]?.readings.capacity ?? Number.NaN, 2500, 6000),
    item('weak heater: ends by the clock, min', weak.lasts('defrosting') / 60, 34, 36),
    item('weak heater: ice left', weak.iceAfter, 0.02, 1),
    item('cold-feeling sensor: longer by, min', (late.lasts('defrosting') - sound.lasts('defrosting')) / 60, 2, 30),
    item('cold-feeling sensor: ice left', late.iceAfter, 0, 0.001),
    statement(
      `${id}/not starting`,
      SOURCES.model,
      'without its clock no defrost starts',
      Number.isNaN(never.lasts('defrosting')),
    ),
    ...books(`${id}/books`, ledger),
  ];
}

/** What ice does as it grows between the fins, hour by hour without a defrost. */
function iceGrows(variant: Variant): Finding[] {
  const { machine, on } = machineOf(variant, { faults: { 'defrost-not-starting': 0.02 } });
  let state = machine.start('settled', on);
  const hours: Moment[] = [momentOf(0, machine.snapshot(state))];
  for (let hour = 1; hour <= 6; hour++) {
    for (let t = 0; t < 3600; t += 30) state = machine.step(state, on, 30);
    hours.push(momentOf(hour, machine.snapshot(state)));
  }
  const id = `coldRoom/${variant.id}/ice`;
  const rises = hours.every((m, i) => i === 0 || m.readings.ice > hours[i - 1].readings.ice);
  const blows = hours.every((m, i) => i === 0 || m.blown < hours[i - 1].blown);
  const last = hours[hours.length - 1];
  return [
    statement(`${id}/grows`, SOURCES.model, 'ice grows from hour to hour', rises),
    statement(`${id}/air falls`, SOURCES.model, 'and air falls', blows),
    finding(
      `${id}/after 4 h`,
      SOURCES.field,
      'share of the passage after 4 h at 85 % humidity',
      '-',
      hours[4].readings.ice,
      0.1,
      0.4,
    ),
    finding(
      `${id}/air after 6 h`,
      SOURCES.field,
      'air left after 6 h without a defrost',
      '-',
      last.blown / hours[0].blown,
      0.4,
      0.9,
    ),
    finding(
      `${id}/suction after 6 h`,
      SOURCES.field,
      'evaporating temperature fell by',
      'K',
      hours[0].readings.Te - last.readings.Te,
      0.2,
      5,
    ),
  ];
}

/** A day with the thermostat cycling and defrosts by the clock: kg that went missing in an hour, and what happened. */
function day(variant: Variant): Finding[] {
  const { machine, on } = machineOf(variant);
  const controls = { ...on, setPoint: 276.15 };
  let state = machine.start('settled', on) as CircuitState;
  const charge = state.charge;
  let missing = 0;
  let stops = 0;
  let heats = 0;
  let warmest = 0;
  let before = 'cooling';
  for (let t = 20; t <= 24 * 3600; t += 20) {
    state = machine.step(state, controls, 20) as CircuitState;
    if (state.controller !== before && state.controller === 'room-satisfied') stops++;
    if (state.controller !== before && state.controller === 'defrosting') heats++;
    before = state.controller;
    warmest = Math.max(warmest, state.room - 273.15);
    if (t % 3600 === 0)
      missing = Math.max(missing, machine.snapshot(state).balance.mass, Math.abs(state.charge - charge));
  }
  const id = `coldRoom/${variant.id}/day`;
  return [
    finding(`${id}/charge`, SOURCES.own, 'largest departure from the charge at the full hours', 'kg', missing, 0, 1e-6),
    finding(`${id}/pump-downs`, SOURCES.field, 'stops of the thermostat in a day', '-', stops, 4, 200),
    finding(`${id}/defrosts`, SOURCES.field, 'defrosts in a day', '-', heats, 4, 8),
    finding(`${id}/room`, SOURCES.field, 'warmest room of the day', '', warmest, 3, 8),
  ];
}

export function coldRoomDefrosts(): readonly Finding[] {
  return COLD_ROOMS.flatMap((variant) => [...defrosts(variant), ...iceGrows(variant), ...day(variant)]);
}
