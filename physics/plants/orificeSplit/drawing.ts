import type { PlantDrawing } from '../../types';

/**
 * A shop with an air handler in its loft. The outdoor unit stands on a slab beside the wall; both lines climb the wall,
 * enter the loft under the eaves and follow the rafter to the coil. Drier and sight glass sit in the liquid riser, with
 * the service port before them.
 */
export const ORIFICE_SPLIT_DRAWING: PlantDrawing = {
  width: 10.8,
  height: 6.5,
  ground: 5.9,
  views: [
    { id: 'outdoor', x: 0, y: 2.55, w: 4.95, h: 3.95 },
    { id: 'indoor', x: 4.7, y: 0.15, w: 6.1, h: 4.95 },
  ],
  blocks: [
    { id: 'ground', kind: 'ground', x: 0, y: 5.9, w: 10.8, h: 0.6 },
    { id: 'loft', kind: 'loft', x: 4.45, y: 0.35, w: 6.1, h: 2.55, shape: 'gable' },
    { id: 'loft-floor-space', kind: 'loft', x: 4.75, y: 2.9, w: 5.5, h: 0.7 },
    { id: 'room', kind: 'room', x: 4.95, y: 3.75, w: 5.1, h: 2.15 },
    { id: 'outer-wall', kind: 'wall', x: 4.75, y: 2.62, w: 0.2, h: 3.28 },
    { id: 'far-wall', kind: 'wall', x: 10.05, y: 2.62, w: 0.2, h: 3.28 },
    { id: 'ceiling', kind: 'wall', x: 4.95, y: 3.6, w: 5.1, h: 0.15 },
    { id: 'roof', kind: 'roof', x: 4.45, y: 0.35, w: 6.1, h: 2.55, shape: 'gable' },
  ],
  parts: [
    { id: 'slab', kind: 'slab', x: 0.55, y: 5.76, w: 2.7, h: 0.14 },
    { id: 'outdoor-casing', kind: 'casing', x: 0.7, y: 3.6, w: 2.4, h: 2.16 },
    { id: 'outdoor-coil', kind: 'coil', x: 0.78, y: 4.15, w: 0.64, h: 1.45, role: 'condenser', inlet: 'top' },
    { id: 'outdoor-fan', kind: 'fan', x: 1.25, y: 3.68, w: 1.3, h: 0.24, role: 'condenser' },
    { id: 'compressor', kind: 'compressor', x: 1.72, y: 4.78, w: 0.64, h: 0.82 },
    { id: 'outdoor-box', kind: 'control-box', x: 2.58, y: 3.8, w: 0.48, h: 1.12 },
    { id: 'terminals', kind: 'terminals', x: 2.67, y: 3.96, w: 0.34, h: 0.2 },
    { id: 'run-capacitor', kind: 'capacitor', x: 2.74, y: 4.46, w: 0.2, h: 0.36 },
    { id: 'suction-valve', kind: 'service-valve', x: 3.1, y: 4.92, w: 0.26, h: 0.26 },
    { id: 'liquid-valve', kind: 'service-valve', x: 3.1, y: 5.52, w: 0.24, h: 0.24 },
    { id: 'drier', kind: 'drier', x: 4.29, y: 4.88, w: 0.22, h: 0.5 },
    { id: 'sight-glass', kind: 'sight-glass', x: 4.26, y: 4.41, w: 0.28, h: 0.28 },
    { id: 'return-duct', kind: 'duct', x: 5.5, y: 2.85, w: 0.6, h: 0.75 },
    { id: 'air-handler', kind: 'casing', x: 6.1, y: 2.25, w: 2.9, h: 1.2 },
    { id: 'supply-duct', kind: 'duct', x: 9, y: 2.55, w: 0.75, h: 1.05 },
    { id: 'return-grille', kind: 'grille', x: 5.5, y: 3.6, w: 0.6, h: 0.15 },
    { id: 'supply-grille', kind: 'grille', x: 9.15, y: 3.6, w: 0.6, h: 0.15 },
    { id: 'filter', kind: 'filter', x: 6.3, y: 2.32, w: 0.13, h: 1.06, role: 'evaporator' },
    { id: 'indoor-coil', kind: 'coil', x: 7.02, y: 2.36, w: 0.66, h: 1.0, role: 'evaporator', inlet: 'bottom' },
    { id: 'orifice', kind: 'orifice', x: 6.76, y: 3.14, w: 0.18, h: 0.18 },
    { id: 'indoor-fan', kind: 'fan', x: 7.98, y: 2.43, w: 0.88, h: 0.88, role: 'evaporator' },
    { id: 'shop-window', kind: 'window', x: 6.55, y: 4.3, w: 1.5, h: 0.85 },
    { id: 'shop-door', kind: 'door', x: 8.35, y: 4.15, w: 0.85, h: 1.75 },
    { id: 'counter', kind: 'counter', x: 5.3, y: 5.1, w: 2.35, h: 0.8 },
    { id: 'thermostat', kind: 'thermostat', x: 9.89, y: 4.55, w: 0.16, h: 0.26 },
  ],
  pipes: [
    {
      id: 'discharge',
      from: 'compressor-out',
      to: 'condenser-in',
      points: [
        [1.98, 4.78],
        [1.98, 4.4],
        [1.42, 4.4],
      ],
      diameter: 0.016,
    },
    {
      id: 'condenser-outlet',
      from: 'condenser-out',
      to: 'liquid-port',
      points: [
        [1.42, 5.48],
        [1.56, 5.48],
        [1.56, 5.64],
        [3.42, 5.64],
      ],
      diameter: 0.0095,
    },
    {
      id: 'liquid-riser',
      from: 'liquid-port',
      to: 'drier-out',
      points: [
        [3.42, 5.64],
        [4.4, 5.64],
        [4.4, 4.88],
      ],
      diameter: 0.0095,
    },
    {
      id: 'liquid-line',
      from: 'drier-out',
      to: 'metering-in',
      points: [
        [4.4, 4.88],
        [4.4, 3.15],
        [5.16, 3.15],
        [6.1, 2.1],
        [6.85, 2.1],
        [6.85, 3.14],
      ],
      diameter: 0.0095,
    },
    {
      id: 'coil-feed',
      from: 'metering-in',
      to: 'evaporator-in',
      points: [
        [6.85, 3.14],
        [6.85, 3.26],
        [7.02, 3.26],
      ],
      diameter: 0.0095,
    },
    {
      id: 'suction-line',
      from: 'evaporator-out',
      to: 'suction-port',
      points: [
        [7.68, 2.44],
        [7.82, 2.44],
        [7.82, 1.9],
        [6.02, 1.9],
        [5.08, 2.95],
        [3.75, 2.95],
        [3.75, 5.05],
        [3.42, 5.05],
      ],
      diameter: 0.0222,
      insulated: true,
    },
    {
      id: 'compressor-inlet',
      from: 'suction-port',
      to: 'compressor-in',
      points: [
        [3.42, 5.05],
        [2.56, 5.05],
        [2.56, 5.32],
        [2.36, 5.32],
      ],
      diameter: 0.0222,
    },
  ],
  air: [
    {
      id: 'outdoor-in-high',
      role: 'condenser',
      stage: 'entering',
      points: [
        [0.06, 4.35],
        [0.76, 4.35],
      ],
    },
    {
      id: 'outdoor-in-low',
      role: 'condenser',
      stage: 'entering',
      points: [
        [0.06, 5.25],
        [0.76, 5.25],
      ],
    },
    {
      id: 'outdoor-out-left',
      role: 'condenser',
      stage: 'leaving',
      points: [
        [1.5, 3.62],
        [1.35, 2.75],
      ],
    },
    {
      id: 'outdoor-out-right',
      role: 'condenser',
      stage: 'leaving',
      points: [
        [2.3, 3.62],
        [2.45, 2.75],
      ],
    },
    {
      id: 'return',
      role: 'evaporator',
      stage: 'entering',
      points: [
        [5.8, 4.75],
        [5.8, 3.3],
        [6.1, 2.95],
        [6.98, 2.85],
      ],
    },
    {
      id: 'supply',
      role: 'evaporator',
      stage: 'leaving',
      points: [
        [7.72, 2.85],
        [9.2, 2.85],
        [9.45, 3.1],
        [9.45, 4.75],
      ],
    },
  ],
  wires: [
    {
      id: 'supply-feed',
      points: [
        [4.75, 3.72],
        [2.84, 3.72],
        [2.84, 3.96],
      ],
      live: false,
    },
    {
      id: 'compressor-lead',
      points: [
        [2.67, 4.1],
        [2.26, 4.1],
        [2.26, 4.86],
      ],
      live: true,
    },
  ],
  drain: [
    [7.35, 3.4],
    [7.35, 3.52],
    [4.62, 3.56],
    [4.62, 3.8],
  ],
};
