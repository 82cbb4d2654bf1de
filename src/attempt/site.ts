/** One callout brought to life: the machine as found, its history so far, and what is printed on it. */
import type { RefrigerantId } from '../../physics/fluids/fluid';
import type { FaultFamily, Machine, MachineSetup, Place, PlantDescription, Snapshot } from '../../physics/types';
import type { Callout, Pack } from './pack/types';
import type { Saturation } from './saturation';
import { machineNuisance } from './seeds';
import { type MachineEvent, type Moment, Trajectory } from './trajectory';

/** What an attempt needs of the physics; one real world (world.ts), small ones in tests. */
export interface World {
  /** version of the physics; an attempt records it */
  readonly physics: string;
  readonly createMachine: (setup: MachineSetup) => Machine;
  readonly saturation: (refrigerant: RefrigerantId) => Saturation;
  /** air pressure at this height, Pa */
  readonly airPressure: (altitude: number) => number;
  readonly families: readonly FaultFamily[];
  /** safety class A2L, A2 or A3 */
  readonly flammable: (refrigerant: RefrigerantId) => boolean;
}

export class Site {
  readonly machine: Machine;
  readonly plant: PlantDescription;
  readonly nameplate: ReturnType<PlantDescription['nameplate']>;
  readonly saturation: Saturation;
  /** Pa */
  readonly atmosphere: number;
  readonly flammable: boolean;
  private readonly trajectory: Trajectory;

  constructor(
    readonly world: World,
    readonly pack: Pack,
    readonly callout: Callout,
  ) {
    const { plant, refrigerant, conditions, faults, machineSeed } = callout;
    this.machine = world.createMachine({
      plant,
      refrigerant,
      conditions,
      faults,
      nuisance: machineNuisance(machineSeed),
    });
    this.plant = this.machine.plant;
    this.nameplate = this.plant.nameplate(refrigerant);
    this.saturation = world.saturation(refrigerant);
    this.flammable = world.flammable(refrigerant);
    this.atmosphere = world.airPressure(conditions.altitude);
    this.trajectory = new Trajectory(this.machine);
  }

  /** The machine at second `t` after these events. Pure; what was computed before is kept. */
  at(events: readonly MachineEvent[], t: number): Moment {
    return this.trajectory.at(events, t);
  }

  place(id: string): Place | undefined {
    return this.plant.places.find((place) => place.id === id);
  }

  snapshot(events: readonly MachineEvent[], t: number): Snapshot {
    return this.trajectory.snapshot(events, t);
  }
}
