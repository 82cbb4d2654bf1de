/** Machines with several units: from rest to running, fans that stop under load, a stop and what follows it. */
import { type Finding, finding, statement } from './finding';
import { books, type Course, first, follow, heldFrom, settledFrom } from './networkCourse';
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

export function networkStarts(): Finding[] {
  return [...coolingStart(), ...heatingStart(), ...fanStops(), ...stopAndRestart()];
}
