/**
 * A house on three levels with eight rooms: the outdoor module stands beside it at the level of the ground floor, its two
 * pipes run to a shaft behind the outer wall and branch from there, a storey at a time and then a room at a time.
 */
import { MODULE, MODULE_ENDS, moduleOf } from '../outdoorModule';
import { ROOM, riser, runOf, type Storey, storeyOf } from '../rooms';
import type { DrawnPipe, PlantDrawing } from '../types';

const UPPER: Storey = { id: 'upper', ceiling: 1.3, units: ['unit4', 'unit5', 'unit6'] };
const MIDDLE: Storey = { id: 'middle', ceiling: 4.8, units: ['unit1', 'unit2', 'unit3'] };
const LOWER: Storey = { id: 'lower', ceiling: 8.3, units: ['unit7', 'unit8'] };

/** x of the outer wall's inner face, of the risers, and of the first room; y of the ground. */
const WALL = 5.5;
const SHAFT = { liquid: 5.8, gas: 6.15 } as const;
export const FIRST_ROOM = 6.5;
const GROUND = 8;
const END = FIRST_ROOM + 3 * (ROOM.w + ROOM.wall) - ROOM.wall;

/** Where the module stands, and its pipes on their way to the shaft. */
export const MODULE_AT = { id: 'module1', x: 0.85, y: GROUND - 0.15 - MODULE.h, share: 1 } as const;
const LIQUID_X = 4.95;
const GAS_X = 4.62;
const ENTRY = { liquid: 5.75, gas: 5.4 } as const;

export const STOREYS = [UPPER, MIDDLE, LOWER].map((storey) => storeyOf(storey, FIRST_ROOM, SHAFT));
const MODULE_DRAWN = moduleOf(MODULE_AT, false);

const ABOVE = [...MIDDLE.units, ...UPPER.units];
const EVERY = [...ABOVE, ...LOWER.units];

function lines(): DrawnPipe[] {
  const { x, y } = MODULE_AT;
  const liquidY = y + MODULE_ENDS.liquid[1];
  const whole = { of: EVERY };
  return [
    {
      id: 'gas-line',
      from: 'gas-header',
      to: 'gas-header',
      points: [
        [SHAFT.gas, ENTRY.gas],
        [GAS_X, ENTRY.gas],
        [GAS_X, y + MODULE_ENDS.gas[1]],
        [x + MODULE_ENDS.gas[0], y + MODULE_ENDS.gas[1]],
        [x + MODULE_ENDS.gas[0], y + 1.26],
        [x + 2.14, y + 1.26],
        [x + 2.14, y + 0.9],
      ],
      diameter: 0.0222,
      insulated: true,
      carries: whole,
    },
    {
      id: 'liquid-outlet',
      from: 'liquid-port',
      to: 'liquid-port',
      points: [
        [x + MODULE_ENDS.liquid[0], liquidY],
        [3.9, liquidY],
      ],
      diameter: 0.0095,
      carries: whole,
    },
    {
      id: 'liquid-riser',
      from: 'liquid-port',
      to: 'drier-out',
      points: [
        [3.9, liquidY],
        [LIQUID_X, liquidY],
        [LIQUID_X, 6.75],
      ],
      diameter: 0.0095,
      carries: whole,
    },
    {
      id: 'liquid-line',
      from: 'drier-out',
      to: 'metering-in',
      points: [
        [LIQUID_X, 6.75],
        [LIQUID_X, ENTRY.liquid],
        [SHAFT.liquid, ENTRY.liquid],
      ],
      diameter: 0.0095,
      carries: whole,
    },
    riser('liquid-up-1', 'metering-in', SHAFT.liquid, ENTRY.liquid, runOf(MIDDLE, 'liquid'), ABOVE, 'liquid'),
    riser(
      'liquid-up-2',
      'metering-in',
      SHAFT.liquid,
      runOf(MIDDLE, 'liquid'),
      runOf(UPPER, 'liquid'),
      UPPER.units,
      'liquid',
    ),
    riser('liquid-down', 'metering-in', SHAFT.liquid, ENTRY.liquid, runOf(LOWER, 'liquid'), LOWER.units, 'liquid'),
    riser('gas-up-1', 'gas-header', SHAFT.gas, ENTRY.gas, runOf(MIDDLE, 'gas'), ABOVE, 'gas'),
    riser('gas-up-2', 'gas-header', SHAFT.gas, runOf(MIDDLE, 'gas'), runOf(UPPER, 'gas'), UPPER.units, 'gas'),
    riser('gas-down', 'gas-header', SHAFT.gas, ENTRY.gas, runOf(LOWER, 'gas'), LOWER.units, 'gas'),
  ];
}

