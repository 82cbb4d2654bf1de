/**
 * The heat pump in time: start and stop in either mode, a fan that stops, a defrost from the ice to the heat again, a change of
 * mode. Books are kept from outside over every run.
 */
import type { Controls, Machine } from '../index';
import { type Finding, finding, statement } from './finding';
import { type Case, HEAT_PUMPS, readingsOf, type Variant } from './machines';
import { books, first, lowest, type Moment, machineOf, type Run, run, settledFrom } from './runs';
import { SOURCES } from './sources';

const MODES = ['cooling', 'heating'] as const;

const time = (id: string, value: number, low: number, high: number): Finding =>
  finding(id, SOURCES.review, id.slice(id.lastIndexOf('/') + 1), '', value, low, high);

function starts(variant: Variant): Finding[] {
  return MODES.flatMap((mode) => {
    const id = `heatPump/${variant.id}/time/${mode}`;
    const { machine, on } = machineOf(variant, { mode });
    const normal = readingsOf(machine.steady());
    const started = run(machine, machine.start('standing', on), on, 1800);
    const { moments } = started;
    const down = settledFrom(moments, ({ readings }) => readings.ps < 1.1 * normal.ps) / 60;
    const solid = settledFrom(moments, ({ readings }) => readings.SC > 1) / 60;
    const held = settledFrom(moments, ({ readings }) => Math.abs(readings.SHout - normal.SHout) < 1.5) / 60;
    return [
      time(`${id}/low side down after a start, min`, down, 0.1, 3),
      time(`${id}/subcooling after a start, min`, solid, 2, 6),
      time(`${id}/superheat settled after a start, min`, held, 0.5, 15),
      statement(
        `${id}/start reaches the steady state`,
        SOURCES.model,
        'suction within 2 % of the steady one half an hour after a start',
        Math.abs(moments[1799].readings.ps / normal.ps - 1) < 0.02,
      ),
      ...books(`${id}/start`, started.ledger),
    ];
  });
}

function stops(variant: Variant): Finding[] {
  const id = `heatPump/${variant.id}/time/stop`;
  const { machine, on } = machineOf(variant, {});
  const normal = readingsOf(machine.steady());
  const off = run(machine, machine.start('settled', on), { ...on, running: false }, 1200);
  const level = settledFrom(off.moments, ({ readings: { ps, pd } }) => pd - ps < 0.1 * ps) / 60;
  const calm = run(machine, machine.start('settled', on), { ...on, outdoorFanRunning: false }, 200);
  const tripped = first(calm.moments, ({ controller }) => controller === 'stopped-on-high-pressure');
  const blown = run(machine, machine.start('settled', on), { ...on, indoorFanRunning: false }, 180);
  const heat = machineOf(variant, { mode: 'heating' });
  const closed = run(
    heat.machine,
    heat.machine.start('settled', heat.on),
    { ...heat.on, indoorFanRunning: false },
    200,
  );
  const shut = first(closed.moments, ({ controller }) => controller === 'stopped-on-high-pressure');
  return [
    time(`${id}/equalised through the bleed, min`, level, 2, 8),
    time(`${id}/outdoor fan stopped in cooling: high pressure stops it, s`, tripped, 40, 150),
    time(
      `${id}/indoor fan stopped in cooling: evaporating in 3 min, K`,
      lowest(blown.moments, (r) => r.Te) - normal.Te,
      -15,
      -8,
    ),
    time(`${id}/indoor fan stopped in heating: high pressure stops it, s`, shut, 15, 150),
    ...books(`${id}/off`, off.ledger),
    ...books(`${id}/outdoor fan`, calm.ledger),
    ...books(`${id}/indoor fan`, blown.ledger),
    ...books(`${id}/indoor fan in heating`, closed.ledger),
  ];
}

/** Spans, s, in which the controller says that it defrosts, with what was read in them. */
function defrosts(moments: readonly Moment[]): Moment[][] {
  const spans: Moment[][] = [];
  let open = false;
  for (const moment of moments) {
    const now = moment.controller === 'defrosting';
    if (now && !open) spans.push([]);
    if (now) spans[spans.length - 1].push(moment);
    open = now;
  }
  return spans;
}

const WINTER: Case = { mode: 'heating', outdoor: 2 };
const HOURS = 2.5;

