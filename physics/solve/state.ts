/**
 * A machine's state between steps: plain immutable data. Flow and still regime share everything but the vessels.
 */
import type { ControllerState, Controls, MachineState } from '../types';
import type { ColdStoreState } from './coldStore';
import type { Direction } from './effective';

/** Pipe temperatures where clamps go, K. In flow they follow the refrigerant, standing still they drift to the air. */
export interface PipeTemps {
  readonly suction: number;
  readonly compressorIn: number;
  readonly discharge: number;
  readonly liquid: number;
  readonly afterDrier: number;
  readonly meteringIn: number;
  readonly evaporatorOut: number;
}

/** What the last flow evaluation stood on, so that a snapshot can repeat it to the last bit. dt 0 = steady. */
export interface FlowInputs {
  readonly dt: number;
  readonly condenserWall: readonly number[];
  readonly evaporatorWall: readonly number[];
  readonly shell: number;
  readonly massHigh: number;
  readonly pool: number;
  readonly opening: number;
  readonly speed: number;
  readonly room: number;
  readonly roomHumidity: number;
  readonly controls: Controls;
  /** cold room: share that the solenoid passes, share of the time that the condenser's fan runs */
  readonly passing?: number;
  readonly fanDuty?: number;
  /** kg of ice on the cooler, or on the outdoor coil of a machine that heats */
  readonly ice?: number;
}

/** Defrost control of a machine that heats. */
export interface DefrostState {
  /** s below freezing since the last defrost, s that one has been running (0 = none) */
  readonly freezing: number;
  readonly running: number;
  /** K of the lagging sensor on the outdoor coil; NaN before the first step */
  readonly sensor: number;
}

export interface CircuitState extends MachineState {
  readonly time: number;
  readonly regime: 'flow' | 'still';
  /** the compressor turns */
  readonly turning: boolean;
  /** ln p_high, ln p_low, cylinder enthalpy / 1e5: warm start in flow; vessel pressures standing still */
  readonly x: readonly [number, number, number];
  /** Jacobian of the last step (3 × 3, row by row): the next one starts with it; null after a change of regime */
  readonly jacobian: readonly number[] | null;
  readonly condenserWall: readonly number[];
  readonly evaporatorWall: readonly number[];
  readonly shell: number;
  readonly pipes: PipeTemps;
  readonly inputs: FlowInputs;
  /** kg of refrigerant in the machine, and of it on the high side */
  readonly charge: number;
  readonly massHigh: number;
  /** kg of liquid that lies on the low side since the start and boils off slowly */
  readonly pool: number;
  /** internal energy of the refrigerant on either side, J */
  readonly energyHigh: number;
  readonly energyLow: number;
  /** J of it that the walls of either side still owe: 0 but in flow transients */
  readonly debtHigh: number;
  readonly debtLow: number;
  readonly opening: number;
  readonly speed: number;
  readonly valveError: number;
  readonly speedError: number;
  /** K of a thermostatic valve's bulb, which lags its pipe */
  readonly bulb: number;
  /** what the lagging sensors feel, K */
  readonly sensed: { readonly suctionLine: number; readonly evaporatorCoil: number; readonly dischargeLine: number };
  readonly room: number;
  readonly roomHumidity: number;
  /** heat and water that the building brings into the room, W and kg/s: what the machine took out as found */
  readonly load: number;
  readonly waterLoad: number;
  /** the room when the load was measured, K and kg/kg */
  readonly roomFound: number;
  readonly humidityFound: number;
  readonly frost: readonly number[];
  /** a cold room's controller; other machines have none */
  readonly cold?: ColdStoreState;
  /** reversible machine: which way it runs, ice on the coil that condenses, whether its slide has moved since it was found */
  readonly direction?: Direction;
  readonly condenserIce?: readonly number[];
  readonly slideMoved?: boolean;
  readonly defrost?: DefrostState;
  readonly controller: ControllerState;
  /** s until the controller may start again; s since the compressor started; s that a limit has been crossed */
  readonly restartIn: number;
  readonly runningFor: number;
  readonly limitFor: number;
  readonly trips: number;
  /** energy that could not be booked to a wall at a change of regime, J: printed by the qualification */
  readonly handOver: number;
  /** fastest relative change in the last step, 1/s and K/s */
  readonly rate: number;
}

/** Trips after which the controller stays off. */
export const LOCK_OUT_TRIPS = 3;
