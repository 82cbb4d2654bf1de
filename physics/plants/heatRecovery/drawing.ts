/**
 * A house of three storeys with eight rooms: three outdoor modules stand in a row beside it and share three mains – liquid,
 * suction gas, hot gas – that run along under them to the shaft. Each unit meets both gas mains in a changeover box.
 */
import { MODULE, MODULE_ENDS, moduleOf } from '../outdoorModule';
import { ROOM, riser, runOf, type Storey, storeyOf } from '../rooms';
import type { DrawnPath, DrawnPipe, PlantDrawing } from '../types';

const SECOND: Storey = { id: 'second', ceiling: 1.3, units: ['unit6', 'unit7', 'unit8'] };
const FIRST: Storey = { id: 'first', ceiling: 4.8, units: ['unit3', 'unit4', 'unit5'] };
const FLOOR: Storey = { id: 'ground', ceiling: 8.3, units: ['unit1', 'unit2'] };
const ALL = [SECOND, FIRST, FLOOR];

const GROUND = 11.5;
const WALL = 14.9;
const SHAFT = { liquid: 15.15, gas: 15.5, hot: 15.9 } as const;
const FIRST_ROOM = 16.3;
const END = FIRST_ROOM + 3 * (ROOM.w + ROOM.wall) - ROOM.wall;

/** The modules stand on a frame, their mains below them. */
const FRAME = 1.05;
const PITCH = 4.2;
const TOP = GROUND - FRAME - MODULE.h;
export const MODULES = ['module1', 'module2', 'module3'].map((id, i) => ({
  id,
  x: 0.85 + i * PITCH,
  y: TOP,
  share: 1 / 3,
}));
/** Heights of the mains under the modules, and where they rise beside the wall. */
export const MAINS = { liquid: GROUND - 0.2, suction: GROUND - 0.42, hot: GROUND - 0.66 } as const;
export const RISE = { liquid: 14.4, suction: 13.88, hot: 13.36 } as const;
const ENTRY = { liquid: 9.0, suction: 9.4, hot: 9.8 } as const;

export const STOREYS = ALL.map((storey) => storeyOf(storey, FIRST_ROOM, SHAFT));
const DRAWN = MODULES.map((module) => moduleOf(module, true));
const EVERY = ALL.flatMap(({ units }) => units);
const ABOVE = [...FIRST.units, ...SECOND.units];

type Main = 'liquid' | 'suction' | 'hot';
const KEY = { liquid: 'liquid-port', suction: 'suction-port', hot: 'hot-header' } as const;
const BORE = { liquid: 0.0127, suction: 0.0254, hot: 0.0222 } as const;
/** x in a module at which it meets each main. */
const DROP = { liquid: 2.75, suction: 1.4, hot: 3.15 } as const;

/** From each module down to a main, and the main from there on to the next module. */
function collect(main: Main): DrawnPipe[] {
  const outward = main !== 'suction';
  const only = main === 'suction' ? 'cooling' : 'heating';
  return MODULES.flatMap(({ id, x, y, share }, i): DrawnPipe[] => {
    const end = MODULE_ENDS[main];
    const at = x + DROP[main];
    const drop: DrawnPath = [
      [x + end[0], y + end[1]],
      ...(main === 'suction' ? [] : [[at, y + end[1]] as const]),
      [at, MAINS[main]],
    ];
    const next = MODULES[i + 1];
    const onward: DrawnPath = next ? [[next.x + DROP[main], MAINS[main]]] : [];
    const pipe = (name: string, points: DrawnPath, count: number): DrawnPipe => ({
      id: `${name}@${id}`,
      from: KEY[main],
      to: KEY[main],
      points: outward ? points : [...points].reverse(),
      diameter: BORE[main],
      insulated: main !== 'liquid',
      ...(main === 'liquid'
        ? { carries: { of: MODULES.slice(i + 1 - count, i + 1).map((module) => module.id) } }
        : { carries: { of: EVERY, only }, share: count * share }),
    });
    if (i === 0) return [pipe(`${main}-main`, [...drop, ...onward], 1)];
    const here: DrawnPath = [[at, MAINS[main]]];
    return [pipe(`${main}-drop`, drop, 1), ...(next ? [pipe(`${main}-main`, [...here, ...onward], i + 1)] : [])];
  });
}

/** Up beside the wall and into the shaft. */
function rise(main: Main, id: string, from: DrawnPipe['from'], to: DrawnPipe['to'], points: DrawnPath): DrawnPipe {
  const only = main === 'suction' ? 'cooling' : 'heating';
  return {
    id,
    from,
    to,
    points,
    diameter: BORE[main],
    insulated: main !== 'liquid',
    carries: { of: EVERY, ...(main === 'liquid' ? {} : { only }) },
  };
}

const DRIER_Y = 9.95;
const LAST = MODULES[MODULES.length - 1];

function lines(): DrawnPipe[] {
  return [
    ...collect('liquid'),
    ...collect('suction'),
    ...collect('hot'),
    rise('liquid', 'liquid-riser', 'liquid-port', 'drier-out', [
      [LAST.x + DROP.liquid, MAINS.liquid],
      [RISE.liquid, MAINS.liquid],
      [RISE.liquid, DRIER_Y],
    ]),
    rise('liquid', 'liquid-line', 'drier-out', 'metering-in', [
      [RISE.liquid, DRIER_Y],
      [RISE.liquid, ENTRY.liquid],
      [SHAFT.liquid, ENTRY.liquid],
    ]),
    rise('suction', 'suction-line', 'suction-header', 'suction-port', [
      [SHAFT.gas, ENTRY.suction],
      [RISE.suction, ENTRY.suction],
      [RISE.suction, MAINS.suction],
      [LAST.x + DROP.suction, MAINS.suction],
    ]),
    rise('hot', 'hot-line', 'hot-header', 'hot-header', [
      [LAST.x + DROP.hot, MAINS.hot],
      [RISE.hot, MAINS.hot],
      [RISE.hot, ENTRY.hot],
      [SHAFT.hot, ENTRY.hot],
    ]),
    ...risers('liquid', 'metering-in', SHAFT.liquid, ENTRY.liquid, 'liquid'),
    ...risers('suction', 'suction-header', SHAFT.gas, ENTRY.suction, 'gas'),
    ...risers('hot', 'hot-header', SHAFT.hot, ENTRY.hot, 'hot'),
  ];
}

