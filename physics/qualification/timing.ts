/** What moves in time: start, stopped fans, equalising, restart, a step of the valve. Figures are wall-clock seconds. */

import type { Controls } from '../index';
import { type Finding, finding, statement } from './finding';
import {
  INVERTER_FIXED,
  INVERTER_FREE,
  ORIFICE_R410A,
  type Readings,
  readingsOf,
  steadyReadings,
  VARIANTS,
  type Variant,
} from './machines';
import { books, first, lowest, type Moment, machineOf, run, settledFrom } from './runs';
import { SOURCES } from './sources';

function start(variant: Variant): Finding[] {
  const { machine, on } = machineOf(variant);
  const { moments, ledger } = run(machine, machine.start('standing', on), on, 1500);
  const id = `time/${variant.id}/start`;
  const end = moments[moments.length - 1].readings;
  const steady = steadyReadings(variant);
  // a machine that starts slowly towards its target of evaporating temperature does not undershoot
  const undershoot =
    variant === INVERTER_FREE
      ? []
      : [
          finding(
            `${id}/undershoot`,
            SOURCES.review,
            'lowest suction under the settled one',
            'kPa',
            end.ps - lowest(moments, (r) => r.ps),
            17.5,
            300,
          ),
        ];
  const findings = [
    ...undershoot,
    finding(
      `${id}/head`,
      SOURCES.field,
      'head within 7 % of its level from',
      's',
      settledFrom(moments, ({ readings }) => Math.abs(readings.pd / end.pd - 1) < 0.07),
      20,
      180,
    ),
    finding(
      `${id}/subcooling`,
      SOURCES.review,
      'two thirds of the subcooling from',
      's',
      settledFrom(moments, ({ readings }) => readings.SC > 0.66 * end.SC),
      120,
      360,
    ),
    finding(
      `${id}/superheat`,
      `${SOURCES.review}; ${SOURCES.field}`,
      'superheat within 1.2 K from',
      's',
      settledFrom(moments, ({ readings }) => Math.abs(readings.SH - end.SH) < 1.2),
      300,
      900,
    ),
    // the room has moved a little meanwhile
    finding(
      `${id}/arrives`,
      SOURCES.model,
      'suction pressure over that of the steady state',
      '-',
      end.ps / steady.ps,
      0.97,
      1.03,
    ),
    ...books(id, ledger),
  ];
  return findings;
}

/** From pressures equal at 25 °C, as the review states it. */
function pullDown(): Finding[] {
  const { machine, on } = machineOf(ORIFICE_R410A, { outdoor: 25, indoor: 25, wetBulb: 18 });
  const standing = machine.start('standing', on);
  const { moments } = run(machine, standing, on, 150);
  return [
    finding(
      'time/orifice-r410a/start at 25 °C/equal',
      SOURCES.review,
      'equal pressures before the start',
      'kPa',
      readingsOf(machine.snapshot(standing)).ps,
      1620,
      1680,
    ),
    finding(
      'time/orifice-r410a/start at 25 °C/pull-down',
      SOURCES.review,
      'suction below 1000 kPa from',
      's',
      settledFrom(moments, ({ readings }) => readings.ps < 1000),
      15,
      120,
    ),
  ];
}

function blowerStop(variant: Variant): Finding[] {
  const { machine, on } = machineOf(variant);
  const { moments, ledger } = run(machine, machine.start('settled', on), { ...on, indoorFanRunning: false }, 180);
  const healthy = steadyReadings(variant);
  const id = `time/${variant.id}/blower stop`;
  const fall = (t: number): number => (moments.find((m) => m.t >= t)?.readings.Te ?? Number.NaN) - healthy.Te;
  let up = 0;
  for (let i = 1; i < moments.length; i++) up = Math.max(up, moments[i].readings.Te - moments[i - 1].readings.Te);
  return [
    finding(`${id}/fall`, SOURCES.review, 'evaporating temperature fell in 90 s by', 'K', -fall(90), 8, 15),
    finding(`${id}/steadily`, SOURCES.model, 'largest rise of it within a second', 'K', up, 0, 1),
    ...books(id, ledger),
  ];
}

function condenserFanStop(variant: Variant): Finding[] {
  const { machine, on } = machineOf(variant);
  const healthy = steadyReadings(variant);
  const controls = { ...on, outdoorFanRunning: false };
  const { moments, ledger } = run(machine, machine.start('settled', on), controls, 160);
  const trip = first(moments, ({ controller }) => controller === 'stopped-on-high-pressure');
  const before = moments.filter(({ t }) => t < trip);
  const id = `time/${variant.id}/condenser fan stop`;
  return [
    finding(`${id}/trip`, SOURCES.review, 'high-pressure switch opens after', 's', trip, 40, 150),
    finding(
      `${id}/only up`,
      SOURCES.model,
      'head never falls below where it was by',
      'kPa',
      healthy.pd - lowest(before, (r) => r.pd),
      -500,
      14,
    ),
    ...books(id, ledger),
  ];
}

