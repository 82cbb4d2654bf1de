/** A network's state between steps: plain immutable data. */
import type { ControllerState, Controls, MachineState, UnitDemand, UnitState } from '../types';
import type { Outdoors } from './tasks';

export interface Room {
  readonly temperature: number;
  readonly humidity: number;
  /** heat (W, negative where it loses heat) and water (kg/s) that the building brings in: what the machine took out as found */
  readonly load: number;
  readonly waterLoad: number;
  /** the room when the load was measured, K and kg/kg */
  readonly temperatureFound: number;
  readonly humidityFound: number;
}

/** What the last flow evaluation stood on, so that a snapshot can repeat it to the last bit. dt 0 = steady. */
export interface NetworkInputs {
  readonly dt: number;
  readonly walls: readonly (readonly number[])[];
  readonly shell: number;
  readonly massHigh: number;
  readonly pool: number;
  readonly openings: readonly number[];
  /** flows that the branches' own roots started from, kg/s */
  readonly flows: readonly number[];
  readonly speed: number;
  readonly exchange: number;
  readonly rooms: readonly Room[];
  readonly frost: readonly (readonly number[])[];
  readonly controls: Controls;
  readonly fans: boolean;
}

export interface NetworkState extends MachineState {
  readonly time: number;
  readonly regime: 'flow' | 'still';
  /** the compressors turn */
  readonly turning: boolean;
  /** ln p_high, ln p_low, cylinder enthalpy / 1e5, ln p_liquid: warm start in flow; vessel pressures standing still */
  readonly x: readonly number[];
  /** Jacobian of the last step (4 × 4, row by row); null after a change of regime or of roles */
  readonly jacobian: readonly number[] | null;
  /** by branch, modules first */
  readonly walls: readonly (readonly number[])[];
  readonly openings: readonly number[];
  readonly flows: readonly number[];
  readonly shell: number;
  readonly inputs: NetworkInputs;
  readonly charge: number;
  readonly massHigh: number;
  /** kg of liquid that lies on the low side since the start and boils off slowly */
  readonly pool: number;
  readonly energyHigh: number;
  readonly energyLow: number;
  /** J of the refrigerant's energy that the walls of either side still owe */
  readonly debtHigh: number;
  readonly debtLow: number;
  readonly speed: number;
  readonly speedError: number;
  /** share of the outdoor fans' speed, and what the modules do */
  readonly exchange: number;
  readonly outdoors: Outdoors;
  /** s since the outdoor side last changed what it does */
  readonly outdoorsFor: number;
  readonly valveErrors: readonly number[];
  /** what the lagging pipe sensors of every branch feel, K, and the discharge sensor */
  readonly gasSensed: readonly number[];
  readonly liquidSensed: readonly number[];
  readonly dischargeSensed: number;
  /** pipe temperatures outdoors while it stands still, K: suction, discharge, liquid */
  readonly pipes: readonly [number, number, number];
  readonly rooms: readonly Room[];
  /** kg of ice on the segments of every module */
  readonly frost: readonly (readonly number[])[];
  /** s that an outdoor coil has been freezing since its last defrost; s of a defrost, or null while there is none */
  readonly freezingFor: number;
  readonly meltingFor: number | null;
  /** s of running so slowly that oil stays in the pipes, since it was last fetched; s of fetching it, or null */
  readonly slowFor: number;
  readonly sweepingFor: number | null;
  /** what a machine that turned round for that did before */
  readonly turnedFrom: { readonly outdoors: Outdoors; readonly routing: readonly UnitDemand[] } | null;
  /** what each room gets now, after its thermostat */
  readonly demands: readonly UnitDemand[];
  /** the demands that valves and changeover boxes are set for: the last ones while nobody asks */
  readonly routing: readonly UnitDemand[];
  readonly unitStates: readonly UnitState[];
  readonly controller: ControllerState;
  readonly restartIn: number;
  readonly runningFor: number;
  readonly limitFor: number;
  readonly trips: number;
  /** J that a change of regime or of roles booked into the walls */
  readonly handOver: number;
  readonly rate: number;
}

export const LOCK_OUT_TRIPS = 3;
/** opening of a unit's valve while the machine stands */
export const PARKED = 0.004;