/** In the shaft from where the main comes in up to each storey. */
function risers(
  main: Main,
  key: DrawnPipe['from'],
  x: number,
  entry: number,
  run: 'liquid' | 'gas' | 'hot',
): DrawnPipe[] {
  const [top, middle, low] = ALL.map((storey) => runOf(storey, run)) as [number, number, number];
  return [
    riser(`${main}-up-1`, key, x, entry, low, EVERY, main),
    riser(`${main}-up-2`, key, x, low, middle, ABOVE, main),
    riser(`${main}-up-3`, key, x, middle, top, SECOND.units, main),
  ];
}

const shaft = { x: WALL, w: FIRST_ROOM - 0.15 - WALL, h: ROOM.h };

export const HEAT_RECOVERY_DRAWING: PlantDrawing = {
  width: 31,
  height: 12.6,
  ground: GROUND,
  sparse: 2.4,
  views: [
    ...MODULES.map(({ id, x }) => ({ id: `outdoor@${id}`, x: x - 0.75, y: TOP - 1.1, w: PITCH, h: 5.85 })),
    { id: 'lines', x: 12.7, y: 7.6, w: 3.5, h: 4.2 },
    ...STOREYS.flatMap(({ views }) => views),
  ],
  blocks: [
    { id: 'ground', kind: 'ground', x: 0, y: GROUND, w: 31, h: 1.1 },
    ...ALL.map(({ id, ceiling }) => ({ id: `shaft-${id}`, kind: 'loft' as const, y: ceiling, ...shaft })),
    ...STOREYS.flatMap(({ blocks }) => blocks),
    {
      id: 'store',
      kind: 'plantroom',
      x: FIRST_ROOM + 2 * (ROOM.w + ROOM.wall),
      y: FLOOR.ceiling,
      w: ROOM.w,
      h: ROOM.h,
    },
    {
      id: 'wall-store',
      kind: 'wall',
      x: FIRST_ROOM + 2 * (ROOM.w + ROOM.wall) - ROOM.wall,
      y: FLOOR.ceiling,
      w: ROOM.wall,
      h: ROOM.h,
    },
    ...ALL.map(({ id, ceiling }) => ({
      id: `shaft-wall-${id}`,
      kind: 'wall' as const,
      x: FIRST_ROOM - 0.15,
      y: ceiling,
      w: 0.15,
      h: ROOM.h,
    })),
    ...[SECOND, FIRST].map(({ id, ceiling }) => ({
      id: `floor-${id}`,
      kind: 'wall' as const,
      x: WALL,
      y: ceiling + ROOM.h,
      w: END - WALL,
      h: ROOM.slab,
    })),
    { id: 'outer-wall', kind: 'wall', x: WALL - 0.25, y: 1.0, w: 0.25, h: GROUND - 1 },
    { id: 'far-wall', kind: 'wall', x: END, y: 1.0, w: 0.25, h: GROUND - 1 },
    { id: 'roof', kind: 'roof', x: WALL - 0.45, y: 0.95, w: END - WALL + 0.9, h: 0.35 },
  ],
  parts: [
    ...DRAWN.flatMap(({ parts }) => parts),
    { id: 'suction-valve', kind: 'service-valve', x: RISE.suction - 0.13, y: 10.62, w: 0.26, h: 0.26 },
    { id: 'drier', kind: 'drier', x: RISE.liquid - 0.11, y: DRIER_Y, w: 0.22, h: 0.5 },
    { id: 'data-panel', kind: 'thermostat', x: 12.92, y: 8.3, w: 0.3, h: 0.42 },
    { id: 'feeder-box', kind: 'control-box', x: 12.85, y: 9.05, w: 0.44, h: 0.7 },
    { id: 'terminals', kind: 'terminals', x: 12.9, y: 9.2, w: 0.34, h: 0.2 },
    {
      id: 'store-shelf',
      kind: 'counter',
      x: FIRST_ROOM + 2 * (ROOM.w + ROOM.wall) + 1.6,
      y: FLOOR.ceiling + 2.3,
      w: 2.4,
      h: 0.9,
    },
    ...STOREYS.flatMap(({ parts }) => parts),
  ],
  pipes: [...DRAWN.flatMap(({ pipes }) => pipes), ...lines(), ...STOREYS.flatMap(({ pipes }) => pipes)],
  air: [...DRAWN.flatMap(({ air }) => air), ...STOREYS.flatMap(({ air }) => air)],
  wires: [
    {
      id: 'supply-feed',
      points: [
        [WALL - 0.25, 7.95],
        [14.05, 7.95],
        [14.05, 8.9],
        [13.07, 8.9],
        [13.07, 9.2],
      ],
      live: true,
    },
  ],
  drain: [
    [FIRST_ROOM + 2.4, FLOOR.ceiling + 2.4],
    [FIRST_ROOM + 2.4, FLOOR.ceiling + 2.48],
    [FIRST_ROOM - 0.3, FLOOR.ceiling + 2.56],
    [FIRST_ROOM - 0.3, FLOOR.ceiling + 2.8],
  ],
};
