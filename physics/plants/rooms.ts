/**
 * Rooms with one indoor unit each, on storeys one above the other: their parts, pipes, air and places, in metres. Every
 * room is drawn alike, so that a trainee compares like with like; a unit's pipes leave the mains under its own ceiling.
 */
import type { DrawnAir, DrawnBlock, DrawnPart, DrawnPath, DrawnPipe, DrawnView, Place, StationKey } from './types';

/** Room, the wall between two of them, and the slab between two storeys; a storey is 3.5 m. */
export const ROOM = { w: 4.6, h: 3.2, wall: 0.15, slab: 0.3 } as const;
/** Diameters of pipes, m: of a unit and of the mains (common practice for the capacity, no source). */
const COPPER = { liquid: 0.0064, gas: 0.0127, mainLiquid: 0.0095, mainGas: 0.0222 } as const;

export interface Storey {
  /** of its view and its pipes */
  readonly id: string;
  /** ceiling of its rooms, y */
  readonly ceiling: number;
  /** its units from the shaft outwards */
  readonly units: readonly string[];
}

/** How the units hang on the mains: on two pipes, or behind a changeover box on three. */
export interface Piping {
  /** x of the risers in the shaft */
  readonly liquid: number;
  readonly gas: number;
  readonly hot?: number;
}

export interface Drawn {
  readonly blocks: readonly DrawnBlock[];
  readonly parts: readonly DrawnPart[];
  readonly pipes: readonly DrawnPipe[];
  readonly air: readonly DrawnAir[];
  readonly places: readonly Omit<Place, 'order'>[];
  readonly views: readonly DrawnView[];
}

/** Below the ceiling, m. */
const RUN = { liquid: 0.12, gas: 0.3, hot: 0.5 } as const;

export function storeyOf(storey: Storey, left: number, piping: Piping): Drawn {
  const rooms = storey.units.map((unit, i) => ({ unit, x: left + i * (ROOM.w + ROOM.wall), y: storey.ceiling }));
  const drawn = rooms.map(({ unit, x, y }, i) => roomOf(unit, x, y, piping, i));
  const end = left + rooms.length * (ROOM.w + ROOM.wall);
  return {
    blocks: [
      ...drawn.flatMap(({ blocks }) => blocks),
      ...rooms.slice(1).map(
        ({ unit, x, y }): DrawnBlock => ({
          id: `wall-${unit}`,
          kind: 'wall',
          x: x - ROOM.wall,
          y,
          w: ROOM.wall,
          h: ROOM.h,
        }),
      ),
    ],
    parts: drawn.flatMap(({ parts }) => parts),
    pipes: [...mains(storey, rooms, piping), ...drawn.flatMap(({ pipes }) => pipes)],
    air: drawn.flatMap(({ air }) => air),
    places: drawn.flatMap(({ places }) => places),
    views: [
      { id: storey.id, grain: 'coarse', x: left, y: storey.ceiling - 0.15, w: end - left, h: ROOM.h + 0.3 },
      ...drawn.flatMap(({ views }) => views),
    ],
  };
}

interface Hung {
  readonly unit: string;
  readonly x: number;
  readonly y: number;
}

/** Two pipes that meet at a corner overlap by this, so that no gap shows, m. */
const OVERLAP = 0.05;

/** x in a room at which its unit meets each main. */
const MEETS = { liquid: 1.84, gas: 2.86, suction: 2.72, hot: 3.0 } as const;

/** The pipes along a storey's ceiling, in stretches from one unit to the next, drawn in the direction of cooling. */
function mains({ id, ceiling, units }: Storey, rooms: readonly Hung[], piping: Piping): DrawnPipe[] {
  const run = (
    name: string,
    key: StationKey,
    from: number,
    y: number,
    meets: number,
    diameter: number,
    away: boolean,
    only?: 'cooling' | 'heating',
  ): DrawnPipe[] =>
    rooms.map(({ x }, i) => {
      const begin = i === 0 ? from : (rooms[i - 1]?.x ?? 0) + meets;
      const points: DrawnPath = [
        [begin, ceiling + y],
        [x + meets + (i === rooms.length - 1 ? OVERLAP : 0), ceiling + y],
      ];
      return {
        id: `${name}-${id}-${i + 1}`,
        from: key,
        to: key,
        points: away ? points : [...points].reverse(),
        diameter,
        insulated: true,
        carries: { of: units.slice(i), ...(only ? { only } : {}) },
      };
    });
  const liquid = run('liquid', 'metering-in', piping.liquid, RUN.liquid, MEETS.liquid, COPPER.mainLiquid, true);
  if (piping.hot === undefined) {
    return [...liquid, ...run('gas', 'gas-header', piping.gas, RUN.gas, MEETS.gas, COPPER.mainGas, false)];
  }
  return [
    ...liquid,
    ...run('suction', 'suction-header', piping.gas, RUN.gas, MEETS.suction, COPPER.mainGas, false, 'cooling'),
    ...run('hot', 'hot-header', piping.hot, RUN.hot, MEETS.hot, COPPER.mainGas, true, 'heating'),
  ];
}

