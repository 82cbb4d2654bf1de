/** What a plant is to everybody but the solver: its places, its drawing, its nameplate. */
import type { RefrigerantId } from '../fluids/fluid';
import type { Conditions, LookKey, OperatingMode, PlantId, ProbeKey, SensorKey, StationId } from '../types';

export type PlaceKind = 'port' | 'pipe' | 'air' | 'wire' | 'terminals' | 'duct' | 'look' | 'panel';

/** A place where something can be measured or seen. */
export interface Place {
  readonly id: string;
  readonly kind: PlaceKind;
  /** which box it belongs to */
  readonly side: 'outdoor' | 'line' | 'indoor';
  /** position in the drawing, m */
  readonly x: number;
  readonly y: number;
  /** rank along the refrigerant path (then air path, then electrics): the keyboard walks it */
  readonly order: number;
  /** which probe each physical quantity reads here */
  readonly reads: {
    readonly pressure?: ProbeKey;
    readonly temperature?: ProbeKey;
    readonly wetBulb?: ProbeKey;
    readonly current?: ProbeKey;
    readonly voltage?: ProbeKey;
    readonly capacitance?: ProbeKey;
    readonly resistance?: ProbeKey;
    readonly differentialPressure?: ProbeKey;
    readonly look?: LookKey;
    readonly link?: readonly (ProbeKey | `sensor:${SensorKey}`)[];
  };
  /** what has to be done first */
  readonly needs?: readonly ('cap-off' | 'panel-open' | 'isolated')[];
  /** 'side' of the pressure: which gauge span suits */
  readonly pressureSide?: 'high' | 'low';
  /** a clamp here without its insulation is pulled this share of the way to the surrounding air */
  readonly exposure?: number;
}

/** A poly-line in the drawing, m. */
export type DrawnPath = readonly (readonly [number, number])[];

export interface DrawnBlock {
  readonly id: string;
  readonly kind: 'room' | 'wall' | 'roof' | 'ground' | 'plantroom' | 'loft';
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  /** a gable fills its box with a triangle whose ridge is in the middle; left out = the box itself */
  readonly shape?: 'gable';
}

/**
 * An end of a pipe: a station of the circuit; the gas or liquid side of one indoor unit or outdoor module of several; or
 * where the pipes of many units meet (what runs there turns with the mode).
 */
export type StationKey =
  | StationId
  | `gas@${string}`
  | `liquid@${string}`
  | 'gas-header'
  | 'suction-header'
  | 'hot-header';

export interface DrawnPart {
  readonly id: string;
  readonly kind:
    | 'casing'
    | 'compressor'
    | 'coil'
    | 'fan'
    | 'drier'
    | 'sight-glass'
    | 'orifice'
    | 'electronic-valve'
    | 'reversing-valve'
    | 'changeover-box'
    | 'exchanger'
    | 'thermostatic-valve'
    | 'receiver'
    | 'bulb'
    | 'solenoid-valve'
    | 'defrost-heater'
    | 'accumulator'
    | 'filter'
    | 'service-valve'
    | 'control-box'
    | 'capacitor'
    | 'terminals'
    | 'thermostat'
    | 'duct'
    | 'grille'
    | 'slab'
    | 'bracket'
    | 'window'
    | 'door'
    | 'counter';
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  /** which coil / fan / filter of the model it shows: a coil by what it does, a fan by what it would do in cooling */
  readonly role?: 'condenser' | 'evaporator';
  /** the indoor unit or outdoor module that it belongs to where there are several */
  readonly of?: string;
  /** where a coil stands; left out = the condenser outdoors, the evaporator indoors */
  readonly side?: 'outdoor' | 'indoor';
  /** a coil: the edge at which its refrigerant comes in (of several units: when the rooms are cooled); it leaves at the opposite edge */
  readonly inlet?: 'top' | 'bottom' | 'left' | 'right';
}

/** What a branch does: as when rooms are cooled, or as when they are heated. */
export type Duty = 'cooling' | 'heating';

export interface DrawnPipe {
  readonly id: string;
  readonly from: StationKey;
  readonly to: StationKey;
  readonly points: DrawnPath;
  /**
   * Many units: ids of the units or modules whose refrigerant runs here, along `points` while these do what they do when
   * rooms are cooled, backwards while they do the other. `only` = a pipe that serves one of the two and is drawn in that
   * one's direction. Left out = the whole machine's flow.
   */
  readonly carries?: { readonly of: readonly string[]; readonly only?: Duty };
  /** share of the flow that runs here where several such pipes run side by side (1 if left out) */
  readonly share?: number;
  /** outside diameter, m */
  readonly diameter: number;
  /** drawn with its insulating sleeve */
  readonly insulated?: boolean;
}

