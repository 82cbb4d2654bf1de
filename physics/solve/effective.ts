/**
 * The machine's numbers: nominal data of a plant variant, and what faults and nuisance make of them.
 */
import { PhysicsError } from '../errors';
import type { CoilData } from '../parts/coil';
import type { CompressorData } from '../parts/compressor';
import type { FanData } from '../parts/fan';
import type { IceData } from '../parts/ice';
import type { LiquidPathData } from '../parts/metering';
import type { MotorData } from '../parts/motor';
import type { ReceiverData } from '../parts/receiver';
import type { ReversingValveData } from '../parts/reversingValve';
import type { SuctionVesselData } from '../parts/suctionVessel';
import type { SensorCircuit } from '../parts/thermistor';
import type { ThermostaticValveData } from '../parts/thermostaticValve';
import type { SensorName, TransducerName } from '../types';
import type { ColdStoreData } from './coldStore';

/** Which way the refrigerant runs. */
export type Direction = 'cooling' | 'heating';

/**
 * Everything the equations need of one variant (plant × refrigerant) in one mode. `condenser` and `evaporator` are the coils
 * by what they do: in heating the condenser stands indoors. Fans are named by where they stand.
 */
export interface MachineData {
  /** left out = cooling */
  readonly mode?: Direction;
  readonly charge: number;
  readonly compressor: CompressorData;
  readonly motor: MotorData;
  readonly condenser: CoilData;
  readonly evaporator: CoilData;
  readonly outdoorFan: FanData;
  readonly indoorFan: FanData;
  /** relative speed of the indoor fan's low step */
  readonly indoorFanLow: number;
  readonly liquid: LiquidPathData;
  readonly lines: LineData;
  readonly suctionVessel: SuctionVesselData;
  readonly control: ControlData;
  /** where liquid is kept after the condenser; left out = none */
  readonly receiver?: ReceiverData;
  /** left out = none: the compressor's pipes go to the coils directly */
  readonly reversingValve?: ReversingValveData;
  /** relative humidity of the outdoor air where its coil gets wet or ices; left out = 0.5, where it hardly matters */
  readonly outdoorHumidity?: number;
  /** with `control.metering` thermostatic */
  readonly valve?: ThermostaticValveData;
  readonly limits: LimitData;
  /** a cold room's controller, and what ice does to its cooler; left out = neither */
  readonly coldStore?: ColdStoreData;
  readonly ice?: IceData;
  /** building around the indoor unit: J/K of air, furniture and walls that follow the air */
  readonly roomCapacity: number;
  readonly roomAir: number;
  /** ice on the outdoor coil of a machine that heats; left out = it takes no air away */
  readonly outdoorIce?: IceData;
}

export interface LineData {
  /** volumes, m3: discharge pipe; liquid up to the drier; liquid from drier to metering; after metering; suction */
  readonly dischargeVolume: number;
  readonly liquidVolume: number;
  readonly liquidLineVolume: number;
  readonly expansionVolume: number;
  readonly suctionVolume: number;
  /** Pa = coefficient · m² / rho */
  readonly dischargeDrop: number;
  readonly suctionDrop: number;
  readonly inletDrop: number;
  /** W/K between liquid / suction line and the outdoor air around it */
  readonly liquidUa: number;
  readonly suctionUa: number;
  /** share of the suction line's heat gain before the service valve */
  readonly suctionShare: number;
  /** W/K between the discharge line and the outdoor air around it (a heating machine's vapour line); left out = none */
  readonly dischargeUa?: number;
  /** the liquid line lies before the liquid port instead of behind the drier: m that the port lies above the condenser's
   * outlet, and what is left behind the drier (Pa = behind · m² / rho); left out = it lies behind */
  readonly beforePort?: { readonly lift: number; readonly behind: number };
}

export interface ControlData {
  readonly metering: 'fixed' | 'electronic' | 'thermostatic';
  readonly variableSpeed: boolean;
  /** superheat target by the controller's two sensors, K (electronic valve) */
  readonly superheatTarget: number;
  readonly minOpening: number;
  /** evaporating temperature target at the coil sensor, K (variable speed) */
  readonly coilTarget: number;
  readonly minSpeed: number;
  /** relative to rated speed */
  readonly maxSpeed: number;
  /** stand-by opening of the valve with the machine off */
  readonly parkedOpening: number;
}