/** One room: corner at `x`, `y` (its ceiling). */
function roomOf(unit: string, x: number, y: number, piping: Piping, index: number): Drawn {
  const three = piping.hot !== undefined;
  const at = (dx: number, dy: number): readonly [number, number] => [round(x + dx), round(y + dy)];
  const boxed = <K>(id: string, kind: K, dx: number, dy: number, w: number, h: number) => {
    const [px, py] = at(dx, dy);
    return { id: `${id}@${unit}`, kind, x: px, y: py, w, h };
  };
  const branch: Pick<DrawnPipe, 'carries' | 'insulated'> = { carries: { of: [unit] }, insulated: true };
  const gas: DrawnPath = [at(2.7, 1.14), at(2.86, 1.14), at(2.86, three ? 0.72 : RUN.gas)];
  const pipes: DrawnPipe[] = [
    {
      id: `liquid-pipe@${unit}`,
      from: 'metering-in',
      to: `liquid@${unit}`,
      points: [at(MEETS.liquid, RUN.liquid), at(MEETS.liquid, 2.1), at(2.1, 2.1)],
      diameter: COPPER.liquid,
      ...branch,
    },
    {
      id: `gas-pipe@${unit}`,
      from: `gas@${unit}`,
      to: three ? `gas@${unit}` : 'gas-header',
      points: gas,
      diameter: COPPER.gas,
      ...branch,
    },
  ];
  if (three) {
    pipes.push(
      {
        id: `suction-branch@${unit}`,
        from: `gas@${unit}`,
        to: 'suction-header',
        points: [at(2.86, 0.72), at(2.86, 0.66), at(MEETS.suction, 0.6), at(MEETS.suction, RUN.gas)],
        diameter: COPPER.gas,
        carries: { of: [unit], only: 'cooling' },
      },
      {
        id: `hot-branch@${unit}`,
        from: 'hot-header',
        to: `gas@${unit}`,
        points: [at(MEETS.hot, RUN.hot), at(MEETS.hot, 0.6), at(2.86, 0.66), at(2.86, 0.72)],
        diameter: COPPER.gas,
        carries: { of: [unit], only: 'heating' },
      },
    );
  }
  const parts: DrawnPart[] = [
    boxed('unit', 'casing', 0.68, 0.84, 3.27, 1.56),
    boxed('inlet-grille', 'grille', 0.63, 1.1, 0.1, 1.05),
    { ...boxed('filter', 'filter', 0.92, 1.0, 0.12, 1.26), role: 'evaporator', of: unit },
    { ...boxed('coil', 'coil', 2.1, 1.02, 0.6, 1.2), role: 'evaporator', of: unit, inlet: 'bottom' },
    boxed('valve', 'electronic-valve', 1.68, 1.26, 0.32, 0.4),
    { ...boxed('fan', 'fan', 2.92, 1.34, 0.8, 0.8), role: 'evaporator', of: unit },
    boxed('outlet-grille', 'grille', 3.9, 1.38, 0.1, 0.72),
    boxed('bus-clamps', 'terminals', 3.84, 2.56, 0.36, 0.16),
    boxed('controller', 'thermostat', 4.38, 2.5, 0.16, 0.26),
    ...FURNITURE[index % FURNITURE.length].map(([kind, dx, dy, w, h]) => boxed(kind, kind, dx, dy, w, h)),
  ];
  if (three) parts.push(boxed('changeover', 'changeover-box', 2.56, 0.38, 0.6, 0.36));
  const air = (stage: DrawnAir['stage'], points: DrawnPath): DrawnAir => ({
    id: `${stage === 'entering' ? 'return' : 'supply'}@${unit}`,
    role: 'evaporator',
    of: unit,
    stage,
    points,
  });
  return {
    blocks: [{ id: `room@${unit}`, kind: 'room', x: round(x), y, w: ROOM.w, h: ROOM.h }],
    parts,
    pipes,
    air: [
      air('entering', [at(0.2, 2.75), at(0.3, 1.9), at(0.62, 1.62), at(2.06, 1.62)]),
      air('leaving', [at(2.74, 1.72), at(3.95, 1.72), at(4.3, 2.0), at(4.3, 2.7)]),
    ],
    places: placesOf(unit, at),
    views: [{ id: `room@${unit}`, grain: 'fine', x: round(x), y: round(y - 0.15), w: ROOM.w, h: ROOM.h + 0.3 }],
  };
}

