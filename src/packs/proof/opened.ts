/** A callout opened for its proof: its own machine in every state that it has, read without error. */
import type { CauseId, Faults, MachineSetup } from '../../../physics/types';
import { machineNuisance, REAL_WORLD } from '../../attempt';
import type { Callout } from '../../attempt/pack/types';
import type { Bench } from '../../examiner/candidates';
import { truthsOf } from '../../examiner/case';
import { type Reader, readerOf } from '../../examiner/readings';
import { sourceOf, statesOf } from '../../examiner/source';
import type { Differential } from '../../examiner/types';
import type { InstrumentId } from '../../instruments/types';
import { erringReader } from '../erring';

export interface Opened {
  readonly callout: Callout;
  readonly differential: Differential;
  readonly bench: Bench;
  readonly truths: readonly CauseId[];
  /** without error */
  readonly read: Reader;
  /** with the errors of instruments and people, always the same ones */
  readonly erring: Reader;
}

const source = sourceOf(REAL_WORLD);

export function open(callout: Callout, differential: Differential): Opened {
  const bench = benchOf(callout);
  const snapshots = source.snapshots(setupOf(callout), bench.states);
  return {
    callout,
    differential,
    bench,
    truths: truthsOf(callout.faults),
    read: readerOf(snapshots),
    erring: erringReader({ snapshots, seed: `${callout.machineSeed}/proof` }),
  };
}

export function benchOf(callout: Callout, toolbag: readonly InstrumentId[] = callout.toolbag): Bench {
  const plant = source.plant(callout);
  const { charge } = plant.nameplate(callout.refrigerant);
  return { plant, toolbag, charge, states: statesOf(plant) };
}

/** True where the machine, with these faults, has a settled state in which it runs. */
export function runsWith(callout: Callout, faults: Faults): boolean {
  return source.snapshots(setupOf(callout, faults), ['running']).running !== undefined;
}

/** Why the machine does not run, in the words of the physics or of its controller. */
export function whyNot(callout: Callout): string {
  try {
    return `its controller says "${REAL_WORLD.createMachine(setupOf(callout)).steady().controller}"`;
  } catch (error) {
    if (error instanceof Error && 'code' in error) return `${error.message} (${String(error.code)})`;
    throw error;
  }
}

function setupOf({ plant, refrigerant, conditions, machineSeed, ...own }: Callout, faults?: Faults): MachineSetup {
  return { plant, refrigerant, conditions, faults: faults ?? own.faults, nuisance: machineNuisance(machineSeed) };
}
