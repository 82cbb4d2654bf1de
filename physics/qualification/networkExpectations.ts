/**
 * What the trade expects of machines whose indoor units share one circuit, written down before their numbers were chosen:
 * bands, directions, who stands out among its siblings, look-alikes. Readings as in machines.ts; those of one unit are
 * compared with its siblings'. Common practice, reviewed by the trade, no source, unless said.
 */

export type Band = readonly [number, number];
export type Bands = Readonly<Record<string, Band>>;

const ANY = Number.POSITIVE_INFINITY;

/**
 * kPa absolute, °C, K, g/s, A, kg. `SCport` before and `SC` after the subcooling exchanger; `SHunit`, `SCunit`,
 * `opening`: worst unit either way; `unitFlow` through the units (the exchanger's bypass not counted).
 */
export const COOLING_410: Bands = {
  Te: [5, 8],
  Tc: [44, 49],
  SHunit: [2, 6],
  SHcomp: [3, 8],
  SCport: [3, 7],
  SC: [10, 20],
  Td: [72, 88],
  DSH: [25, 42],
  ps: [930, 1020],
  pd: [2670, 3000],
  drop: [9, 13],
  rise: [9, 13],
  opening: [0.35, 0.5],
};

/** Two per cent more pressure; 88…105 °C at the discharge. */
export const COOLING_32: Bands = {
  ...COOLING_410,
  Td: [88, 105],
  DSH: [40, 60],
  ps: [950, 1040],
  pd: [2720, 3060],
};

export const HEATING_410: Bands = {
  Te: [-4, 0],
  Tc: [43, 48],
  SHout: [1, 6],
  SCunit: [5, 15],
  Td: [73, 90],
  ps: [700, 800],
  pd: [2600, 2930],
  drop: [-22, -15],
  rise: [-6, -3],
};

/** At its step-down limit, so that wet suction is part of the plant. */
export const HEATING_32: Bands = { ...HEATING_410, Td: [95, 112], ps: [714, 816], pd: [2650, 2990] };

/** Per size: flow, current at 400 V, charge with 60…100 m of pipe. Flow of the other refrigerant by its latent heat. */
export const MULTI_SIZE = {
  cooling: { unitFlow: [118, 133], current: [9, 12], charge: [10, 16], capacity: [21000, 24000] },
  heating: { flow: [105, 120], current: [10, 13] },
} as const;
/** R-32 carries 1.45 times as much heat a kilogram; three tenths less charge is common. */
export const MULTI_SIZE_32 = {
  cooling: { unitFlow: [80, 93], current: [9, 12], charge: [7, 12], capacity: [21000, 24000] },
  heating: { flow: [70, 84], current: [10, 13] },
} as const;
export const RECOVERY_SIZE = {
  cooling: { unitFlow: [340, 400], current: [28, 38], charge: [32, 50], capacity: [62000, 71000] },
  heating: { flow: [320, 360], current: [30, 40] },
} as const;

/** Half of the rooms cool, half heat: hot gas and evaporating °C, K or share; header under the hot gas, kPa. */
export const HALF_AND_HALF: Bands = {
  Tc: [43, 48],
  Te: [2, 7],
  header: [100, 400],
  // "outdoor coil flow near nil": outdoor heat over what the heating rooms take
  outdoorShare: [-0.2, 0.2],
};

/** Nameplate charge over what the installer's rule gives. */
export const CHARGE_RULE: Band = [0.97, 1.03];

/**
 * Per kelvin outdoors at rated speed; K for a quarter less air; K of subcooling for the charge. (The review's suction
 * pressure per kelvin of wet bulb is of an orifice; a valve that holds superheat lets the suction follow, see slopes.ts.)
 */
export const SLOPES: Bands = {
  'Tc per K outdoors': [0.95, 1.05],
  // union of two sources, as for the other machines: −2…−3 K (review) and −1…−4 K (envelope)
  'Te, 25 % less indoor air': [-4, -1],
  'SC, 10 % less charge': [-5, -2],
  'SC, 20 % more charge': [3, 6],
};

/**
 * Look-alike: the whole machine 30 % short of charge (A), or one valve held at a tenth (B); eight units, forced full load.
 * `unit` = the sick one, `far` = the worst of the far ones, `others` = worst neighbour either way.
 */
export const SHORT_OR_HELD = {
  held: 0.1,
  alike: { unitSH: [10, 20], unitDrop: [2, 5] },
  A: { opening: [0.8, 1], farSH: [8, 20], SC: [-ANY, 3], Td: [95, 110] },
  B: { otherOpening: [0.35, 0.5], otherSH: [3, 6], SC: [5, 15], Td: [72, 88] },
  /** in other weather and with less air: what the default instruments must still part, K and share */
  apart: { SC: 2.4, farSH: 2.4, opening: 0.15 },
} as const;