function winter(variant: Variant, faults: Case['faults']): { machine: Machine; on: Controls; ran: Run } {
  const { machine, on } = machineOf(variant, { ...WINTER, faults });
  return { machine, on, ran: run(machine, machine.start('settled', on), on, HOURS * 3600) };
}

function defrost(variant: Variant): Finding[] {
  const id = `heatPump/${variant.id}/time/defrost`;
  const { machine, ran } = winter(variant, {});
  const normal = readingsOf(machine.steady());
  const { moments, ledger } = ran;
  const spans = defrosts(moments);
  const [span = []] = spans;
  const begun = span[0]?.t ?? Number.NaN;
  const ended = span.at(-1)?.t ?? Number.NaN;
  const before = moments[begun - 2]?.readings;
  const back = moments.slice(ended + 300, ended + 301).map(({ readings }) => readings)[0];
  const dead = winter(variant, { 'defrost-not-starting': 0.3 }).ran;
  const endless = defrosts(winter(variant, { 'defrost-not-ending': 30 }).ran.moments);
  const nearFreezing = machineOf(variant, { mode: 'heating', outdoor: 12 });
  const mild = run(nearFreezing.machine, nearFreezing.machine.start('settled', nearFreezing.on), nearFreezing.on, 5400);
  const low = lowest(span, (r) => r.ps);
  const high = Math.max(...span.map(({ readings }) => readings.pd));
  return [
    time(`${id}/first one after, min`, begun / 60, 35, 90),
    time(`${id}/lasts, s`, ended - begun, 120, 360),
    time(`${id}/ice before, share of the passage`, before?.outdoorIce ?? Number.NaN, 0.25, 0.8),
    time(`${id}/ice after, share of the passage`, moments[ended]?.readings.outdoorIce ?? Number.NaN, 0, 0.01),
    time(`${id}/suction dips to, share of the steady one`, low / normal.ps, 0.3, 0.95),
    time(`${id}/head at most in it, share of the steady one`, high / normal.pd, 0.3, 0.95),
    time(`${id}/capacity lost to ice before it`, 1 - (before?.capacity ?? 0) / normal.capacity, 0, 0.15),
    time(
      `${id}/heat five minutes after it, share of the steady one`,
      (back?.capacity ?? 0) / normal.capacity,
      0.9,
      1.1,
    ),
    time(`${id}/number in ${HOURS} h`, spans.length, 2, 3),
    time(`${id}/none where the coil stays above freezing`, defrosts(mild.moments).length, 0, 0),
    time(`${id}/none with a dead control`, defrosts(dead.moments).length, 0, 0),
    time(`${id}/ice grows with a dead control`, dead.moments[dead.moments.length - 1].readings.outdoorIce, 0.7, 1),
    time(`${id}/with a loose sensor it ends by time, s`, endless[0]?.length ?? Number.NaN, 595, 605),
    ...books(id, ledger),
    ...books(`${id} with a dead control`, dead.ledger),
  ];
}

function changeOfMode(variant: Variant): Finding[] {
  const id = `heatPump/${variant.id}/time/change of mode`;
  const { machine, on } = machineOf(variant, { outdoor: 24, indoor: 24, wetBulb: 17 });
  const cool = run(machine, machine.start('settled', on), on, 300);
  const asked: Controls = { ...on, mode: 'heating', setPoint: 273.15 + 27 };
  const heat = run(machine, cool.last, asked, 1500);
  const wanted = readingsOf(machine.steady(asked));
  const turned = first(heat.moments, ({ controller }) => controller === 'heating');
  // the room warms meanwhile: what is given to it is compared, not how warm the air is
  const { drop, ps } = heat.moments[1499].readings;
  return [
    time(`${id}/heats after, s`, turned, 150, 240),
    time(`${id}/rise of the indoor air at the end less the steady one, K`, wanted.drop - drop, -1.5, 1.5),
    time(`${id}/suction at the end over the steady one`, ps / wanted.ps, 0.96, 1.04),
    ...books(id, heat.ledger),
  ];
}

export function heatPumpTimes(): readonly Finding[] {
  return HEAT_PUMPS.flatMap((variant) => [
    ...starts(variant),
    ...stops(variant),
    ...defrost(variant),
    ...changeOfMode(variant),
  ]);
}
