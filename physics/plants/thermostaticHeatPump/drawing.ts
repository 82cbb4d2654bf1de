import type { DrawnPart, DrawnPipe, PlantDrawing } from '../../types';

/**
 * A small practice with an air handler in its plant room. The outdoor unit stands on a slab beside the wall: reversing valve
 * over the compressor, accumulator beside it, a metering valve at the foot of its coil. Vapour and liquid line pass the wall
 * to the coil indoors, which has a metering valve of its own; the drier sits in the liquid line outside and works either way.
 * Both modes are drawn on the same parts; the lines change their roles.
 */
const OUTDOOR_COIL = { id: 'outdoor-coil', kind: 'coil', side: 'outdoor', x: 0.68, y: 3.5, w: 0.62, h: 2.1 } as const;
const INDOOR_COIL = { id: 'indoor-coil', kind: 'coil', side: 'indoor', x: 5.9, y: 3.3, w: 1.05, h: 0.7 } as const;

const PARTS: readonly DrawnPart[] = [
  { id: 'slab', kind: 'slab', x: 0.45, y: 5.76, w: 3, h: 0.14 },
  { id: 'outdoor-casing', kind: 'casing', x: 0.6, y: 2.95, w: 2.75, h: 2.81 },
  { id: 'outdoor-fan', kind: 'fan', x: 1.25, y: 3.02, w: 1.4, h: 0.24, role: 'condenser' },
  { id: 'compressor', kind: 'compressor', x: 1.62, y: 4.9, w: 0.6, h: 0.68 },
  { id: 'reversing-valve', kind: 'reversing-valve', x: 1.72, y: 3.98, w: 0.84, h: 0.24 },
  { id: 'accumulator', kind: 'accumulator', x: 2.64, y: 4.88, w: 0.32, h: 0.7 },
  { id: 'outdoor-valve', kind: 'thermostatic-valve', x: 2.38, y: 5.48, w: 0.2, h: 0.26 },
  { id: 'outdoor-bulb', kind: 'bulb', x: 1.33, y: 3.56, w: 0.2, h: 0.12 },
  { id: 'outdoor-box', kind: 'control-box', x: 2.72, y: 3.12, w: 0.5, h: 1.06 },
  { id: 'terminals', kind: 'terminals', x: 2.8, y: 3.2, w: 0.34, h: 0.2 },
  { id: 'run-capacitor', kind: 'capacitor', x: 2.87, y: 3.7, w: 0.2, h: 0.36 },
  { id: 'contactor', kind: 'control-box', x: 3.36, y: 3.42, w: 0.3, h: 0.32 },
  { id: 'fan-capacitor', kind: 'capacitor', x: 2.88, y: 2.65, w: 0.18, h: 0.28 },
  { id: 'vapour-valve', kind: 'service-valve', x: 3.35, y: 4.37, w: 0.26, h: 0.26 },
  { id: 'liquid-valve', kind: 'service-valve', x: 3.35, y: 5.52, w: 0.24, h: 0.24 },
  { id: 'drier', kind: 'drier', x: 4.29, y: 4.98, w: 0.22, h: 0.46 },
  { id: 'air-handler', kind: 'casing', x: 5.65, y: 2.4, w: 1.5, h: 3.35 },
  { id: 'supply-riser', kind: 'duct', x: 6.1, y: 1.95, w: 0.6, h: 0.45 },
  { id: 'supply-duct', kind: 'duct', x: 6.1, y: 1.5, w: 3.2, h: 0.45 },
  { id: 'supply-drop', kind: 'duct', x: 8.7, y: 1.95, w: 0.6, h: 0.3 },
  { id: 'supply-grille', kind: 'grille', x: 8.7, y: 2.25, w: 0.6, h: 0.15 },
  { id: 'return-duct', kind: 'duct', x: 7.15, y: 5.05, w: 0.25, h: 0.5 },
  { id: 'return-grille', kind: 'grille', x: 7.4, y: 5.05, w: 0.15, h: 0.5 },
  { id: 'filter', kind: 'filter', x: 5.75, y: 4.9, w: 1.3, h: 0.12, role: 'evaporator' },
  { id: 'indoor-valve', kind: 'thermostatic-valve', x: 5.12, y: 3.72, w: 0.2, h: 0.26 },
  { id: 'indoor-bulb', kind: 'bulb', x: 5.6, y: 3.36, w: 0.22, h: 0.12 },
  { id: 'indoor-fan', kind: 'fan', x: 6.02, y: 2.48, w: 0.75, h: 0.75, role: 'evaporator' },
  { id: 'practice-window', kind: 'window', x: 7.95, y: 3.1, w: 0.75, h: 0.85 },
  { id: 'practice-door', kind: 'door', x: 9, y: 4.15, w: 0.85, h: 1.75 },
  { id: 'desk', kind: 'counter', x: 7.8, y: 5.1, w: 1, h: 0.8 },
  { id: 'thermostat', kind: 'thermostat', x: 9.89, y: 3.6, w: 0.16, h: 0.26 },
];