type Item = readonly ['counter' | 'window', number, number, number, number];
const FURNITURE: readonly (readonly Item[])[] = [
  [['counter', 1.5, 2.58, 1.9, 0.62]],
  [
    ['counter', 0.9, 2.64, 1.1, 0.56],
    ['counter', 2.6, 2.64, 1.1, 0.56],
  ],
  [['counter', 2.0, 2.5, 1.6, 0.7]],
];

/** A unit's places along its refrigerant and then along its air. Exposures are from memory, no source. */
function placesOf(unit: string, at: (dx: number, dy: number) => readonly [number, number]): Omit<Place, 'order'>[] {
  const place = (
    id: string,
    kind: Place['kind'],
    dx: number,
    dy: number,
    reads: Place['reads'],
    more: Partial<Place> = {},
  ): Omit<Place, 'order'> => {
    const [px, py] = at(dx, dy);
    return { id: `${id}@${unit}`, kind, side: 'indoor', x: px, y: py, reads, ...more };
  };
  const behind = { needs: ['panel-open'], exposure: 0.08 } as const;
  return [
    place('liquid-pipe', 'pipe', 1.84, 2.02, { temperature: `liquidLineTemp@${unit}` }, behind),
    place('gas-pipe', 'pipe', 2.86, 0.78, { temperature: `evaporatorOutletTemp@${unit}` }, { exposure: 0.08 }),
    place('return-air', 'air', 0.25, 2.98, {
      temperature: `returnAirTemp@${unit}`,
      wetBulb: `returnAirWetBulb@${unit}`,
    }),
    place('filter-face', 'look', 0.98, 1.22, { look: `filterDust@${unit}` }),
    place('filter-drop', 'duct', 0.98, 2.1, { differentialPressure: `filterPressureDrop@${unit}` }),
    place('indoor-fan', 'look', 3.32, 1.74, { look: `evaporatorFanSpeed@${unit}` }),
    place('bus-clamps', 'terminals', 4.02, 2.64, { voltage: `busVoltage@${unit}` }, { needs: ['panel-open'] }),
    place('supply-air', 'air', 4.2, 1.74, {
      temperature: `supplyAirTemp@${unit}`,
      wetBulb: `supplyAirWetBulb@${unit}`,
    }),
  ];
}

/** Riser between storeys: one main upright in the shaft, drawn away from outdoors. */
export function riser(
  id: string,
  key: StationKey,
  x: number,
  from: number,
  to: number,
  of: readonly string[],
  kind: 'liquid' | 'gas' | 'suction' | 'hot',
): DrawnPipe {
  const points: DrawnPath = [
    [x, from],
    [x, to + (to > from ? OVERLAP : -OVERLAP)],
  ];
  const outward = kind === 'liquid' || kind === 'hot';
  const only = kind === 'suction' ? 'cooling' : kind === 'hot' ? 'heating' : null;
  return {
    id,
    from: key,
    to: key,
    points: outward ? points : [...points].reverse(),
    diameter: kind === 'liquid' ? COPPER.mainLiquid : COPPER.mainGas,
    insulated: true,
    carries: { of, ...(only ? { only } : {}) },
  };
}

/** y of a main below a storey's ceiling. */
export function runOf(storey: Storey, kind: keyof typeof RUN): number {
  return round(storey.ceiling + RUN[kind]);
}

/** Hundredths, so that sums of decimals stay what they say. */
export const round = (value: number): number => Math.round(value * 1000) / 1000;
