/**
 * The numbers of a machine whose indoor units hang on one circuit: outdoor modules, indoor units, the pipes between.
 * A coil's `role` in these data says nothing: it condenses or boils as the machine's mode asks.
 */
import type { CoilData } from '../parts/coil';
import type { CompressorData } from '../parts/compressor';
import type { FanData } from '../parts/fan';
import type { IceData } from '../parts/ice';
import type { LiquidPathData } from '../parts/metering';
import type { MotorData } from '../parts/motor';
import type { SuctionVesselData } from '../parts/suctionVessel';

/** One exchanger with its valve and its own two pipes up to where they branch. */
export interface BranchData {
  readonly id: string;
  readonly coil: CoilData;
  readonly fan: FanData;
  /** relative speed of the fan's low step */
  readonly fanLow: number;
  /** electronic valve and the pipe before it; `lift` = m that it lies above the branching point; `drier` is not used */
  readonly valve: LiquidPathData;
  /** gas pipe: Pa = drop · m² / rho; its volume and the liquid pipe's, m3 */
  readonly gasDrop: number;
  readonly gasVolume: number;
  readonly liquidVolume: number;
  /** building around an indoor unit: J/K and kg of air; left out outdoors */
  readonly roomCapacity?: number;
  readonly roomAir?: number;
  /** ice between the fins of a coil outdoors; left out indoors */
  readonly ice?: IceData;
}

export interface MainPipes {
  /** Pa = drop · m² / rho of the long gas pipe, the liquid pipe and the clean drier in it */
  readonly gasDrop: number;
  /** the same of the suction service valve wide open, with the pipe behind it */
  readonly inletDrop: number;
  readonly liquidDrop: number;
  readonly drier: number;
  /** bore of the long liquid pipe, m2 */
  readonly liquidBore: number;
  /** m that the branching point lies above the outdoor modules */
  readonly lift: number;
  /** m3: gas pipe (of a three-pipe machine the one under suction), hot gas pipe of a three-pipe machine, liquid pipe */
  readonly gasVolume: number;
  readonly hotVolume: number;
  readonly liquidVolume: number;
  /** discharge pipe, and low side beside coils and pipes (accumulator's gas space included), m3 */
  readonly dischargeVolume: number;
  readonly suctionVolume: number;
  /** W/K of the gas pipe to the air around it */
  readonly gasUa: number;
}

export interface NetworkControl {
  /** K by a unit's two sensors that its valve holds when it boils */
  readonly superheatTarget: number;
  /** the same at the outdoor modules in heating */
  readonly outdoorSuperheat: number;
  /** K at the discharge from which the modules' valves let wet gas through in heating, a kelvin of superheat less for each */
  readonly wetFrom: number;
  /** K of subcooling about which a condensing unit's valve opens, its opening there, and opening more a kelvin over it */
  readonly subcoolingTarget: number;
  readonly subcoolingOpening: number;
  readonly subcoolingGain: number;
  readonly minOpening: number;
  /** opening of a unit that stands by on hot gas, so that it does not fill with liquid */
  readonly drainOpening: number;
  /** K: dew at the suction that cooling holds, bubble at the discharge that heating holds */
  readonly evaporatingTarget: number;
  readonly condensingTarget: number;
  readonly minSpeed: number;
  readonly maxSpeed: number;
}

export interface NetworkLimits {
  readonly highPressure: number;
  readonly lowPressure: number;
  readonly dischargeTemp: number;
  readonly slowDownTemp: number;
  readonly slowDownPressure: number;
  /** evaporating pressure under which cooling slows down */
  readonly slowDownLow: number;
  readonly overloadCurrent: number;
}

export interface NetworkData {
  /** nominal charge, kg: base and what the pipes need by the charge rule */
  readonly charge: number;
  /** all compressors together */
  readonly compressor: CompressorData;
  readonly motor: MotorData;
  readonly modules: readonly BranchData[];
  readonly units: readonly BranchData[];
  readonly pipes: MainPipes;
  /** three pipes: each unit may cool or heat by itself */
  readonly threePipes: boolean;
  readonly suctionVessel: SuctionVesselData;
  /** subcooling exchanger: W/K, and largest share of the flow that goes through its bypass */
  readonly subcooler: { readonly ua: number; readonly largestShare: number };
  readonly control: NetworkControl;
  readonly limits: NetworkLimits;
}