const GAS = 0.0191;
const LIQUID = 0.0095;

const COOLING_PIPES: readonly DrawnPipe[] = [
  {
    id: 'discharge',
    from: 'compressor-out',
    to: 'condenser-in',
    points: [
      [1.9, 4.9],
      [1.9, 4.1],
      [1.58, 4.1],
      [1.58, 3.62],
      [1.3, 3.62],
    ],
    diameter: 0.016,
  },
  {
    id: 'condenser-outlet',
    from: 'condenser-out',
    to: 'liquid-port',
    points: [
      [1.3, 5.48],
      [1.5, 5.48],
      [1.5, 5.64],
      [3.62, 5.64],
    ],
    diameter: LIQUID,
  },
  {
    id: 'liquid-riser',
    from: 'liquid-port',
    to: 'drier-out',
    points: [
      [3.62, 5.64],
      [4.4, 5.64],
      [4.4, 4.9],
    ],
    diameter: LIQUID,
  },
  {
    id: 'liquid-line',
    from: 'drier-out',
    to: 'metering-in',
    points: [
      [4.4, 4.9],
      [4.4, 3.1],
      [5, 3.1],
      [5, 3.88],
      [5.22, 3.88],
    ],
    diameter: LIQUID,
  },
  {
    id: 'coil-feed',
    from: 'metering-in',
    to: 'evaporator-in',
    points: [
      [5.22, 3.88],
      [5.9, 3.88],
    ],
    diameter: LIQUID,
  },
  {
    id: 'vapour-line',
    from: 'evaporator-out',
    to: 'suction-port',
    points: [
      [5.9, 3.42],
      [5.55, 3.42],
      [5.55, 2.7],
      [3.98, 2.7],
      [3.98, 4.5],
      [3.62, 4.5],
    ],
    diameter: GAS,
    insulated: true,
  },
  {
    id: 'compressor-inlet',
    from: 'suction-port',
    to: 'compressor-in',
    points: [
      [3.62, 4.5],
      [2.38, 4.5],
      [2.38, 4.1],
      [2.14, 4.1],
      [2.14, 4.78],
      [2.8, 4.78],
      [2.8, 5.45],
      [2.22, 5.45],
    ],
    diameter: GAS,
  },
];

const HEATING_PIPES: readonly DrawnPipe[] = [
  {
    id: 'vapour-line',
    from: 'compressor-out',
    to: 'condenser-in',
    points: [
      [1.9, 4.9],
      [1.9, 4.1],
      [2.38, 4.1],
      [2.38, 4.5],
      [3.98, 4.5],
      [3.98, 2.7],
      [5.55, 2.7],
      [5.55, 3.42],
      [5.9, 3.42],
    ],
    diameter: GAS,
    insulated: true,
  },
  {
    id: 'condenser-outlet',
    from: 'condenser-out',
    to: 'liquid-port',
    points: [
      [5.9, 3.88],
      [5, 3.88],
      [5, 3.1],
      [4.4, 3.1],
      [4.4, 4.9],
    ],
    diameter: LIQUID,
  },
  {
    id: 'liquid-riser',
    from: 'liquid-port',
    to: 'drier-out',
    points: [
      [4.4, 4.9],
      [4.4, 5.64],
      [3.62, 5.64],
    ],
    diameter: LIQUID,
  },
  {
    id: 'outdoor-liquid',
    from: 'drier-out',
    to: 'metering-in',
    points: [
      [3.62, 5.64],
      [2.48, 5.64],
    ],
    diameter: LIQUID,
  },
  {
    id: 'coil-feed',
    from: 'metering-in',
    to: 'evaporator-in',
    points: [
      [2.48, 5.64],
      [1.5, 5.64],
      [1.5, 5.48],
      [1.3, 5.48],
    ],
    diameter: LIQUID,
  },
  {
    id: 'coil-vapour',
    from: 'evaporator-out',
    to: 'suction-port',
    points: [
      [1.3, 3.62],
      [1.58, 3.62],
      [1.58, 4.1],
      [2.14, 4.1],
      [2.14, 4.78],
      [2.42, 4.78],
    ],
    diameter: GAS,
  },
  {
    id: 'compressor-inlet',
    from: 'suction-port',
    to: 'compressor-in',
    points: [
      [2.42, 4.78],
      [2.8, 4.78],
      [2.8, 5.45],
      [2.22, 5.45],
    ],
    diameter: GAS,
  },
];

