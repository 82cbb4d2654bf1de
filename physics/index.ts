/** The machine's public surface. */
import { createMachine } from './machine';
import { plantDescription } from './plants';
import { NOMINAL } from './solve/compile';
import type { Controls, MachineSetup, SteadyResult } from './types';

export { PhysicsError, type PhysicsErrorCode } from './errors';
export { FAULTS, familiesOf, faultFamily, parseFaults } from './faults';
export { fluidTable, REFRIGERANTS, type RefrigerantId } from './fluids/fluid';
export { createMachine } from './machine';
export { possibleDemands, usualDemand } from './network/demands';
export { PLANTS, plantDescription } from './plants';
export * from './types';
export { NOMINAL as NOMINAL_NUISANCE };

/** Changes whenever a number that a reading shows may change. */
export const PHYSICS_VERSION = '1.0.0';

/**
 * Steady state of a setup, running under its own controls (or those given).
 * Throws PhysicsError: `bad-input` for a setup that names something unknown, `table-end` or `no-convergence` with the
 * figures where no steady state exists.
 */
export function steady(setup: MachineSetup, controls?: Partial<Controls>): SteadyResult {
  const snapshot = createMachine(setup).steady(controls);
  return {
    plant: plantDescription(setup.plant).id,
    refrigerant: setup.refrigerant,
    conditions: setup.conditions,
    faults: setup.faults,
    probes: snapshot.probes,
    looks: snapshot.looks,
    snapshot,
    balance: snapshot.balance,
  };
}
