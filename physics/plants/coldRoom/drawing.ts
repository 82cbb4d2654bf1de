import type { PlantDrawing } from '../../types';

/**
 * A walk-in cold room with its cooler under the ceiling. The condensing unit stands on a slab beside the wall, its receiver
 * lying under the compressor; both lines pass the insulated wall. Drier and sight glass sit in the liquid riser, with the
 * service port before them; the thermostatic valve is at the cooler and its bulb on the pipe that leaves it.
 */
export const COLD_ROOM_DRAWING: PlantDrawing = {
  width: 10.8,
  height: 6.5,
  ground: 5.9,
  views: [
    { id: 'outdoor', x: 0, y: 2.5, w: 4.95, h: 4 },
    { id: 'indoor', x: 4.95, y: 1.9, w: 5.45, h: 4.3 },
  ],
  blocks: [
    { id: 'ground', kind: 'ground', x: 0, y: 5.9, w: 10.8, h: 0.6 },
    { id: 'room', kind: 'room', x: 5.15, y: 2.5, w: 4.7, h: 3.4 },
    { id: 'outer-wall', kind: 'wall', x: 4.75, y: 2.1, w: 0.4, h: 3.8 },
    { id: 'far-wall', kind: 'wall', x: 9.85, y: 2.1, w: 0.4, h: 3.8 },
    { id: 'ceiling', kind: 'wall', x: 5.15, y: 2.1, w: 4.7, h: 0.4 },
    { id: 'roof', kind: 'roof', x: 4.45, y: 1.8, w: 6.1, h: 0.3 },
  ],
  parts: [
    { id: 'slab', kind: 'slab', x: 0.55, y: 5.76, w: 2.7, h: 0.14 },
    { id: 'outdoor-casing', kind: 'casing', x: 0.7, y: 3.3, w: 2.4, h: 2.46 },
    { id: 'outdoor-coil', kind: 'coil', x: 0.78, y: 3.95, w: 0.64, h: 1.65, role: 'condenser', inlet: 'top' },
    { id: 'outdoor-fan', kind: 'fan', x: 1.25, y: 3.38, w: 1.3, h: 0.24, role: 'condenser' },
    { id: 'compressor', kind: 'compressor', x: 1.72, y: 4.34, w: 0.64, h: 0.82 },
    { id: 'outdoor-box', kind: 'control-box', x: 2.58, y: 3.5, w: 0.48, h: 1.12 },
    { id: 'terminals', kind: 'terminals', x: 2.67, y: 3.66, w: 0.34, h: 0.2 },
    { id: 'run-capacitor', kind: 'capacitor', x: 2.74, y: 4.16, w: 0.2, h: 0.36 },
    { id: 'receiver', kind: 'receiver', x: 1.74, y: 5.26, w: 1.0, h: 0.44 },
    { id: 'suction-valve', kind: 'service-valve', x: 3.1, y: 4.92, w: 0.26, h: 0.26 },
    { id: 'liquid-valve', kind: 'service-valve', x: 3.1, y: 5.52, w: 0.24, h: 0.24 },
    { id: 'drier', kind: 'drier', x: 4.29, y: 4.88, w: 0.22, h: 0.5 },
    { id: 'sight-glass', kind: 'sight-glass', x: 4.26, y: 4.41, w: 0.28, h: 0.28 },
    { id: 'solenoid-valve', kind: 'solenoid-valve', x: 5.58, y: 3.2, w: 0.24, h: 0.36 },
    { id: 'cooler', kind: 'casing', x: 6.1, y: 2.8, w: 2.9, h: 1.15 },
    { id: 'return-grille', kind: 'grille', x: 6.05, y: 2.95, w: 0.1, h: 0.5 },
    { id: 'supply-grille', kind: 'grille', x: 8.95, y: 2.95, w: 0.1, h: 0.8 },
    { id: 'indoor-coil', kind: 'coil', x: 7.02, y: 2.88, w: 0.66, h: 1.0, role: 'evaporator', inlet: 'bottom' },
    { id: 'defrost-heater', kind: 'defrost-heater', x: 7.0, y: 3.84, w: 1.0, h: 0.12 },
    { id: 'thermostatic-valve', kind: 'thermostatic-valve', x: 6.6, y: 3.44, w: 0.26, h: 0.36 },
    { id: 'valve-bulb', kind: 'bulb', x: 7.12, y: 2.58, w: 0.36, h: 0.12 },
    { id: 'indoor-fan', kind: 'fan', x: 7.98, y: 2.93, w: 0.88, h: 0.88, role: 'evaporator' },
    { id: 'room-door', kind: 'door', x: 8.35, y: 4.15, w: 0.85, h: 1.75 },
    { id: 'shelf', kind: 'counter', x: 5.5, y: 5.1, w: 2.2, h: 0.8 },
    { id: 'thermostat', kind: 'thermostat', x: 9.69, y: 4.55, w: 0.16, h: 0.26 },
  ],
  pipes: [
    {
      id: 'discharge',
      from: 'compressor-out',
      to: 'condenser-in',
      points: [
        [1.98, 4.34],
        [1.98, 4.14],
        [1.42, 4.14],
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
        [4.4, 3.05],
        [5.7, 3.05],
        [5.7, 3.68],
        [6.5, 3.68],
      ],
      diameter: 0.0095,
    },
    {
      id: 'coil-feed',
      from: 'metering-in',
      to: 'evaporator-in',
      points: [
        [6.5, 3.68],
        [7.02, 3.68],
      ],
      diameter: 0.0095,
    },
    {
      id: 'suction-line',
      from: 'evaporator-out',
      to: 'suction-port',
      points: [
        [7.68, 2.98],
        [7.82, 2.98],
        [7.82, 2.64],
        [3.75, 2.64],
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
        [2.56, 4.9],
        [2.36, 4.9],
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
        [1.5, 3.32],
        [1.35, 2.6],
      ],
    },
    {
      id: 'outdoor-out-right',
      role: 'condenser',
      stage: 'leaving',
      points: [
        [2.3, 3.32],
        [2.45, 2.6],
      ],
    },
    {
      id: 'return',
      role: 'evaporator',
      stage: 'entering',
      points: [
        [5.3, 3.75],
        [5.6, 3.25],
        [6.1, 3.2],
        [6.98, 3.3],
      ],
    },
    {
      id: 'supply',
      role: 'evaporator',
      stage: 'leaving',
      points: [
        [7.72, 3.35],
        [9.05, 3.35],
        [9.4, 3.5],
        [9.55, 4.3],
      ],
    },
  ],
  wires: [
    {
      id: 'supply-feed',
      points: [
        [4.75, 3.42],
        [2.84, 3.42],
        [2.84, 3.66],
      ],
      live: false,
    },
    {
      id: 'compressor-lead',
      points: [
        [2.67, 3.8],
        [2.26, 3.8],
        [2.26, 4.42],
      ],
      live: true,
    },
  ],
  drain: [
    [7.35, 3.92],
    [7.35, 4.04],
    [4.62, 4.1],
    [4.62, 5.35],
  ],
};

/** The sealed unit for propane: nothing between condenser and liquid line, and ports without service valves. */
export const WITHOUT_RECEIVER: PlantDrawing = {
  ...COLD_ROOM_DRAWING,
  parts: COLD_ROOM_DRAWING.parts.filter(({ kind }) => kind !== 'receiver' && kind !== 'service-valve'),
};
