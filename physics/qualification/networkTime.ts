/** Machines with several units in time: start, stop, fans, rooms, changes outdoors, an hour of misuse, the books of it all. */
import {
  type Controls,
  createMachine,
  type MachineSetup,
  type MachineState,
  PhysicsError,
  plantDescription,
} from '../index';
import { Draw } from './draws';
import { type Finding, finding, statement } from './finding';
import { NetworkBooks } from './networkBooks';
import { SOURCES } from './sources';

type PlantId = MachineSetup['plant'];
type Mode = MachineSetup['conditions']['mode'];

interface Run {
  readonly plant: PlantId;
  readonly mode: Mode;
  readonly from: 'settled' | 'standing';
  readonly seconds: number;
  /** changes of the controls by second */
  readonly script?: readonly (readonly [number, Partial<Controls>])[];
}

interface Sample {
  readonly time: number;
  readonly regime: 'flow' | 'still';
  readonly controller: string;
  readonly ps: number;
  readonly pd: number;
  readonly SH: number;
  readonly SC: number;
  readonly Td: number;
}

interface Course {
  readonly samples: readonly Sample[];
  readonly books: NetworkBooks;
  readonly state: MachineState;
}

function follow({ plant, mode, from, seconds, script = [] }: Run): Course {
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
function first(samples: readonly Sample[], holds: (sample: Sample) => boolean): number {
  return samples.find(holds)?.time ?? Number.POSITIVE_INFINITY;
}

/** First second from which this holds to the end (liquid that lies cold under a rising pressure holds for a moment only). */
function heldFrom(samples: readonly Sample[], holds: (sample: Sample) => boolean): number {
  for (let k = samples.length - 1; k >= 0; k--) if (!holds(samples[k])) return samples[k].time + 1;
  return 0;
}

/** Second after which a reading stays within `band` of its last value. */
function settledFrom(samples: readonly Sample[], of: (sample: Sample) => number, band: number): number {
  const end = of(samples[samples.length - 1]);
  for (let k = samples.length - 1; k >= 0; k--) if (Math.abs(of(samples[k]) - end) > band) return samples[k].time + 1;
  return 0;
}

function books(id: string, { books: kept }: Course): Finding[] {
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

function coolingStart(): Finding[] {
  const course = follow({ plant: 'multi-split', mode: 'cooling', from: 'standing', seconds: 1200 });
  const id = 'networkTime/multi-split/start';
  const { samples } = course;
  const end = samples[samples.length - 1];
  const lowest = Math.min(...samples.map(({ ps }) => ps));
  return [
    finding(
      `${id}/suction falls`,
      SOURCES.review,
      'suction pressure under 1,200 kPa after',
      's',
      first(samples, ({ ps }) => ps < 1200),
      20,
      120,
    ),
    finding(
      `${id}/subcooling comes`,
      SOURCES.review,
      'subcooling stays over 3 K after',
      's',
      heldFrom(samples, ({ SC }) => SC > 3),
      120,
      360,
    ),
    finding(
      `${id}/superheat settles`,
      SOURCES.review,
      'superheat stays within 1 K after',
      's',
      settledFrom(samples, ({ SH }) => SH, 1),
      240,
      900,
    ),
    finding(
      `${id}/no dive`,
      SOURCES.review,
      'lowest suction pressure on the way over the last',
      '-',
      lowest / end.ps,
      0.7,
      1,
    ),
    ...books(id, course),
  ];
}

function heatingStart(): Finding[] {
  const course = follow({ plant: 'multi-split', mode: 'heating', from: 'standing', seconds: 1200 });
  const id = 'networkTime/multi-split/heating start';
  const { samples } = course;
  return [
    finding(
      `${id}/head rises`,
      SOURCES.field,
      'discharge pressure over 2,200 kPa after',
      's',
      first(samples, ({ pd }) => pd > 2200),
      30,
      300,
    ),
    finding(
      `${id}/never trips`,
      SOURCES.field,
      'a safety switch opens after',
      's',
      first(samples, ({ controller }) => controller.startsWith('stopped-on-')),
      1e9,
      Infinity,
    ),
    ...books(id, course),
  ];
}

function fanStops(): Finding[] {
  const outdoor = follow({
    plant: 'multi-split',
    mode: 'cooling',
    from: 'settled',
    seconds: 240,
    script: [[10, { outdoorFanRunning: false }]],
  });
  const indoor = follow({
    plant: 'multi-split',
    mode: 'cooling',
    from: 'settled',
    seconds: 240,
    script: [[10, { indoorFanRunning: false }]],
  });
  const heating = follow({
    plant: 'multi-split',
    mode: 'heating',
    from: 'settled',
    seconds: 300,
    script: [[10, { indoorFanRunning: false }]],
  });
  const trip = (course: Course): number =>
    first(course.samples, ({ controller }) => controller === 'stopped-on-high-pressure') - 10;
  const id = 'networkTime/multi-split';
  return [
    finding(
      `${id}/outdoor fan stops/trip`,
      SOURCES.review,
      'high-pressure switch opens after',
      's',
      trip(outdoor),
      40,
      150,
    ),
    finding(
      `${id}/indoor fans stop, heating/trip`,
      SOURCES.review,
      'high-pressure switch opens after',
      's',
      trip(heating),
      40,
      150,
    ),
    finding(
      `${id}/indoor fans stop, cooling/suction`,
      SOURCES.field,
      'suction pressure two minutes later over before',
      '-',
      indoor.samples[130].ps / indoor.samples[5].ps,
      0.55,
      0.85,
    ),
    statement(
      `${id}/indoor fans stop, cooling/slows down`,
      SOURCES.field,
      'superheat is gone two minutes later',
      indoor.samples[130].SH < 1,
    ),
  ];
}

function stopAndRestart(): Finding[] {
  const course = follow({
    plant: 'multi-split',
    mode: 'cooling',
    from: 'settled',
    seconds: 1500,
    script: [
      [10, { running: false }],
      [700, { running: true }],
    ],
  });
  const id = 'networkTime/multi-split/stop';
  const { samples } = course;
  const stood = samples[690];
  return [
    finding(
      `${id}/shut valves keep the sides apart`,
      SOURCES.review,
      'difference of the sides 11 min after',
      'kPa',
      stood.pd - stood.ps,
      100,
      2000,
    ),
    finding(
      `${id}/restart`,
      SOURCES.field,
      'runs again after it is switched on, delay of three minutes over',
      's',
      first(samples, ({ time, regime }) => time > 701 && regime === 'flow') - 700,
      1,
      120,
    ),
    ...books(id, course),
  ];
}

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
        SOURCES.own,
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
  let mass = 0;
  let errors = 0;
  let untyped = 0;
  let trips = 0;
  for (let k = 0; k < count; k++) {
    const draw = new Draw(seed + k);
    const plant = draw.pick<PlantId>(['multi-split', 'heat-recovery']);
    const description = plantDescription(plant);
    const mode = draw.pick(Object.keys(description.modes) as Mode[]);
    const outdoor =
      273.15 + (mode === 'cooling' ? draw.between(18, 44) : draw.between(-15, mode === 'heating' ? 18 : 28));
    const conditions = { ...(description.modes[mode] ?? description.designConditions), outdoor };
    const fault = draw.pick(['undercharge', 'overcharge', 'condenser-dirty', 'filter-dirty', 'drier-restriction']);
    const faults = { [fault]: 0.4 * draw.share() };
    try {
      const machine = createMachine({ plant, refrigerant: 'R-410A', conditions, faults });
      let controls: Controls = machine.defaultControls;
      let state = machine.start('standing', controls);
      const charge = machine.snapshot(state).probes.refrigerantCharge.value;
      let next = 0;
      let stopped = false;
      for (let time = 0; time < 3600; ) {
        if (time >= next) {
          next = time + draw.between(60, 600);
          const units = Object.fromEntries(
            (description.units ?? []).flatMap((id) =>
              draw.share() < 0.3 ? [[id, draw.pick(['off', 'cooling', 'heating'] as const)]] : [],
            ),
          );
          controls = {
            ...controls,
            units,
            running: draw.share() < 0.85,
            indoorFan: draw.pick(['low', 'high']),
            outdoorFanRunning: draw.share() < 0.9,
            indoorFanRunning: draw.share() < 0.9,
            fixedSpeed: draw.share() < 0.4,
            valveHold: draw.share() < 0.15 ? draw.between(0.05, 1) : null,
            setPoint: 273.15 + draw.between(18, 30),
          };
        }
        const dt = 1 + Math.floor(draw.share() * 30);
        state = machine.step(state, controls, dt);
        time += dt;
        const { probes, balance, controller } = machine.snapshot(state);
        for (const { value } of Object.values(probes)) if (!Number.isFinite(value)) mass = Number.NaN;
        mass = Math.max(mass, balance.mass, Math.abs(probes.refrigerantCharge.value - charge));
        const off = controller.startsWith('stopped-on-');
        if (off && !stopped) trips++;
        stopped = off;
      }
    } catch (error) {
      errors++;
      if (!(error instanceof PhysicsError)) untyped++;
    }
  }
  const id = 'networkTime/misuse';
  return [
    finding(
      `${id}/charge`,
      SOURCES.own,
      'worst departure from the charge, not a number where a reading was none',
      'kg',
      mass,
      0,
      2e-6,
    ),
    finding(`${id}/untyped`, SOURCES.own, 'runs that end in an error without a code', '-', untyped, 0, 0),
    finding(`${id}/given up`, SOURCES.own, 'runs that end in a typed error', '-', errors, 0, 0),
    finding(`${id}/trips`, SOURCES.own, 'safety switches were reached', '-', trips, 3, Infinity),
  ];
}

export function networkTime(): Finding[] {
  return [
    ...coolingStart(),
    ...heatingStart(),
    ...fanStops(),
    ...stopAndRestart(),
    ...roomsChange(),
    ...defrosts(),
    ...rest(),
    ...abused(12, 4000),
  ];
}
