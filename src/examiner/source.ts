/** What the examiner asks of the machines: who can break how, and what one machine shows in one operating state. */
import type { FaultFamily, MachineSetup, PlantDescription, Snapshot } from '../../physics/types';
import type { World } from '../attempt';
import type { DifferentialInput, JudgedState } from './types';

export interface MachineSource {
  /** version of the physics */
  readonly version: string;
  readonly families: readonly FaultFamily[];
  readonly plant: (input: DifferentialInput) => PlantDescription;
  /** Settled machine in each state that it has. A state without one is missing. */
  readonly snapshots: (
    setup: MachineSetup,
    states: readonly JudgedState[],
  ) => Readonly<Partial<Record<JudgedState, Snapshot>>>;
}

export function sourceOf(world: World): MachineSource {
  return {
    version: world.physics,
    families: world.families,
    plant: ({ plant, refrigerant, conditions }) =>
      world.createMachine({ plant, refrigerant, conditions, faults: {} }).plant,
    snapshots: (setup, states) => {
      const machine = world.createMachine(setup);
      const found: Partial<Record<JudgedState, Snapshot>> = {};
      for (const state of states) {
        try {
          if (state === 'standing') found[state] = machine.snapshot(machine.start('standing'));
          else {
            const snapshot = machine.steady(state === 'full-speed' ? { fixedSpeed: true } : {});
            if (!snapshot.controller.startsWith('stopped')) found[state] = snapshot;
          }
        } catch (error) {
          // A machine that trips has no settled state; anything but a physics error is a mistake of the program.
          if (!(error instanceof Error && 'code' in error)) throw error;
        }
      }
      return found;
    },
  };
}

/** Operating states in which readings of a plant are judged. */
export function statesOf(plant: PlantDescription): JudgedState[] {
  return plant.variableSpeed ? ['running', 'full-speed', 'standing'] : ['running', 'standing'];
}
