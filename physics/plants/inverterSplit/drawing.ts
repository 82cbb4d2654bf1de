import type { PlantDrawing } from '../../types';

/**
 * A room with a wall unit; the outdoor unit hangs on brackets on the other side of the same wall, seen from its side:
 * its coil faces the wall and its fan blows away from it. Both lines pass the wall behind the indoor unit and come down
 * it outside. Drier and electronic valve are inside the outdoor unit.
 */
export const INVERTER_SPLIT_DRAWING: PlantDrawing = {
  width: 10.6,
  height: 6.4,
  ground: 5.85,
  views: [
    { id: 'outdoor', x: 5.45, y: 1.35, w: 5.15, h: 4.25 },
    { id: 'indoor', x: 1, y: 0.85, w: 4.75, h: 4.25 },
  ],
  blocks: [
    { id: 'ground', kind: 'ground', x: 0, y: 5.85, w: 10.6, h: 0.55 },
    { id: 'room', kind: 'room', x: 0.4, y: 0.85, w: 4.9, h: 5 },
    { id: 'far-wall', kind: 'wall', x: 0.15, y: 0.6, w: 0.25, h: 5.25 },
    { id: 'outer-wall', kind: 'wall', x: 5.3, y: 0.6, w: 0.25, h: 5.25 },
    { id: 'roof', kind: 'roof', x: 0, y: 0.55, w: 5.95, h: 0.3 },
  ],
  parts: [
    { id: 'bracket', kind: 'bracket', x: 5.55, y: 5.16, w: 4.2, h: 0.5 },
    { id: 'outdoor-casing', kind: 'casing', x: 6.4, y: 2.05, w: 3.5, h: 3.1 },
    { id: 'outdoor-coil', kind: 'coil', x: 6.5, y: 2.35, w: 0.6, h: 2.15, role: 'condenser', inlet: 'top' },
    { id: 'outdoor-fan', kind: 'fan', x: 9.43, y: 2.95, w: 0.24, h: 1.75, role: 'condenser' },
    { id: 'compressor', kind: 'compressor', x: 8.18, y: 3.85, w: 0.62, h: 0.85 },
    { id: 'outdoor-box', kind: 'control-box', x: 7.45, y: 2.12, w: 1.5, h: 0.44 },
    { id: 'terminals', kind: 'terminals', x: 7.62, y: 2.24, w: 0.36, h: 0.2 },
    { id: 'drier', kind: 'drier', x: 7.39, y: 3.2, w: 0.22, h: 0.4 },
    { id: 'electronic-valve', kind: 'electronic-valve', x: 7.8, y: 2.84, w: 0.32, h: 0.4 },
    { id: 'suction-valve', kind: 'service-valve', x: 6.13, y: 4.89, w: 0.26, h: 0.26 },
    { id: 'small-line-valve', kind: 'service-valve', x: 6.14, y: 4.6, w: 0.24, h: 0.24 },
    { id: 'wall-unit', kind: 'casing', x: 3.05, y: 1.62, w: 2.25, h: 1.9 },
    { id: 'inlet-grille', kind: 'grille', x: 3.25, y: 1.62, w: 1.55, h: 0.1 },
    { id: 'filter', kind: 'filter', x: 3.2, y: 1.86, w: 1.65, h: 0.12, role: 'evaporator' },
    { id: 'indoor-coil', kind: 'coil', x: 3.25, y: 2.1, w: 1.55, h: 0.56, role: 'evaporator', inlet: 'top' },
    { id: 'indoor-fan', kind: 'fan', x: 3.54, y: 2.75, w: 0.62, h: 0.62, role: 'evaporator' },
    { id: 'outlet-grille', kind: 'grille', x: 3.05, y: 3.2, w: 0.1, h: 0.32 },
    { id: 'room-window', kind: 'window', x: 0.95, y: 2.3, w: 1.35, h: 1.5 },
    { id: 'room-door', kind: 'door', x: 2.95, y: 4, w: 0.95, h: 1.85 },
    { id: 'desk', kind: 'counter', x: 0.85, y: 4.95, w: 1.75, h: 0.9 },
    { id: 'data-panel', kind: 'thermostat', x: 4.98, y: 4.18, w: 0.32, h: 0.44 },
  ],
  pipes: [
    {
      id: 'discharge',
      from: 'compressor-out',
      to: 'condenser-in',
      points: [
        [8.45, 3.85],
        [8.45, 2.68],
        [7.28, 2.68],
        [7.28, 2.46],
        [7.1, 2.46],
      ],
      diameter: 0.0095,
    },
    {
      id: 'condenser-outlet',
      from: 'condenser-out',
      to: 'liquid-port',
      points: [
        [7.1, 4.4],
        [7.5, 4.4],
        [7.5, 3.8],
      ],
      diameter: 0.0064,
    },
    {
      id: 'through-drier',
      from: 'liquid-port',
      to: 'drier-out',
      points: [
        [7.5, 3.8],
        [7.5, 3.2],
      ],
      diameter: 0.0064,
    },
    {
      id: 'valve-feed',
      from: 'drier-out',
      to: 'metering-in',
      points: [
        [7.5, 3.2],
        [7.5, 3],
        [7.96, 3],
      ],
      diameter: 0.0064,
    },
    {
      id: 'small-line',
      from: 'metering-in',
      to: 'evaporator-in',
      points: [
        [7.96, 3],
        [7.96, 4.72],
        [6.06, 4.72],
        [6.06, 3.2],
        [5.16, 3.2],
        [5.16, 2.18],
        [4.8, 2.18],
      ],
      diameter: 0.0064,
      insulated: true,
    },
    {
      id: 'suction-line',
      from: 'evaporator-out',
      to: 'suction-port',
      points: [
        [4.8, 2.58],
        [4.93, 2.58],
        [4.93, 3.44],
        [5.8, 3.44],
        [5.8, 5.02],
        [6, 5.02],
      ],
      diameter: 0.0127,
      insulated: true,
    },
    {
      id: 'compressor-inlet',
      from: 'suction-port',
      to: 'compressor-in',
      points: [
        [6, 5.02],
        [9.12, 5.02],
        [9.12, 4.4],
        [8.8, 4.4],
      ],
      diameter: 0.0127,
    },
  ],
  air: [
    {
      id: 'outdoor-in-high',
      role: 'condenser',
      stage: 'entering',
      points: [
        [6.1, 1.6],
        [6.1, 2.6],
        [6.46, 2.75],
      ],
    },
    {
      id: 'outdoor-in-middle',
      role: 'condenser',
      stage: 'entering',
      points: [
        [6.0, 3.75],
        [6.46, 3.75],
      ],
    },
    {
      id: 'outdoor-out-high',
      role: 'condenser',
      stage: 'leaving',
      points: [
        [9.72, 3.2],
        [10.5, 3.05],
      ],
    },
    {
      id: 'outdoor-out-low',
      role: 'condenser',
      stage: 'leaving',
      points: [
        [9.72, 4.35],
        [10.5, 4.5],
      ],
    },
    {
      id: 'return',
      role: 'evaporator',
      stage: 'entering',
      points: [
        [2.2, 1.25],
        [3.7, 1.25],
        [4.0, 1.5],
        [4.0, 2.08],
      ],
    },
    {
      id: 'supply',
      role: 'evaporator',
      stage: 'leaving',
      points: [
        [3.85, 2.62],
        [3.85, 3.0],
        [3.4, 3.36],
        [3.05, 3.36],
        [1.9, 3.95],
      ],
    },
  ],
  wires: [
    {
      id: 'supply-feed',
      points: [
        [5.55, 1.72],
        [7.8, 1.72],
        [7.8, 2.24],
      ],
      live: true,
    },
    {
      id: 'compressor-lead',
      points: [
        [8.8, 2.56],
        [8.8, 2.9],
        [9.06, 2.9],
        [9.06, 3.55],
        [8.7, 3.55],
        [8.7, 3.92],
      ],
      live: true,
    },
  ],
  drain: [
    [4.5, 3.42],
    [4.5, 3.6],
    [5.62, 3.66],
    [5.62, 4.0],
  ],
};