export interface LimitData {
  readonly highPressure: number;
  readonly lowPressure: number;
  readonly dischargeTemp: number;
  /** the variable-speed machine slows down from here */
  readonly slowDownTemp: number;
  readonly slowDownPressure: number;
  /** A at which the overload opens, and share of capacitance without which the motor does not start */
  readonly overloadCurrent: number;
  readonly startCapacitance: number;
}

/** Mutable while faults are applied, then frozen into a machine. */
export interface Effective {
  charge: number;
  /** m of liquid line whose charge was never added: told by the label only, the charge lacks it already */
  lineUncharged: number;
  /** length of the lines beyond the planned one over the planned one */
  linesLonger: number;
  displacement: number;
  leakArea: number;
  /** factor on the power that its work takes */
  friction: number;
  /** coefficients of the drier, of the liquid line, and of the suction service valve with the pipe behind it */
  drier: number;
  line: number;
  suctionValve: number;
  /** coefficient of the pipe between coil and service valve */
  suctionLine: number;
  /** W/K between the liquid line behind the drier and something hot / between suction line and outdoor air */
  liquidLineUa: number;
  suctionUa: number;
  /** W/K between the hot vapour line of a heating machine and the outdoor air */
  dischargeUa: number;
  /** leak area inside the reversing valve, m2, and factor on the pressure drop of its passages */
  reversingLeak: number;
  reversingDrop: number;
  /** factor on the metering area */
  metering: number;
  /** always open beside the metering device, in openings of its area (a check valve that does not close) */
  bypass: number;
  /** valve stuck at this opening, or NaN */
  stuckOpening: number;
  /** the coil of an electronic valve has no contact */
  valveCoilOpen: boolean;
  /** thermostatic valve: share of the bulb's charge lost, share of its thermal contact lost */
  bulbLost: number;
  bulbLoose: number;
  /** thermostatic valve: K of superheat that its spring asks for beyond the right setting */
  superheatSet: number;
  /** solenoid valve: share of its area that it passes when shut, and that is missing when open */
  solenoidPassing: number;
  solenoidLost: number;
  /** share of the head pressures, at which the condenser's fan is switched, that is missing */
  fanSwitchLost: number;
  /** defrost: kg of ice as found; no defrost starts where > 0; K that its end is felt too cold; share of the heat lost */
  ice: number;
  defrostNotStarting: number;
  defrostNotEnding: number;
  heaterLost: number;
  weakCapacitor: number;
  voltage: number;
  /** of three phases: share of one's voltage that is gone */
  phaseLost: number;
  /** share of the signal bus's voltage that is gone at an indoor unit */
  busLost: number;
  /** V lost across the contactor's poles while it is closed */
  contactDrop: number;
  /** share of its capacitance that the outdoor fan's capacitor has lost */
  weakFanCapacitor: number;
  /** nitrogen: partial pressure at 25 °C over the nitrogen-free standing pressure */
  nitrogen: number;
  /** outdoor coil and fan (`condenser…`, named for cooling), indoor coil and fan (`evaporator…`), in either mode */
  condenserLost: number;
  condenserAir: number;
  condenserUa: number;
  /** share of the condenser's inlet air that is its own outlet air */
  recirculated: number;
  outdoorFanSpeed: number;
  filterLost: number;
  evaporatorLost: number;
  /** share of the supply air lost before the grilles; share of the unit's intake that comes from the loft */
  supplyLeak: number;
  returnLeak: number;
  evaporatorAir: number;
  evaporatorUa: number;
  indoorFanSpeed: number;
  /** several units: opening that a shut valve keeps; largest one that its controller asks for */
  valvePasses: number;
  stroke: number;
  /** pipes, and address, exchanged with the next unit's; the second module is shut off */
  portsCrossed: number;
  addressCrossed: number;
  moduleShut: number;
  /** K by which the room thermostat's air is warmer than the room's */
  thermostatOffset: number;
  /** share of the condensate pan that water fills */
  panWater: number;
  /** what each sensor adds: K, of a pressure sensor Pa */
  readonly drift: Record<SensorName | TransducerName, number>;
  /** share of its thermal contact that each sensor has lost */
  readonly loose: Record<SensorName, number>;
  /** what its plug and sleeve do to each */
  readonly sensorCircuit: Record<SensorName, SensorCircuit>;
}

/** K and J/(kg K) of liquid at its port and of gas at the evaporator's outlet, K of the outdoor air. */
export interface CarriedByLines {
  readonly tLiquid: number;
  readonly cpLiquid: number;
  readonly tEvaporatorOut: number;
  readonly cpVapour: number;
  readonly outdoor: number;
}

