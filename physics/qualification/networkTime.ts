/** Machines with several units in time: start, stop, fans, rooms, changes outdoors, an hour of misuse. */
import { type Controls, createMachine, plantDescription } from '../index';
import { timeDraws } from './anyMachine';
import { type Finding, finding, statement } from './finding';
import { NetworkBooks } from './networkBooks';
import { books, type Course, first, follow, heldFrom, type Mode, type PlantId, settledFrom } from './networkCourse';
import { SOURCES } from './sources';

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
    finding(`${id}/untyped`, SOURCES.own, 'runs that end in an error without a code', '-', untyped, 0, 0),
    finding(`${id}/given up`, SOURCES.own, 'runs that end in a typed error', '-', errors.length, 0, 0),
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