export const MULTI_SPLIT_DRAWING: PlantDrawing = {
  width: 21.2,
  height: 12.3,
  ground: GROUND,
  sparse: 2,
  views: [{ id: 'outdoor', x: 0, y: 2.9, w: 5.25, h: 5.3 }, ...STOREYS.flatMap(({ views }) => views)],
  blocks: [
    { id: 'ground', kind: 'ground', x: 0, y: GROUND, w: 21.2, h: 4.3 },
    { id: 'shaft-upper', kind: 'loft', x: WALL, y: UPPER.ceiling, w: FIRST_ROOM - 0.15 - WALL, h: ROOM.h },
    { id: 'shaft-middle', kind: 'loft', x: WALL, y: MIDDLE.ceiling, w: FIRST_ROOM - 0.15 - WALL, h: ROOM.h },
    { id: 'shaft-lower', kind: 'loft', x: WALL, y: LOWER.ceiling, w: FIRST_ROOM - 0.15 - WALL, h: ROOM.h },
    ...STOREYS.flatMap(({ blocks }) => blocks),
    {
      id: 'store',
      kind: 'plantroom',
      x: FIRST_ROOM + 2 * (ROOM.w + ROOM.wall),
      y: LOWER.ceiling,
      w: ROOM.w,
      h: ROOM.h,
    },
    {
      id: 'wall-store',
      kind: 'wall',
      x: FIRST_ROOM + 2 * (ROOM.w + ROOM.wall) - ROOM.wall,
      y: LOWER.ceiling,
      w: ROOM.wall,
      h: ROOM.h,
    },
    ...[UPPER, MIDDLE, LOWER].map(({ id, ceiling }) => ({
      id: `shaft-wall-${id}`,
      kind: 'wall' as const,
      x: FIRST_ROOM - 0.15,
      y: ceiling,
      w: 0.15,
      h: ROOM.h,
    })),
    ...[UPPER, MIDDLE, LOWER].map(({ id, ceiling }) => ({
      id: `floor-${id}`,
      kind: 'wall' as const,
      x: WALL,
      y: ceiling + ROOM.h,
      w: END - WALL,
      h: ROOM.slab,
    })),
    { id: 'outer-wall', kind: 'wall', x: WALL - 0.25, y: 1.0, w: 0.25, h: 10.8 },
    { id: 'far-wall', kind: 'wall', x: END, y: 1.0, w: 0.25, h: 10.8 },
    { id: 'roof', kind: 'roof', x: WALL - 0.45, y: 0.95, w: END - WALL + 0.9, h: 0.35 },
  ],
  parts: [
    ...MODULE_DRAWN.parts,
    { id: 'gas-valve', kind: 'service-valve', x: 4.3, y: MODULE_AT.y + MODULE_ENDS.gas[1] - 0.13, w: 0.26, h: 0.26 },
    {
      id: 'liquid-valve',
      kind: 'service-valve',
      x: 4.3,
      y: MODULE_AT.y + MODULE_ENDS.liquid[1] - 0.12,
      w: 0.24,
      h: 0.24,
    },
    { id: 'suction-valve', kind: 'service-valve', x: 2.12, y: 6.62, w: 0.26, h: 0.26 },
    { id: 'drier', kind: 'drier', x: LIQUID_X - 0.11, y: 6.75, w: 0.22, h: 0.5 },
    { id: 'data-panel', kind: 'thermostat', x: 4.93, y: 4.55, w: 0.3, h: 0.42 },
    {
      id: 'store-shelf',
      kind: 'counter',
      x: FIRST_ROOM + 2 * (ROOM.w + ROOM.wall) + 1.6,
      y: LOWER.ceiling + 2.3,
      w: 2.4,
      h: 0.9,
    },
    ...STOREYS.flatMap(({ parts }) => parts),
  ],
  pipes: [...MODULE_DRAWN.pipes, ...lines(), ...STOREYS.flatMap(({ pipes }) => pipes)],
  air: [...MODULE_DRAWN.air, ...STOREYS.flatMap(({ air }) => air)],
  wires: [
    {
      id: 'supply-feed',
      points: [
        [5.25, 3.95],
        [3.85, 3.95],
        [3.85, 4.72],
      ],
      live: true,
    },
    {
      id: 'compressor-lead',
      points: [
        [3.72, 5.5],
        [3.72, 6.75],
        [3.4, 6.75],
      ],
      live: true,
    },
  ],
  drain: [
    [FIRST_ROOM + 2.4, MIDDLE.ceiling + 2.4],
    [FIRST_ROOM + 2.4, MIDDLE.ceiling + 2.48],
    [FIRST_ROOM - 0.3, MIDDLE.ceiling + 2.56],
    [FIRST_ROOM - 0.3, MIDDLE.ceiling + 2.8],
  ],
};
