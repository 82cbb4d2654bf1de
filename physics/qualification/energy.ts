/**
 * First law over time, computed from outside: what a machine's state stores (refrigerant, walls, shell, ice) against the
 * heats and the power that its snapshots show. Nothing of the solver's own bookkeeping is used.
 */
import { cpMoist, dryDensity, enthalpy, pressureAtAltitude, wSaturated } from '../air/moistAir';
import type { Machine, MachineState, Snapshot, StationId } from '../index';
import { WALL_FIELDS } from '../parts/coil';
import { machineData } from '../plants';
import type { MachineData } from '../solve/effective';
import type { CircuitState } from '../solve/state';

/** Heat of fusion of ice, J/kg (ASHRAE Fundamentals). */
const FUSION = 3.34e5;

/** J, against an arbitrary zero. */
export function storedEnergy(data: MachineData, state: MachineState): number {
  const s = state as CircuitState;
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
  const walls = (fields: readonly number[]): number => sum(fields.filter((_, i) => i % WALL_FIELDS === 0));
  return (
    s.energyHigh +
    s.energyLow -
    s.debtHigh -
    s.debtLow +
    (walls(s.condenserWall) * data.condenser.wallCapacity) / data.condenser.segments +
    (walls(s.evaporatorWall) * data.evaporator.wallCapacity) / data.evaporator.segments +
    s.shell * data.compressor.shellCapacity -
    (sum(s.frost) + sum(s.condenserIce ?? [])) * FUSION
  );
}

/** W into the machine by air, lines, shell and wire. */
export function powerIn(machine: Machine, data: MachineData, state: MachineState, snapshot: Snapshot): number {
  const { outdoor, altitude } = machine.setup.conditions;
  const { probes, stations, regime } = snapshot;
  const pressure = pressureAtAltitude(altitude);
  // outdoor air at half saturation, as the machine assumes it, or as damp as one that heats finds it
  const humidity = (data.outdoorHumidity ?? 0.5) * wSaturated(outdoor, pressure);
  const air = probes.outdoorAirFlow.value * dryDensity(outdoor, humidity, pressure);
  const entering = probes.outdoorEnteringAirTemp.value;
  const leaving = probes.outdoorLeavingAirTemp.value;
  const water = snapshot.outdoorWater;
  const outdoorHeat =
    water === undefined
      ? air * cpMoist(humidity) * (entering - leaving)
      : air * (enthalpy(entering, humidity) - enthalpy(leaving, humidity - water / air));
  const shell = data.compressor.shellToAir * (outdoor - (state as CircuitState).shell);
  // what the pipes gain: all that enters them less all that leaves, a reversing valve included
  const gain = (id: StationId): number => stations[id].massFlow * stations[id].enthalpy;
  const lines =
    regime === 'flow'
      ? gain('compressor-in') -
        gain('compressor-out') +
        stations['evaporator-out'].massFlow *
          (stations['condenser-in'].enthalpy -
            stations['condenser-out'].enthalpy +
            stations['liquid-port'].enthalpy -
            stations['evaporator-out'].enthalpy)
      : 0;
  const indoorHeat = data.mode === 'heating' ? -probes.capacityTotal.value : probes.capacityTotal.value;
  return indoorHeat + outdoorHeat + shell + lines + probes.compressorPower.value;
}

export interface Ledger {
  /** J that appeared from nowhere, and J that crossed the boundary either way */
  readonly defect: number;
  readonly moved: number;
  /** largest |mass of refrigerant − charge|, kg */
  readonly mass: number;
}

/** Keeps the books over states that follow each other. */
export class Bookkeeper {
  private defect = 0;
  private moved = 0;
  private mass = 0;
  private power: number;

  constructor(
    private readonly machine: Machine,
    private state: MachineState,
  ) {
    this.power = powerIn(machine, this.dataOf(state), state, machine.snapshot(state));
  }

  /** The parts as they are put together in this state. */
  private dataOf(state: MachineState): MachineData {
    const { plant, refrigerant, conditions } = this.machine.setup;
    return machineData(plant, refrigerant, (state as CircuitState).direction ?? conditions.mode);
  }

  /** @returns the snapshot of the new state */
  step(after: MachineState, dt: number): Snapshot {
    const { machine } = this;
    const data = this.dataOf(after);
    const earlier = this.state as CircuitState;
    const later = after as CircuitState;
    const snapshot = machine.snapshot(after);
    const power = powerIn(machine, data, after, snapshot);
    // Flow is implicit: the heats at the end hold for the whole step. Standing still is explicit: the mean of both ends,
    // unless the regime has just changed. A safety switch stops the machine after a step that was all flow.
    let mean = power;
    if (earlier.regime === 'flow' && later.trips > earlier.trips) mean = this.power;
    else if (earlier.regime === 'still' && later.regime === 'still') mean = 0.5 * (power + this.power);
    // heaters hold through a step
    const heaters = (later.cold?.coilHeat ?? 0) + (later.cold?.crankcaseHeat ?? 0);
    this.defect += storedEnergy(data, after) - storedEnergy(this.dataOf(earlier), earlier) - (mean + heaters) * dt;
    this.moved += (Math.abs(snapshot.probes.capacityTotal.value) + snapshot.probes.compressorPower.value) * dt;
    this.mass = Math.max(this.mass, snapshot.balance.mass);
    this.state = after;
    this.power = power;
    return snapshot;
  }

  get ledger(): Ledger {
    return { defect: this.defect, moved: this.moved, mass: this.mass };
  }
}
