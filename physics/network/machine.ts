/** A machine with several indoor units, compiled once: steady states, time steps, snapshots. */
import { plantDescription } from '../plants';
import { runningControls } from '../solve/compile';
import type {
  ControllerState,
  Controls,
  Machine,
  MachineSetup,
  PlantDescription,
  Snapshot,
  UnitDemand,
  UnitState,
} from '../types';
import { compileNetwork, demandsOf, networkDesign } from './design';
import { type Found, findSteady } from './outdoors';
import type { NetworkRig } from './rig';
import { networkSnapshot } from './snapshot';

export class NetworkMachine {
  readonly plant: PlantDescription;
  readonly defaultControls: Controls;
  private readonly rig: NetworkRig;

  constructor(readonly setup: MachineSetup) {
    this.plant = plantDescription(setup.plant);
    this.defaultControls = runningControls(this.plant);
    this.rig = compileNetwork(setup);
  }

  steady(controls?: Partial<Controls>): Snapshot {
    const all = { ...this.defaultControls, ...controls };
    const { found, demands } = this.solve(all);
    return networkSnapshot(this.rig, {
      time: 0,
      controller: controllerWord(this.rig, all, found),
      demands,
      unitStates: demands.map(unitWord),
      frost: [],
      outdoorFan: found.outdoors.count > 0 ? found.exchange : 0,
    });
  }

  private solve(all: Controls): { found: Found; demands: UnitDemand[] } {
    const { rig, setup } = this;
    const demands = demandsOf(rig, setup.conditions.mode, all.units);
    const room = rig.roomFound();
    demands.forEach((demand, i) => {
      rig.setUnitAir(i, room, all.indoorFan === 'low', demand !== 'off' && all.indoorFanRunning);
    });
    const usual = demands.every((each) => each === setup.conditions.mode);
    const design =
      usual && !all.fixedSpeed ? networkDesign(setup.plant, setup.refrigerant, setup.conditions.mode) : null;
    const found = findSteady(rig, demands, all.valveHold, all.fixedSpeed, design?.x ?? null);
    return { found, demands };
  }
}

function unitWord(demand: UnitDemand): UnitState {
  return demand;
}

/** What the controller would say of itself in this steady state (a limit that it would stop on included). */
function controllerWord(rig: NetworkRig, controls: Controls, found: Found): ControllerState {
  const { network, data, drive, conditions } = rig;
  const { limits, control } = data;
  const tDischarge = network.compressor.tDischarge;
  if (network.high[0] > limits.highPressure) return 'stopped-on-high-pressure';
  if (network.low[0] < limits.lowPressure) return 'stopped-on-low-pressure';
  if (tDischarge > limits.dischargeTemp) return 'stopped-on-discharge-heat';
  if (!controls.fixedSpeed) {
    if (tDischarge > limits.slowDownTemp - 0.5) return 'slowed-by-discharge-heat';
    if (network.high[0] > limits.slowDownPressure - 1e4) return 'slowed-by-high-pressure';
    if (network.low[0] < limits.slowDownLow + 1e3) return 'slowed-by-low-pressure';
  }
  if (conditions.mode === 'simultaneous') return 'cooling-and-heating';
  const full = !controls.fixedSpeed && drive.speed > control.maxSpeed - 1e-6;
  if (found.outdoors.role === 'evaporator') return full ? 'heating-at-full-speed' : 'heating';
  return full ? 'cooling-at-full-speed' : 'cooling';
}

export type NetworkMachineOf = Machine;