function equalise(variant: Variant): Finding[] {
  const { machine, on } = machineOf(variant);
  const { moments, ledger, last } = run(machine, machine.start('settled', on), { ...on, running: false }, 600);
  const id = `time/${variant.id}/stop`;
  const apart = ({ readings }: Moment): boolean => readings.pd - readings.ps < 20;
  const findings = [
    ...(variant.plant === 'orifice-split'
      ? [
          finding(
            `${id}/equal`,
            `${SOURCES.review}; ${SOURCES.field}`,
            'pressures within 20 kPa from',
            's',
            settledFrom(moments, apart),
            50,
            300,
          ),
        ]
      : [
          finding(
            `${id}/apart`,
            SOURCES.review,
            'a closed valve keeps them apart for 10 min by',
            'kPa',
            moments[moments.length - 1].readings.pd - moments[moments.length - 1].readings.ps,
            200,
            2000,
          ),
        ]),
    ...books(id, ledger),
  ];
  const again = run(machine, last, on, 900);
  const end = again.moments[again.moments.length - 1];
  const steady = steadyReadings(variant);
  return [
    ...findings,
    statement(`${id}/restarts`, SOURCES.model, 'it runs again', end.controller.startsWith('cooling')),
    finding(
      `${id}/restart arrives`,
      SOURCES.model,
      'head over that of the steady state 15 min later',
      '-',
      end.readings.pd / steady.pd,
      0.97,
      1.05,
    ),
    ...books(`${id}/restart`, again.ledger),
  ];
}

function rests(variant: Variant): Finding[] {
  const { machine, on } = machineOf(variant);
  const settled = machine.start('settled', on);
  let state = settled;
  for (let k = 0; k < 60; k++) state = machine.step(state, on, 10);
  const a = readingsOf(machine.snapshot(settled));
  const b = readingsOf(machine.snapshot(state));
  const moved = Math.max(Math.abs(a.ps - b.ps), Math.abs(a.pd - b.pd), Math.abs(a.SH - b.SH), Math.abs(a.SC - b.SC));
  return [finding(`time/${variant.id}/at rest`, SOURCES.model, 'kPa or K moved in ten minutes', '', moved, 0, 1e-3)];
}

/** No reading flickers or jumps from second to second once the first moments are over. */
function calm(variant: Variant, name: string, change: Partial<Controls>): Finding[] {
  const { machine, on } = machineOf(variant);
  const { moments } = run(machine, machine.start('settled', on), { ...on, ...change }, 150);
  let flicker = 0;
  let jump = 0;
  for (let i = 2; i < moments.length; i++) {
    const [a, b, c] = [moments[i - 2].readings, moments[i - 1].readings, moments[i].readings];
    jump = Math.max(jump, Math.abs(c.Td - b.Td));
    if (i > 20) flicker = Math.max(flicker, Math.abs(a.pd - 2 * b.pd + c.pd) / 4);
  }
  const id = `time/${variant.id}/${name}`;
  return [
    finding(`${id}/head flickers`, SOURCES.model, 'head about its own course, from 20 s on', 'kPa', flicker, 0, 1),
    finding(
      `${id}/discharge jumps`,
      SOURCES.model,
      'largest change of the discharge within a second',
      'K',
      jump,
      0,
      15,
    ),
  ];
}

function valveStep(): Finding[] {
  const { machine, on } = machineOf(INVERTER_FIXED);
  const settled = machine.start('settled', on);
  const opening = readingsOf(machine.snapshot(settled)).opening;
  const before = readingsOf(machine.snapshot(settled));
  const narrow = run(machine, settled, { ...on, valveHold: 0.6 * opening }, 60);
  const wide = run(machine, settled, { ...on, valveHold: 1.6 * opening }, 60);
  const at = (moments: readonly Moment[], t: number): Readings => moments[t - 1].readings;
  const id = 'time/inverter-fixed/valve';
  const source = SOURCES.field;
  return [
    finding(
      `${id} closes/suction`,
      source,
      'suction after 20 s falls by',
      'kPa',
      before.ps - at(narrow.moments, 20).ps,
      35,
      500,
    ),
    finding(
      `${id} closes/superheat`,
      source,
      'superheat after 60 s rises by',
      'K',
      at(narrow.moments, 60).SH - before.SH,
      5,
      40,
    ),
    finding(
      `${id} opens/suction`,
      source,
      'suction after 20 s rises by',
      'kPa',
      at(wide.moments, 20).ps - before.ps,
      17.5,
      200,
    ),
    finding(`${id} opens/superheat`, source, 'superheat after 20 s', 'K', at(wide.moments, 20).SH, -0.1, 1),
    ...books(`${id} closes`, narrow.ledger),
    ...books(`${id} opens`, wide.ledger),
  ];
}

export function timing(): Finding[] {
  return [
    ...VARIANTS.flatMap((variant) => [
      ...start(variant),
      ...blowerStop(variant),
      ...condenserFanStop(variant),
      ...equalise(variant),
      ...rests(variant),
    ]),
    ...pullDown(),
    ...valveStep(),
    ...VARIANTS.flatMap((variant) => calm(variant, 'low fan', { indoorFan: 'low' })),
    ...[INVERTER_FREE, INVERTER_FIXED].flatMap((variant) => [
      ...calm(variant, 'valve wide', { valveHold: 0.9 }),
      ...calm(variant, 'valve narrow', { valveHold: 0.3 }),
    ]),
  ];
}
