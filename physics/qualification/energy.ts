/**
 * First law over time, computed from outside: what a machine's state stores (refrigerant, walls, shell, ice) against the
 * heats and the power that its snapshots show. Nothing of the solver's own bookkeeping is used.
 */
import { cpMoist, dryDensity, pressureAtAltitude, wSaturated } from '../air/moistAir';
import type { Machine, MachineState, Snapshot } from '../index';
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
    sum(s.frost) * FUSION
  );
}

/** W into the machine by air, lines, shell and wire. */
export function powerIn(machine: Machine, data: MachineData, state: MachineState, snapshot: Snapshot): number {
  const { outdoor, altitude } = machine.setup.conditions;
  const { probes, stations, regime } = snapshot;
  const pressure = pressureAtAltitude(altitude);
  // outdoor air at half saturation, as the machine assumes it
  const humidity = 0.5 * wSaturated(outdoor, pressure);
  const air = probes.condenserAirFlow.value * dryDensity(outdoor, humidity, pressure) * cpMoist(humidity);
  const condenser = air * (probes.condenserEnteringAirTemp.value - probes.condenserLeavingAirTemp.value);
  const shell = data.compressor.shellToAir * (outdoor - (state as CircuitState).shell);
  const flow = stations['compressor-in'].massFlow;
  const lines =
    regime === 'flow'
      ? flow *
        (stations['liquid-port'].enthalpy -
          stations['condenser-out'].enthalpy +
          stations['compressor-in'].enthalpy -
          stations['evaporator-out'].enthalpy)
      : 0;
  return probes.capacityTotal.value + condenser + shell + lines + probes.compressorPower.value;
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
  private readonly data: MachineData;

  constructor(
    private readonly machine: Machine,
    private state: MachineState,
  ) {
    this.data = machineData(machine.setup.plant, machine.setup.refrigerant);
    this.power = powerIn(machine, this.data, state, machine.snapshot(state));
  }

  /** @returns the snapshot of the new state */
  step(after: MachineState, dt: number): Snapshot {
    const { machine, data } = this;
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
    this.defect += storedEnergy(data, after) - storedEnergy(data, earlier) - (mean + heaters) * dt;
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
