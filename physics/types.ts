/**
 * The contract of the machine: what goes in, what comes out. SI throughout (Pa absolute, K, J/kg, kg/s, W, m, s).
 * Everything outside `physics/` talks to the machine through these types and `physics/index.ts`.
 */
import type { RefrigerantId } from './fluids/fluid';
import type { Correlations } from './parts/correlations';
import type { PlantDescription } from './plants/types';
import type { Looks, Probes, SensorName, Sensors, TransducerName } from './readings';

export type * from './plants/types';
export * from './readings';

export type PlantId =
  | 'orifice-split'
  | 'inverter-split'
  | 'cold-room'
  | 'multi-split'
  | 'heat-recovery'
  | 'thermostatic-heat-pump';

/** What the machine is asked to do; `simultaneous` = some rooms cooled, others heated. */
export const OPERATING_MODES = ['cooling', 'heating', 'simultaneous'] as const;
export type OperatingMode = (typeof OPERATING_MODES)[number];

export interface Conditions {
  /** outdoor air dry bulb, K */
  readonly outdoor: number;
  /** return air dry bulb, K */
  readonly indoor: number;
  /** return air wet bulb, K */
  readonly wetBulb: number;
  readonly mode: OperatingMode;
  /** site altitude, m (sets air density and the gauge zero) */
  readonly altitude: number;
}

/** Fault key -> severity, e.g. `{ undercharge: 0.2, 'thermistor-drift:suctionLine': 3 }`; absent or 0 = healthy. */
export type Faults = Readonly<Record<string, number>>;

/** Families of faults: the causes that an examiner may name. `no-fault` is the healthy machine. */
export const FAMILIES = [
  'undercharge',
  'line-charge-not-added',
  'lines-too-long',
  'overcharge',
  'non-condensable',
  'drier-restriction',
  'liquid-line-kink',
  'liquid-line-heated',
  'suction-line-uninsulated',
  'service-valve-throttled',
  'condenser-dirty',
  'condenser-fan-slow',
  'air-recirculation',
  'filter-dirty',
  'evaporator-dirty',
  'evaporator-fan-slow',
  'duct-leak',
  'return-duct-leak',
  'compressor-leak-by',
  'compressor-worn',
  'orifice-oversize',
  'orifice-undersize',
  'metering-valve-stuck-closing',
  'metering-valve-stuck-opening',
  'metering-valve-coil-unplugged',
  'bulb-charge-lost',
  'bulb-loose',
  'metering-valve-superheat-set',
  'solenoid-stuck-open',
  'solenoid-stuck-closed',
  'fan-cycling-control-failed',
  'defrost-not-starting',
  'defrost-not-ending',
  'defrost-heater-dead',
  'capacitor-weak',
  'fan-capacitor-weak',
  'supply-voltage-low',
  'contactor-burnt',
  'phase-lost',
  'thermistor-drift',
  'thermistor-out-of-its-pocket',
  'thermistor-open',
  'thermistor-shorted',
  'pressure-transducer-offset',
  'thermostat-misplaced',
  'drain-blocked',
  'check-valve-leaking',
  'reversing-valve-leak',
  'reversing-valve-half-shifted',
  'changeover-ports-crossed',
  'unit-address-crossed',
  'module-valve-shut',
  'metering-valve-not-closing',
  'unit-capacity-set-wrong',
  'communication-lost',
] as const;
export type FamilyId = (typeof FAMILIES)[number];
export type CauseId = FamilyId | 'no-fault';