const SITE: Omit<PlantDrawing, 'parts' | 'pipes'> = {
  width: 10.8,
  height: 6.5,
  ground: 5.9,
  views: [
    { id: 'outdoor', x: 0, y: 2.2, w: 4.95, h: 4.3 },
    { id: 'indoor', x: 4.7, y: 1.35, w: 6.1, h: 4.75 },
  ],
  blocks: [
    { id: 'ground', kind: 'ground', x: 0, y: 5.9, w: 10.8, h: 0.6 },
    { id: 'loft', kind: 'loft', x: 4.45, y: 0.25, w: 6.1, h: 1.75, shape: 'gable' },
    { id: 'loft-floor-space', kind: 'loft', x: 4.75, y: 2, w: 5.5, h: 0.25 },
    { id: 'plant-room', kind: 'plantroom', x: 4.95, y: 2.4, w: 2.45, h: 3.5 },
    { id: 'room', kind: 'room', x: 7.55, y: 2.4, w: 2.5, h: 3.5 },
    { id: 'outer-wall', kind: 'wall', x: 4.75, y: 1.86, w: 0.2, h: 4.04 },
    { id: 'inner-wall', kind: 'wall', x: 7.4, y: 2.4, w: 0.15, h: 3.5 },
    { id: 'far-wall', kind: 'wall', x: 10.05, y: 1.86, w: 0.2, h: 4.04 },
    { id: 'ceiling', kind: 'wall', x: 4.95, y: 2.25, w: 5.1, h: 0.15 },
    { id: 'roof', kind: 'roof', x: 4.45, y: 0.25, w: 6.1, h: 1.75, shape: 'gable' },
  ],
  air: [
    {
      id: 'outdoor-in-high',
      role: 'condenser',
      stage: 'entering',
      points: [
        [0.04, 3.9],
        [0.66, 3.9],
      ],
    },
    {
      id: 'outdoor-in-low',
      role: 'condenser',
      stage: 'entering',
      points: [
        [0.04, 5.2],
        [0.66, 5.2],
      ],
    },
    {
      id: 'outdoor-out-left',
      role: 'condenser',
      stage: 'leaving',
      points: [
        [1.55, 2.97],
        [1.4, 2.3],
      ],
    },
    {
      id: 'outdoor-out-right',
      role: 'condenser',
      stage: 'leaving',
      points: [
        [2.35, 2.97],
        [2.5, 2.3],
      ],
    },
    {
      id: 'return',
      role: 'evaporator',
      stage: 'entering',
      points: [
        [8.3, 5.3],
        [7.1, 5.3],
        [6.42, 5.25],
        [6.42, 4.05],
      ],
    },
    {
      id: 'supply',
      role: 'evaporator',
      stage: 'leaving',
      points: [
        [6.4, 3.26],
        [6.4, 1.75],
        [9, 1.75],
        [9, 3.6],
      ],
    },
  ],
  wires: [
    {
      id: 'supply-feed',
      points: [
        [4.75, 3.06],
        [2.97, 3.06],
        [2.97, 3.2],
      ],
      live: false,
    },
    {
      id: 'compressor-lead',
      points: [
        [2.8, 3.36],
        [2.52, 3.36],
        [2.52, 3.7],
        [1.74, 3.7],
        [1.74, 4.95],
      ],
      live: true,
    },
  ],
  drain: [
    [6.1, 4.05],
    [6.1, 4.2],
    [5.4, 4.25],
    [5.4, 5.66],
    [4.66, 5.7],
    [4.66, 5.82],
  ],
};

export const HEAT_PUMP_COOLING_DRAWING: PlantDrawing = {
  ...SITE,
  parts: [
    ...PARTS,
    { ...OUTDOOR_COIL, role: 'condenser', inlet: 'top' },
    { ...INDOOR_COIL, role: 'evaporator', inlet: 'bottom' },
  ],
  pipes: COOLING_PIPES,
};

export const HEAT_PUMP_HEATING_DRAWING: PlantDrawing = {
  ...SITE,
  parts: [
    ...PARTS,
    { ...OUTDOOR_COIL, role: 'evaporator', inlet: 'bottom' },
    { ...INDOOR_COIL, role: 'condenser', inlet: 'top' },
  ],
  pipes: HEATING_PIPES,
};