/** Where air goes, in its direction: `condenser` is the outdoor unit's, `evaporator` the indoor unit's, in either mode. */
export interface DrawnAir {
  readonly id: string;
  readonly role: 'condenser' | 'evaporator';
  /** before or after its coil: which air temperature it carries */
  readonly stage: 'entering' | 'leaving';
  /** the indoor unit or outdoor module whose air it is where there are several */
  readonly of?: string;
  readonly points: DrawnPath;
}

/**
 * A part of the drawing that fills a small screen; every place lies inside at least one. Where there are many, the
 * coarse ones are for a large screen and the fine ones (single rooms) for a small one.
 */
export interface DrawnView {
  readonly id: string;
  /** left out = for every screen */
  readonly grain?: 'coarse' | 'fine';
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/**
 * The site in cut-away, metres, y downwards. Everything that the bench draws comes from here. The building and the
 * runs of the pipes are to scale; the units stand about twice as large as life, so that their insides can be read.
 */
export interface PlantDrawing {
  readonly width: number;
  readonly height: number;
  readonly ground: number;
  readonly views: readonly DrawnView[];
  readonly blocks: readonly DrawnBlock[];
  readonly parts: readonly DrawnPart[];
  readonly pipes: readonly DrawnPipe[];
  readonly air: readonly DrawnAir[];
  /** electric leads; `live` ones carry the compressor's current */
  readonly wires: readonly { readonly id: string; readonly points: DrawnPath; readonly live: boolean }[];
  /** where the indoor coils' water runs off and drips */
  readonly drain: DrawnPath;
  /** marks in pipes and air lie this many times as far apart: a large site has many metres of pipe (1 if left out) */
  readonly sparse?: number;
}

/** What the installer left on record of a machine with many units: its pipes, and the rule by which it was charged. */
export interface InstallRecord {
  /** `rated` = cooling, W; `metres` of liquid pipe from the branching point, m; `lift` = m above it */
  readonly units: readonly {
    readonly id: string;
    readonly rated: number;
    readonly metres: number;
    readonly lift: number;
  }[];
  /** m of the liquid main */
  readonly mainMetres: number;
  /** kg of the modules alone; kg a watt of the units, a metre of the main, a metre of a unit's pipe */
  readonly base: number;
  readonly perWatt: number;
  readonly perMainMetre: number;
  readonly perUnitMetre: number;
}

/** What the other layers need to know of a plant (the machine's numbers live beside it in the same data file). */
export interface PlantDescription {
  readonly id: PlantId;
  readonly refrigerants: readonly RefrigerantId[];
  readonly designConditions: Conditions;
  /** what it can be asked to do, each with the conditions at which it is rated */
  readonly modes: Readonly<Partial<Record<OperatingMode, Conditions>>>;
  /** what is different of it in a mode that it is not rated in first: coils and lines change their roles there */
  readonly otherwise?: Readonly<
    Partial<
      Record<OperatingMode, Partial<Pick<PlantDescription, 'designConditions' | 'places' | 'drawing' | 'nameplate'>>>
    >
  >;
  /** what is different of the variant built for a refrigerant, in the mode that it is rated in first */
  readonly variants?: Readonly<Partial<Record<RefrigerantId, Partial<Pick<PlantDescription, 'places' | 'drawing'>>>>>;
  readonly metering: 'fixed-orifice' | 'electronic-valve' | 'thermostatic-valve';
  /** K: what its room thermostat is set to as found, and the ends of its dial; left out = a living room's */
  readonly setPoint?: { readonly found: number; readonly low: number; readonly high: number };
  /** ids of its indoor units where there are several */
  readonly units?: readonly string[];
  readonly variableSpeed: boolean;
  /** a shut solenoid valve keeps the two sides apart at rest */
  readonly pumpsDown?: boolean;
  readonly dataLink: boolean;
  readonly places: readonly Place[];
  readonly drawing: PlantDrawing;
  readonly nameplate: (refrigerant: RefrigerantId) => {
    readonly refrigerant: RefrigerantId;
    readonly charge: number;
    /** how the charge is worked out: kg for the machine with `included` m of line, kg for each further m, m that are laid */
    readonly chargeRule?: {
      readonly base: number;
      readonly allowance: number;
      readonly included: number;
      readonly length: number;
    };
    readonly ratedCapacity: number;
    readonly ratedCurrent: number;
    readonly supplyVoltage: number;
    readonly capacitance: number | null;
    /** target subcooling or superheat at design, K, as printed */
    readonly targetSuperheat: number | null;
    readonly targetSubcooling: number | null;
    readonly highPressureLimit: number;
    readonly ratedAirFlow: number;
    /** of machines whose charge depends on their pipes */
    readonly install?: InstallRecord;
  };
}