/** One fault family as every other layer sees it (data; one file each in physics/faults). */
export interface FaultFamily {
  readonly id: FamilyId;
  /** plants on which it can occur */
  readonly plants: readonly PlantId[];
  /** severity that is just visible, clear, and the end of the useful range, in the contract's physical unit */
  readonly slight: number;
  readonly clear: number;
  readonly severe: number;
  readonly max: number;
  /** unit of the severity */
  readonly unit: 'share' | 'K' | 'V' | 'm' | 'Pa';
  /** the key's suffix where a family needs one: the sensor that drifts */
  readonly targets?: readonly (SensorName | TransducerName)[];
  /** sits in one indoor unit where there are several: the key may name it after an @ */
  readonly perUnit?: boolean;
  /** modes in which it can be felt on a plant; left out = in every one */
  readonly modes?: Readonly<Partial<Record<PlantId, readonly OperatingMode[]>>>;
  /** variants of a plant that lack the part */
  readonly lacking?: Readonly<Partial<Record<PlantId, readonly RefrigerantId[]>>>;
  /** may be negative (a thermistor drifts both ways) */
  readonly signed?: boolean;
}

/** Differences between machines of one kind that are no fault. Multipliers on nominal values (1 = nominal). */
export interface Nuisance {
  readonly charge: number;
  readonly condenserAir: number;
  readonly evaporatorAir: number;
  readonly condenserUa: number;
  readonly evaporatorUa: number;
  readonly displacement: number;
  readonly meteringArea: number;
  readonly voltage: number;
}

/** What a room asks of its indoor unit where there are several. */
export type UnitDemand = 'off' | 'cooling' | 'heating';

/** What a person can set on the machine. */
export interface Controls {
  /** the room thermostat calls for cooling and the disconnect is closed */
  readonly running: boolean;
  /** room set-point, K (the inverter's speed follows it; the fixed-speed machine cycles on it) */
  readonly setPoint: number;
  readonly indoorFan: 'low' | 'high';
  readonly outdoorFanRunning: boolean;
  readonly indoorFanRunning: boolean;
  /** inverter: test mode, compressor held at rated speed */
  readonly fixedSpeed: boolean;
  /** electronic valve held at this opening 0…1, or null for its own control */
  readonly valveHold: number | null;
  /** several indoor units: what single rooms ask; who is not named asks what the mode says */
  readonly units?: Readonly<Record<string, UnitDemand>>;
  /** reversible machine: what the room thermostat asks for; left out = what the machine was called to */
  readonly mode?: 'cooling' | 'heating';
}

export interface MachineSetup {
  readonly plant: PlantId;
  readonly refrigerant: RefrigerantId;
  readonly conditions: Conditions;
  readonly faults: Faults;
  readonly nuisance?: Partial<Nuisance>;
  /** the published correlations that its coils follow; left out = ours. For asking what a conclusion hangs on. */
  readonly correlations?: Correlations;
}

/** What the controller says of itself, as message ids (texts live in the catalogues; never letter-number codes). */
export type ControllerState =
  | 'off'
  | 'cooling'
  | 'cooling-at-full-speed'
  | 'heating'
  | 'heating-at-full-speed'
  | 'cooling-and-heating'
  | 'waiting-to-restart'
  | 'room-satisfied'
  | 'room-warm-enough'
  | 'pumping-down'
  | 'defrosting'
  | 'dripping'
  | 'bringing-oil-back'
  | 'fan-waiting'
  | 'slowed-by-discharge-heat'
  | 'slowed-by-high-pressure'
  | 'slowed-by-low-pressure'
  | 'stopped-on-high-pressure'
  | 'stopped-on-low-pressure'
  | 'stopped-on-discharge-heat'
  | 'stopped-on-overload'
  | 'held-by-safety-circuit'
  | 'held-by-sensor';

/** Whether the controller starts nothing as long as something stays as it is: the machine stands, switched on. */
export function isHeld(controller: ControllerState): boolean {
  return controller.startsWith('held-by-');
}

export type StationId =
  | 'compressor-in'
  | 'compressor-out'
  | 'condenser-in'
  | 'condenser-out'
  | 'liquid-port'
  | 'drier-out'
  | 'metering-in'
  | 'evaporator-in'
  | 'evaporator-out'
  | 'suction-port';