/** Healthy machine at its design point: the yardstick of fault severities. */
export interface DesignPoint {
  readonly massFlow: number;
  readonly dischargeFlow: number;
  /** kg/s through drier and liquid line: what an exchanger lets off before them is not in it */
  readonly liquidFlow: number;
  readonly pHigh: number;
  readonly pLow: number;
  readonly pDischarge: number;
  readonly pSuction: number;
  readonly rhoDischarge: number;
  readonly rhoLiquid: number;
  readonly rhoSuction: number;
  /** of a machine with one indoor unit: what its lines carry */
  readonly carried?: CarriedByLines;
  /** of a reversible machine that heats: the same machine's point in cooling, by which a fault of one pipe is the same in both */
  readonly cooling?: DesignPoint;
  readonly opening: number;
}

/** Throws `bad-input` on a machine whose lines are not one liquid and one suction line. */
export function carriedBy({ carried }: DesignPoint): CarriedByLines {
  if (carried) return carried;
  throw new PhysicsError('bad-input', 'this machine has no single liquid and suction line');
}

/** What of a machine's numbers a fault may ask for. */
export interface Nominal {
  readonly charge: number;
  readonly liquid: { readonly drier: number; readonly line: number };
  readonly lines: {
    readonly inletDrop: number;
    /** of a machine with one liquid and one suction line */
    readonly suctionDrop?: number;
    readonly liquidLineVolume?: number;
    readonly suctionUa?: number;
    readonly suctionShare?: number;
    readonly dischargeUa?: number;
  };
  readonly motor: MotorData;
  /** a cold room's */
  readonly indoorFan?: FanData;
  readonly ice?: IceData;
  readonly coldStore?: ColdStoreData;
  /** a reversible machine's */
  readonly outdoorFan?: FanData;
  readonly outdoorIce?: IceData;
}

/** A plug and a sleeve as they should be. */
const SOUND: SensorCircuit = { series: 0, leak: 0 };

export function healthy(data: Nominal): Effective {
  return {
    charge: data.charge,
    lineUncharged: 0,
    linesLonger: 0,
    displacement: 1,
    leakArea: 0,
    friction: 1,
    drier: data.liquid.drier,
    line: data.liquid.line,
    suctionValve: data.lines.inletDrop,
    suctionLine: data.lines.suctionDrop ?? 0,
    liquidLineUa: 0,
    suctionUa: data.lines.suctionUa ?? 0,
    dischargeUa: data.lines.dischargeUa ?? 0,
    reversingLeak: 0,
    reversingDrop: 1,
    metering: 1,
    bypass: 0,
    stuckOpening: Number.NaN,
    valveCoilOpen: false,
    bulbLost: 0,
    bulbLoose: 0,
    superheatSet: 0,
    solenoidPassing: 0,
    solenoidLost: 0,
    fanSwitchLost: 0,
    ice: 0,
    defrostNotStarting: 0,
    defrostNotEnding: 0,
    heaterLost: 0,
    weakCapacitor: 0,
    voltage: data.motor.voltage,
    phaseLost: 0,
    busLost: 0,
    contactDrop: 0,
    weakFanCapacitor: 0,
    nitrogen: 0,
    condenserLost: 0,
    condenserAir: 1,
    condenserUa: 1,
    recirculated: 0,
    outdoorFanSpeed: 1,
    filterLost: 0,
    evaporatorLost: 0,
    supplyLeak: 0,
    returnLeak: 0,
    evaporatorAir: 1,
    evaporatorUa: 1,
    indoorFanSpeed: 1,
    valvePasses: 0,
    stroke: 1,
    portsCrossed: 0,
    addressCrossed: 0,
    moduleShut: 0,
    thermostatOffset: 0,
    panWater: 0,
    drift: {
      suctionLine: 0,
      evaporatorCoil: 0,
      dischargeLine: 0,
      outdoorAir: 0,
      returnAir: 0,
      suctionPressure: 0,
      dischargePressure: 0,
    },
    loose: { suctionLine: 0, evaporatorCoil: 0, dischargeLine: 0, outdoorAir: 0, returnAir: 0 },
    sensorCircuit: {
      suctionLine: SOUND,
      evaporatorCoil: SOUND,
      dischargeLine: SOUND,
      outdoorAir: SOUND,
      returnAir: SOUND,
    },
  };
}

/** V at the compressor's terminals while its contactor is closed. */
export function motorVoltage(effective: Effective): number {
  return effective.voltage - effective.contactDrop;
}
