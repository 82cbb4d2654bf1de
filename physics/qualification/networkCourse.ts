/** A machine with several units followed second by second, with the books of its energy and charge kept from outside. */
import { type Controls, createMachine, type MachineSetup, type MachineState, plantDescription } from '../index';
import { type Finding, finding } from './finding';
import { NetworkBooks } from './networkBooks';
import { SOURCES } from './sources';

export type PlantId = MachineSetup['plant'];
export type Mode = MachineSetup['conditions']['mode'];

export interface Run {
  readonly plant: PlantId;
  readonly mode: Mode;
  readonly from: 'settled' | 'standing';
  readonly seconds: number;
  /** changes of the controls by second */
  readonly script?: readonly (readonly [number, Partial<Controls>])[];
}

export interface Sample {
  readonly time: number;
  readonly regime: 'flow' | 'still';
  readonly controller: string;
  readonly ps: number;
  readonly pd: number;
  readonly SH: number;
  readonly SC: number;
  readonly Td: number;
}

export interface Course {
  readonly samples: readonly Sample[];
  readonly books: NetworkBooks;
  readonly state: MachineState;
}

/** One run at the rating point of its mode. */
export function follow({ plant, mode, from, seconds, script = [] }: Run): Course {
  const description = plantDescription(plant);
  const conditions = description.modes[mode] ?? description.designConditions;
  const machine = createMachine({ plant, refrigerant: 'R-410A', conditions, faults: {} });
  // rooms that heat are asked for more than they have
  let controls: Controls = { ...machine.defaultControls, ...(mode === 'heating' && { setPoint: 297.15 }) };
  let state = machine.start(from, controls);
  const books = new NetworkBooks(machine, state);
  const samples: Sample[] = [];
  for (let time = 0; time < seconds; time++) {
    for (const [at, change] of script) if (at === time) controls = { ...controls, ...change };
    state = machine.step(state, controls, 1);
    const { regime, controller, probes } = books.step(state, 1);
    samples.push({
      time: time + 1,
      regime,
      controller,
      ps: probes.suctionPressure.value / 1000,
      pd: probes.dischargePressure.value / 1000,
      SH: probes.superheat.value,
      SC: probes.subcooling.value,
      Td: probes.dischargeLineTemp.value - 273.15,
    });
  }
  return { samples, books, state };
}

/** First second at which this holds, or infinity. */
export function first(samples: readonly Sample[], holds: (sample: Sample) => boolean): number {
  return samples.find(holds)?.time ?? Number.POSITIVE_INFINITY;
}

/** First second from which this holds to the end (liquid that lies cold under a rising pressure holds for a moment only). */
export function heldFrom(samples: readonly Sample[], holds: (sample: Sample) => boolean): number {
  for (let k = samples.length - 1; k >= 0; k--) if (!holds(samples[k])) return samples[k].time + 1;
  return 0;
}

/** Second after which a reading stays within `band` of its last value. */
export function settledFrom(samples: readonly Sample[], of: (sample: Sample) => number, band: number): number {
  const end = of(samples[samples.length - 1]);
  for (let k = samples.length - 1; k >= 0; k--) if (Math.abs(of(samples[k]) - end) > band) return samples[k].time + 1;
  return 0;
}

/** What the books of a run say. */
export function books(id: string, { books: kept }: Course): Finding[] {
  const { defect, moved, mass } = kept.ledger;
  return [
    finding(
      `${id}/energy`,
      SOURCES.own,
      'first law over the run, share of the heat moved',
      '-',
      Math.abs(defect) / moved,
      0,
      1e-3,
    ),
    finding(`${id}/charge`, SOURCES.own, 'worst departure from the charge', 'kg', mass, 0, 1e-6),
  ];
}
