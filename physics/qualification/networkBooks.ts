/**
 * First law over time of a machine with several units, computed from outside: what its state stores against the heats and
 * the power that its snapshots show. Nothing of the solver's own bookkeeping is used.
 */
import { cpMoist, dryDensity, pressureAtAltitude, wSaturated } from '../air/moistAir';
import type { Machine, MachineState, Snapshot } from '../index';
import type { NetworkData } from '../network/data';
import { heldByIce } from '../network/defrost';
import type { NetworkState } from '../network/state';
import { WALL_FIELDS } from '../parts/coil';
import { networkData } from '../plants';

/** Relative humidity outdoors that the machine assumes. */
const OUTDOOR_HUMIDITY = 0.85;

export interface NetworkLedger {
  /** J that appeared from nowhere, and J that crossed the boundary either way */
  readonly defect: number;
  readonly moved: number;
  /** largest |mass of refrigerant − charge|, kg */
  readonly mass: number;
}

/** Mean wall of a branch, J against an arbitrary zero. */
function wallEnergy(data: NetworkData, state: NetworkState, branch: number): number {
  const each = [...data.modules, ...data.units][branch];
  const fields = state.walls[branch];
  let sum = 0;
  for (let i = 0; i < fields.length; i += WALL_FIELDS) sum += fields[i];
  return (sum * each.coil.wallCapacity) / each.coil.segments;
}

/** Whether a branch stands outside the flow: its wall only takes on its own air. */
function idle(data: NetworkData, state: NetworkState, snapshot: Snapshot, branch: number): boolean {
  if (state.regime === 'still') return false;
  const modules = data.modules.length;
  if (branch >= modules) return snapshot.units?.[branch - modules].role === 'idle';
  return state.outdoors.role === 'idle' || branch >= state.outdoors.count;
}

/** Keeps the books over states that follow each other. */
export class NetworkBooks {
  private defect = 0;
  private moved = 0;
  private mass = 0;
  private power: number;
  private readonly data: NetworkData;

  constructor(
    private readonly machine: Machine,
    private state: MachineState,
  ) {
    this.data = networkData(machine.setup.plant, machine.setup.refrigerant);
    this.power = this.powerIn(state as NetworkState, machine.snapshot(state));
  }

  /** @returns the snapshot of the new state */
  step(after: MachineState, dt: number): Snapshot {
    const { machine, data } = this;
    const earlier = this.state as NetworkState;
    const later = after as NetworkState;
    const snapshot = machine.snapshot(after);
    const power = this.powerIn(later, snapshot);
    // Flow is implicit: the heats at the end hold for the whole step. Standing still is explicit: the mean of both ends.
    let mean = power;
    if (earlier.regime === 'flow' && later.trips > earlier.trips) mean = this.power;
    else if (earlier.regime === 'still' && later.regime === 'still') mean = 0.5 * (power + this.power);
    let stored = this.fluidAndShell(later) - this.fluidAndShell(earlier);
    for (let i = 0; i < later.walls.length; i++) {
      if (!idle(data, later, snapshot, i)) stored += wallEnergy(data, later, i) - wallEnergy(data, earlier, i);
    }
    this.defect += stored - mean * dt;
    this.moved += (Math.abs(snapshot.probes.capacityTotal.value) + snapshot.probes.compressorPower.value) * dt;
    this.mass = Math.max(this.mass, snapshot.balance.mass);
    this.state = after;
    this.power = power;
    return snapshot;
  }

  get ledger(): NetworkLedger {
    return { defect: this.defect, moved: this.moved, mass: this.mass };
  }

  private fluidAndShell(state: NetworkState): number {
    const { energyHigh, energyLow, debtHigh, debtLow, shell } = state;
    const bound = heldByIce(state.frost);
    return energyHigh + energyLow - debtHigh - debtLow + shell * this.data.compressor.shellCapacity - bound;
  }

  /** W into the machine by air, suction pipe, shell and wire. */
  private powerIn(state: NetworkState, snapshot: Snapshot): number {
    const { outdoor, altitude } = this.machine.setup.conditions;
    const { probes, stations, units = [] } = snapshot;
    const pressure = pressureAtAltitude(altitude);
    const humidity = OUTDOOR_HUMIDITY * wSaturated(outdoor, pressure);
    const air = probes.condenserAirFlow.value * dryDensity(outdoor, humidity, pressure) * cpMoist(humidity);
    const outdoors = air * (probes.condenserEnteringAirTemp.value - probes.condenserLeavingAirTemp.value);
    const rooms = units.reduce(
      (sum, { id, role }) => sum + (role === 'condenser' ? -1 : 1) * probes[`capacityTotal@${id}`].value,
      0,
    );
    const shell = this.data.compressor.shellToAir * (outdoor - state.shell);
    const outlet = stations['evaporator-out'];
    const pipe = state.regime === 'flow' ? outlet.massFlow * (stations['suction-port'].enthalpy - outlet.enthalpy) : 0;
    return rooms + outdoors + shell + pipe + probes.compressorPower.value;
  }
}
