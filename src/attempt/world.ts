/** The real physics, as an attempt needs it. */
import { createMachine, FAULTS, PHYSICS_VERSION } from '../../physics';
import { pressureAtAltitude } from '../../physics/air/moistAir';
import { PhysicsError } from '../../physics/errors';
import { fluidTable, refrigerantData } from '../../physics/fluids/fluid';
import type { World } from './site';

export const REAL_WORLD: World = {
  physics: PHYSICS_VERSION,
  createMachine,
  families: FAULTS,
  airPressure: pressureAtAltitude,
  flammable: (refrigerant) => refrigerantData(refrigerant).safetyClass !== 'A1',
  saturation(refrigerant) {
    const table = fluidTable(refrigerant);
    return {
      tDew: (p) => withinTable(() => table.tDew(p)),
      tBubble: (p) => withinTable(() => table.tBubble(p)),
    };
  },
};

function withinTable(read: () => number): number | null {
  try {
    return read();
  } catch (error) {
    if (error instanceof PhysicsError) return null;
    throw error;
  }
}
