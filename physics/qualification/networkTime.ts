/** Machines with several units in time: starts and stops, rooms that change, defrosts, rest, an hour of misuse. */
import { type Controls, createMachine, plantDescription } from '../index';
import { timeDraws } from './anyMachine';
import { type Finding, finding, statement } from './finding';
import { NetworkBooks } from './networkBooks';
import { books, follow, type Mode, type PlantId } from './networkCourse';
import { networkOil } from './networkOil';
import { networkStarts } from './networkStarts';
import { SOURCES } from './sources';

function roomsChange(): Finding[] {
  const course = follow({
    plant: 'heat-recovery',
    mode: 'simultaneous',
    from: 'settled',
    seconds: 1800,
    script: [
      [30, { units: { unit1: 'heating' } }],
      [900, { units: { unit1: 'heating', unit3: 'heating', unit5: 'heating' } }],
    ],
  });
  const id = 'networkTime/heat-recovery/rooms turn to heating';
  const { samples } = course;
  const last = samples[samples.length - 1];
  return [
    statement(
      `${id}/runs on`,
      SOURCES.field,
      'no safety switch opens',
      samples.every(({ controller }) => !controller.startsWith('stopped-on-')),
    ),
    finding(`${id}/head is kept`, SOURCES.review, 'discharge pressure at the end', 'kPa', last.pd, 2400, 3100),
    ...books(id, course),
  ];
}

/** Two hours of heating in damp air just over freezing, on steps of two seconds. */
function defrosts(): Finding[] {
  const plant = plantDescription('multi-split');
  const conditions = { ...(plant.modes.heating ?? plant.designConditions), outdoor: 275.15 };
  const machine = createMachine({ plant: 'multi-split', refrigerant: 'R-410A', conditions, faults: {} });
  const controls: Controls = { ...machine.defaultControls, setPoint: 297.15 };
  let state = machine.start('settled', controls);
  const kept = new NetworkBooks(machine, state);
  const spans: number[] = [];
  const growths: number[] = [];
  let since = 0;
  let melts = false;
  let ice = 0;
  let left = Number.POSITIVE_INFINITY;
  let lowest = Number.POSITIVE_INFINITY;
  let highestBefore = 0;
  for (let time = 2; time <= 7200; time += 2) {
    state = machine.step(state, controls, 2);
    const snapshot = kept.step(state, 2);
    const now = snapshot.controller === 'defrosting';
    if (now !== melts) {
      (now ? growths : spans).push(time - since);
      since = time;
      melts = now;
      if (!now) left = Math.min(left, snapshot.looks.evaporatorFrost);
    }
    ice = Math.max(ice, snapshot.looks.evaporatorFrost);
    const pd = snapshot.probes.dischargePressure.value;
    if (melts) lowest = Math.min(lowest, pd);
    else highestBefore = Math.max(highestBefore, pd);
  }
  const { defect, moved, mass } = kept.ledger;
  const id = 'networkTime/multi-split/defrost';
  return [
    finding(`${id}/first after`, SOURCES.field, 'heating before the first defrost', 'min', growths[0] / 60, 30, 90),
    finding(`${id}/lasts`, SOURCES.review, 'a defrost lasts', 's', spans[0], 120, 360),
    finding(`${id}/ice`, SOURCES.field, 'share of the coil that ice covers at most', '-', ice, 0.5, 1),
    finding(`${id}/clear`, SOURCES.field, 'share that it still covers after the cleanest one', '-', left, 0, 0.05),
    finding(
      `${id}/head crashes`,
      SOURCES.review,
      'lowest over highest head pressure',
      '-',
      lowest / highestBefore,
      0.2,
      0.6,
    ),
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

function rest(): Finding[] {
  const modes: readonly (readonly [PlantId, Mode])[] = [
    ['multi-split', 'cooling'],
    ['multi-split', 'heating'],
    ['heat-recovery', 'cooling'],
    ['heat-recovery', 'heating'],
    ['heat-recovery', 'simultaneous'],
  ];
  return modes.flatMap(([plant, mode]) => {
    const { samples, books: kept } = follow({ plant, mode, from: 'settled', seconds: 300 });
    const id = `networkTime/${plant}/${mode}/rest`;
    const drift = Math.abs(samples[299].ps / samples[0].ps - 1) + Math.abs(samples[299].pd / samples[0].pd - 1);
    return [
      finding(
        `${id}/drift`,
        SOURCES.model,
        'a steady state is a point at rest: pressures drift in five minutes by',
        '-',
        drift,
        0,
        2e-4,
      ),
      finding(
        `${id}/charge`,
        SOURCES.own,
        'mass an hour by what five minutes show',
        'kg',
        kept.ledger.mass * 12,
        0,
        1e-6,
      ),
    ];
  });
}

/** What a person can set, all of it at random and all the time, for an hour. */
function abused(count: number, seed: number): Finding[] {
  const { mass, notNumbers, errors, trips } = timeDraws(count, seed, 1, ['multi-split', 'heat-recovery']);
  const untyped = errors.filter((why) => why.includes(': untyped')).length;
  const id = 'networkTime/misuse';
  return [
    finding(
      `${id}/charge`,
      SOURCES.own,
      'worst departure from the charge, not a number where a reading was none',
      'kg',
      notNumbers > 0 ? Number.NaN : mass,
      0,
      2e-6,
    ),
    finding(`${id}/untyped`, SOURCES.model, 'runs that end in an error without a code', '-', untyped, 0, 0),
    finding(`${id}/given up`, SOURCES.model, 'runs that end in a typed error', '-', errors.length, 0, 0),
    finding(`${id}/trips`, SOURCES.model, 'safety switches were reached', '-', trips, 3, Infinity),
  ];
}

export function networkTime(): Finding[] {
  return [...networkStarts(), ...roomsChange(), ...defrosts(), ...networkOil(), ...rest(), ...abused(12, 4000)];
}
