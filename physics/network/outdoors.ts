/**
 * What the outdoor modules have to do. Where all rooms ask the same it is plain; where some cool and others heat, the
 * modules take what the rooms leave over, as few of them as it needs, and change from condensing to boiling where the
 * balance turns.
 */
import { PhysicsError } from '../errors';
import type { UnitDemand } from '../types';
import { outdoorsWish } from './exchange';
import type { NetworkRig } from './rig';
import { condensingSeen, evaporatingSeen } from './seen';
import { exchangeOf, type NetworkSolution, solveNetwork } from './steady';
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
  const count = rig.data.modules.length - (rig.effective.machine.moduleShut > 0 ? 1 : 0);
  const speed = fixedSpeed ? 1 : null;
  if (!demands.some((each) => each !== 'off')) {
    throw new PhysicsError('bad-input', 'units: no room asks for anything, so there is no steady flow', {});
  }
  const heats = demands.includes('heating');
  const cools = demands.includes('cooling');
  if (!(heats && cools)) {
    const outdoors: Outdoors = { role: heats ? 'evaporator' : 'condenser', count };
    exchangeOf(rig, outdoors, 1);
    const { x, outcome } = solveNetwork(rig, { speed, exchange: 1, outdoors, demands, valveHold }, warm);
    return { x, outcome, outdoors, exchange: 1 };
  }
  let failure: PhysicsError | null = null;
  // most roles have no state in most weathers: quick searches first, long ones where none of them finds anything
  for (const starts of [QUICK, undefined]) {
    const solve = (outdoors: Outdoors, from: Float64Array | null): Found | null => {
      try {
        const setting = { speed, exchange: null, outdoors, demands, valveHold };
        const { x, outcome } = solveNetwork(rig, setting, from, starts);
        return { x, outcome, outdoors, exchange: x[x.length - 1] };
      } catch (error) {
        if (!(error instanceof PhysicsError)) throw error;
        failure = error;
        return null;
      }
    };
    const found = balanced(rig, count, solve, warm);
    if (found !== null) return found;
  }
  throw failure ?? new PhysicsError('no-convergence', 'the steady state could not be found', {});
}

/** starting points of a quick search */
const QUICK = 3;

/** A steady state and where the controller would go from it. */
interface Weighed extends Found {
  readonly wish: -1 | 0 | 1;
}

/**
 * Rooms cool and heat at once: as few modules as hold the balance, condensing where heat is left over and boiling where
 * it lacks. A condensing module that is throttled shut and takes nothing is at the turn; it stays there while the
 * compressors make up for what lacks without drawing the suction further down than the controller has patience for.
 * Where two such states exist side by side, the one counts from which the controller would not go to the other.
 */
function balanced(
  rig: NetworkRig,
  count: number,
  solve: (outdoors: Outdoors, from: Float64Array | null) => Found | null,
  warm: Float64Array | null,
): Found | null {
  const weigh = (found: Found | null): Weighed | null => {
    if (found === null) return null;
    const hot = condensingSeen(rig) - rig.data.control.condensingTarget;
    const cold = rig.data.control.evaporatingTarget - evaporatingSeen(rig);
    return { ...found, wish: outdoorsWish(found.outdoors, found.exchange, hot, cold) };
  };
  const search = (role: 'condenser' | 'evaporator', start: Float64Array | null): Weighed | null => {
    const back = role === 'condenser' ? -1 : 1;
    let best: Weighed | null = null;
    let left = true;
    for (let k = 1; k <= count; k++) {
      let from = start;
      if (best !== null) {
        from = Float64Array.from(best.x);
        from[from.length - 1] = 0.6;
      }
      const next = weigh(solve({ role, count: k }, from));
      left = next !== null;
      // one more would be one too many
      if (best?.wish === 0 && next?.wish === back) return weigh(solve(best.outdoors, best.x));
      best = next ?? best;
      if (next !== null && next.exchange < 1 - 1e-6) return next;
    }
    return best !== null && !left ? weigh(solve(best.outdoors, best.x)) : best;
  };
  const condensing = search('condenser', warm);
  if (condensing !== null && (condensing.wish !== -1 || condensing.outdoors.count > 1)) return condensing;
  let start = warm;
  if (condensing !== null) {
    start = Float64Array.from(condensing.x);
    start[start.length - 1] = 0.4;
  }
  const boiling = search('evaporator', start);
  if (boiling !== null && (condensing === null || boiling.wish !== 1)) return boiling;
  return condensing === null ? null : solve(condensing.outdoors, condensing.x);
}