/**
 * Half of the rooms cool, half heat; what stands out, by which reading, against the siblings of the same duty. Written as
 * an experienced technician ranks: the named unit is the furthest off, and by at least so much (sign: over or under).
 */
export interface Ranking {
  readonly name: string;
  readonly fault: string;
  readonly severity: number;
  /** who cools or heats otherwise than every second room */
  readonly demands?: Readonly<Record<string, 'off' | 'cooling' | 'heating'>>;
  readonly mode: 'cooling' | 'heating' | 'simultaneous';
  /** a probe, or a sensor as the data link shows it; `worst` = the unit that must be first, `by` in K, W share or opening */
  readonly worst: string;
  readonly reading: 'evaporatorSuperheat' | 'subcooling' | 'drop' | 'valveOpening' | 'sensor' | 'load';
  readonly by: Band;
}

export const RANKINGS: readonly Ranking[] = [
  {
    name: 'one valve nearly shut',
    fault: 'metering-valve-stuck-closing@unit3',
    severity: 0.75,
    mode: 'cooling',
    worst: 'unit3',
    reading: 'evaporatorSuperheat',
    by: [6, 25],
  },
  {
    name: 'one valve nearly shut',
    fault: 'metering-valve-stuck-closing@unit3',
    severity: 0.75,
    mode: 'cooling',
    worst: 'unit3',
    reading: 'drop',
    by: [-ANY, -3],
  },
  {
    name: 'one valve nearly shut while it heats',
    fault: 'metering-valve-stuck-closing@unit4',
    severity: 0.75,
    mode: 'simultaneous',
    worst: 'unit4',
    reading: 'drop',
    by: [3, 25],
  },
  {
    name: 'one valve far open',
    fault: 'metering-valve-stuck-opening@unit5',
    severity: 0.7,
    mode: 'cooling',
    worst: 'unit5',
    reading: 'evaporatorSuperheat',
    by: [-10, -2.4],
  },
  {
    name: 'dirty filter of one unit',
    fault: 'filter-dirty@unit2',
    severity: 0.5,
    mode: 'cooling',
    worst: 'unit2',
    reading: 'drop',
    by: [1.5, 9],
  },
  {
    name: 'crossed pipes: the room that asks for heat is cooled',
    fault: 'changeover-ports-crossed@unit3',
    severity: 1,
    mode: 'simultaneous',
    worst: 'unit4',
    reading: 'drop',
    by: [12, 40],
  },
  {
    name: 'crossed pipes: the room that asks for cold is heated',
    fault: 'changeover-ports-crossed@unit3',
    severity: 1,
    mode: 'simultaneous',
    worst: 'unit3',
    reading: 'drop',
    by: [-40, -12],
  },
  {
    name: 'valve of an off unit passes: its coil is not at room temperature',
    fault: 'metering-valve-not-closing@unit6',
    severity: 0.1,
    mode: 'cooling',
    demands: { unit6: 'off', unit2: 'off' },
    worst: 'unit6',
    reading: 'sensor',
    by: [-25, -4],
  },
  {
    name: 'outlet thermistor of one unit shows 5 K too much',
    fault: 'thermistor-drift:suctionLine@unit3',
    severity: 5,
    mode: 'cooling',
    worst: 'unit3',
    reading: 'evaporatorSuperheat',
    by: [-10, -2.4],
  },
  {
    name: 'outlet thermistor of one unit shows 5 K too little',
    fault: 'thermistor-drift:suctionLine@unit3',
    severity: -5,
    mode: 'cooling',
    worst: 'unit3',
    reading: 'evaporatorSuperheat',
    by: [3, 10],
  },
];

/** Unequal lift: a unit that lies higher has less liquid pressure, so its valve stands wider. Share of opening per 7 m. */
export const LIFT: Band = [0.01, 0.2];

/**
 * One module's valve shut with full load: the two others carry all; Tc up, air rise up, capacity down or speed up; never
 * a unit that stands out. K.
 */
export const MODULE_SHUT = { Tc: [3, 12], rise: [2, 8], siblings: [0, 1.5] } as const;

/** Heat recovery −30 %, half and half: valves wider, subcooling of heating rooms down; ranks no unit. */
export const RECOVERY_SHORT = { opening: [0.1, 1], SCunit: [-ANY, -2.4] } as const;

/**
 * Where the outdoor coil turns, half of the rooms each way: condenses in the warm, boils in the cold. Sweeps over outdoor
 * temperature and over how many rooms heat must solve throughout; no neighbouring step of a kelvin outdoors may move the
 * hot gas or the evaporating temperature more than this, K.
 */
export const TURNING = { step: 3, allHeat: 'evaporator', allCool: 'condenser' } as const;

/** Random machines: ranges, °C, and what must hold. */
export const DRAWS = {
  cooling: [18, 46],
  heating: [-20, 20],
  simultaneous: [-10, 30],
  solved: 0.995,
  energy: 1e-3,
  charge: 1e-9,
} as const;
