/** Runs of a machine in time, second by second, with its books kept. */
import { type Controls, createMachine, type Machine, type MachineState, type Snapshot } from '../index';
import { Bookkeeper, type Ledger } from './energy';
import { type Finding, finding } from './finding';
import { type Case, type Readings, readingsOf, setupOf, type Variant } from './machines';
import { SOURCES } from './sources';

export interface Moment {
  readonly t: number;
  readonly readings: Readings;
  readonly controller: string;
  /** the outdoor fan turns; m3/s of its air */
  readonly fan: boolean;
  readonly air: number;
  /** m3/s that the indoor fan moves, 0 while it stands; °C of the room */
  readonly blown: number;
  readonly room: number;
}

export function momentOf(t: number, snapshot: Snapshot): Moment {
  return {
    t,
    readings: readingsOf(snapshot),
    controller: snapshot.controller,
    fan: snapshot.looks.condenserFanSpeed > 0,
    air: snapshot.probes.condenserAirFlow.value,
    blown: snapshot.looks.evaporatorFanSpeed > 0 ? snapshot.probes.supplyAirFlow.value : 0,
    room: snapshot.probes.returnAirTemp.value - 273.15,
  };
}

export interface Run {
  readonly moments: readonly Moment[];
  readonly ledger: Ledger;
  readonly last: MachineState;
}

/** Share of the heat moved within which the first law must close over a transient (a step that was halved shows only its
 * last part, and a change of regime counts a second twice: that is most of it). */
const CLOSES = 2e-3;

export function run(machine: Machine, from: MachineState, controls: Controls, seconds: number): Run {
  const books = new Bookkeeper(machine, from);
  const moments: Moment[] = [];
  let state = from;
  for (let t = 1; t <= seconds; t++) {
    state = machine.step(state, controls, 1);
    const snapshot = books.step(state, 1);
    moments.push(momentOf(t, snapshot));
  }
  return { moments, ledger: books.ledger, last: state };
}

/** First time from which `holds` stays true to the end; NaN where it does not. */
export function settledFrom(moments: readonly Moment[], holds: (m: Moment) => boolean): number {
  let from = Number.NaN;
  for (const moment of moments) {
    if (!holds(moment)) from = Number.NaN;
    else if (Number.isNaN(from)) from = moment.t;
  }
  return from;
}

export function first(moments: readonly Moment[], holds: (m: Moment) => boolean): number {
  return moments.find(holds)?.t ?? Number.NaN;
}

export const lowest = (moments: readonly Moment[], pick: (r: Readings) => number): number =>
  Math.min(...moments.map(({ readings }) => pick(readings)));

export function books(id: string, ledger: Ledger): Finding[] {
  return [
    finding(
      `${id}/first law`,
      SOURCES.own,
      'energy from nowhere over heat moved',
      '-',
      ledger.defect / ledger.moved,
      -CLOSES,
      CLOSES,
    ),
    finding(`${id}/charge`, SOURCES.own, 'largest departure from the charge', 'kg', ledger.mass, 0, 1e-6),
  ];
}

export function machineOf(variant: Variant, change: Case = {}): { machine: Machine; on: Controls } {
  const machine = createMachine(setupOf(variant, change));
  return { machine, on: { ...machine.defaultControls, ...variant.controls } };
}