/** State of the refrigerant at one station of the circuit. */
export interface Station {
  readonly pressure: number;
  readonly temperature: number;
  readonly enthalpy: number;
  /** <0 subcooled, 0…1 two-phase, >1 superheated */
  readonly quality: number;
  /** homogeneous density, kg/m3 */
  readonly density: number;
  readonly massFlow: number;
}

export interface CoilSegment {
  readonly temperature: number;
  readonly quality: number;
  readonly wall: number;
  /** kg of ice on it */
  readonly frost: number;
}

/** What an indoor unit says of itself. */
export type UnitState = 'off' | 'cooling' | 'heating' | 'room-satisfied' | 'machine-stopped' | 'not-answering';

/** One indoor unit or outdoor module of several: its coil, and the refrigerant on both sides of it. */
export interface BranchSnapshot {
  readonly id: string;
  /** what its coil does, whatever it was asked */
  readonly role: 'evaporator' | 'condenser' | 'idle';
  /** fan speed over its rated speed */
  readonly fan: number;
  readonly gas: Station;
  readonly liquid: Station;
  readonly coil: readonly CoilSegment[];
}

/** One indoor unit of several. */
export interface UnitSnapshot extends BranchSnapshot {
  readonly state: UnitState;
}

/** Everything one instant of the machine shows. Plain data. */
export interface Snapshot {
  readonly time: number;
  /** flow = quasi-steady circuit; still = the two sides are equilibrium vessels */
  readonly regime: 'flow' | 'still';
  readonly probes: Probes;
  readonly looks: Looks;
  readonly controller: ControllerState;
  /** what the controller's own sensors report, K (drift included) */
  readonly sensors: Sensors;
  readonly stations: Readonly<Record<StationId, Station>>;
  readonly condenser: readonly CoilSegment[];
  readonly evaporator: readonly CoilSegment[];
  /** where there are several indoor units: they, and the outdoor modules */
  readonly units?: readonly UnitSnapshot[];
  readonly modules?: readonly BranchSnapshot[];
  /** a reversible machine that runs the other way than it was called to: a defrost, or its thermostat turned over */
  readonly turnedOver?: boolean;
  /** kg/s of water that a reversible machine's outdoor coil takes out of its air */
  readonly outdoorWater?: number;
  /** relative defects: |heat in + power − heat out − storage| / capacity, and |mass − charge| in kg */
  readonly balance: { readonly energy: number; readonly mass: number };
}

export interface SteadyResult {
  readonly plant: PlantId;
  readonly refrigerant: RefrigerantId;
  readonly conditions: Conditions;
  readonly faults: Faults;
  readonly probes: Probes;
  readonly looks: Looks;
  readonly snapshot: Snapshot;
  readonly balance: { readonly energy: number; readonly mass: number };
}

/** A machine's state in time: opaque, immutable, JSON-able. */
export interface MachineState {
  readonly time: number;
  readonly [key: string]: unknown;
}

/** One machine: geometry, faults and conditions compiled once. */
export interface Machine {
  readonly setup: MachineSetup;
  readonly plant: PlantDescription;
  /** Steady state under these controls. Throws PhysicsError with a code that names why. */
  steady(controls?: Partial<Controls>): Snapshot;
  /** As found: 'settled' = in steady state under the controls; 'standing' = off and equalised for hours. */
  start(from: 'settled' | 'standing', controls?: Partial<Controls>): MachineState;
  /** Advance by dt seconds (whole seconds, 1…30); deterministic. */
  step(state: MachineState, controls: Controls, dt: number): MachineState;
  snapshot(state: MachineState): Snapshot;
  /** True when nothing measurable moves any more (the state may be kept as it is while time runs). */
  settled(state: MachineState): boolean;
  /** The same machine with other faults (repair): carries walls, room, frost and charge over to the mended machine. */
  repaired(state: MachineState, faults: Faults): { machine: Machine; state: MachineState };
  readonly defaultControls: Controls;
}
