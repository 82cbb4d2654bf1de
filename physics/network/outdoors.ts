/**
 * What the outdoor modules have to do. Where all rooms ask the same it is plain; where some cool and others heat, the
 * modules take what the rooms leave over, as few of them as it needs, and change from condensing to boiling where the
 * balance turns.
 */
import { PhysicsError } from '../errors';
import type { UnitDemand } from '../types';
import type { NetworkRig } from './rig';
import { LEAST_EXCHANGE, type NetworkSolution, solveNetwork } from './steady';
import type { Outdoors } from './tasks';

export interface Found extends NetworkSolution {
  readonly outdoors: Outdoors;
  /** share of the outdoor fans' speed */
  readonly exchange: number;
}

/**
 * Steady state with the outdoor side that suits these demands; the rig is left at it. Throws PhysicsError as
 * `solveNetwork` does. @param warm a neighbouring solution
 */
export function findSteady(
  rig: NetworkRig,
  demands: readonly UnitDemand[],
  valveHold: number | null,
  fixedSpeed: boolean,
  warm: Float64Array | null,
): Found {
  const count = rig.data.modules.length;
  const speed = fixedSpeed ? 1 : null;
  const solve = (outdoors: Outdoors, exchange: number | null, from: Float64Array | null): Found => {
    rig.setOutdoorAir(exchange ?? 1, outdoors.count > 0);
    const setting = { speed, exchange, outdoors, demands, valveHold } as const;
    const { x, outcome } = solveNetwork(rig, setting, from);
    return { x, outcome, outdoors, exchange: exchange ?? x[x.length - 1] };
  };
  if (!demands.some((each) => each !== 'off')) {
    throw new PhysicsError('bad-input', 'units: no room asks for anything, so there is no steady flow', {});
  }
  const heats = demands.includes('heating');
  const cools = demands.includes('cooling');
  if (!(heats && cools)) return solve({ role: heats ? 'evaporator' : 'condenser', count }, 1, warm);
  return balanced(rig, count, solve);
}

/** Rooms cool and heat at once: the first of these that neither lacks nor has too much outdoors. */
function balanced(
  rig: NetworkRig,
  count: number,
  solve: (outdoors: Outdoors, exchange: number | null, from: Float64Array | null) => Found,
): Found {
  let last: Found | null = null;
  let failure: PhysicsError | null = null;
  const attempt = (outdoors: Outdoors): Found | null => {
    try {
      return solve(outdoors, outdoors.count > 0 ? null : 1, null);
    } catch (error) {
      if (!(error instanceof PhysicsError)) throw error;
      failure = error;
      return null;
    }
  };
  const { control } = rig.data;
  // heat over: as few condensing modules as keep the condensing temperature down
  const alone = attempt({ role: 'idle', count: 0 });
  const over = (): number => rig.fluid.tBubble(rig.network.high[0]) - control.condensingTarget;
  const tooHot = alone === null || over() > 1;
  const tooCold = alone !== null && rig.fluid.tDew(rig.network.low[0]) < control.evaporatingTarget - 2;
  if (alone !== null && !tooHot && !tooCold) return alone;
  for (const role of tooHot && !tooCold
    ? (['condenser', 'evaporator'] as const)
    : (['evaporator', 'condenser'] as const)) {
    for (let k = 1; k <= count; k++) {
      const found = attempt({ role, count: k });
      if (found === null) continue;
      last = found;
      if (found.exchange < 0.999 && found.exchange > LEAST_EXCHANGE + 1e-6) return found;
      if (found.exchange <= LEAST_EXCHANGE + 1e-6) break;
      if (k === count) return found;
    }
    if (last !== null) return solve(last.outdoors, last.outdoors.count > 0 ? null : 1, null);
  }
  if (alone !== null) return solve({ role: 'idle', count: 0 }, 1, null);
  throw failure ?? new PhysicsError('no-convergence', 'the steady state could not be found', {});
}
