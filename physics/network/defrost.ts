/**
 * Ice on the outdoor modules of a machine that heats, and how it gets rid of it: the machine turns round for some minutes
 * and heats its outdoor coils with the fans off. Started by how far a frozen coil stands under the outdoor air, ended by
 * the coil's sensor or the clock; limits are common practice, no source.
 */

import { ln } from '../math/elementary';
import { WALL_FIELDS } from '../parts/coil';
import { Vessel } from '../solve/vessels';
import { FUSION } from '../solve/walls';
import type { UnitDemand } from '../types';
import type { NetworkRig } from './rig';
import type { NetworkState } from './state';
import { type Outdoors, tasksFor } from './tasks';
import { highVolume, totalVolume } from './volumes';

const FREEZING = 273.15;
/** K that a freezing coil's sensor stands under the outdoor air when ice is taken to have grown, and s of freezing before */
const ICED_UNDER = 12;
const LEAST_FREEZING = 2100;
/** s after which a freezing coil is defrosted whatever its sensor says */
const MOST_FREEZING = 9000;
/** K of the coil's sensor, and s, at which a defrost ends */
const CLEAR = 285.15;
const LONGEST = 600;
/** opening of the units' valves and relative speed while ice melts */
const MELTING_OPENING = 0.5;
export const MELTING_SPEED = 0.36;

/** Ice after a step in which the walls stand at `walls`; the heat of freezing and melting goes into them. */
export function iceAfter(
  rig: NetworkRig,
  frost: readonly (readonly number[])[],
  walls: number[][],
  dt: number,
): number[][] {
  return rig.network.modules.map(({ role, boiling, data }, i) => {
    const { ice, coil } = data;
    if (!ice) return [...frost[i]];
    const capacity = coil.wallCapacity / coil.segments;
    const most = ice.full / coil.segments;
    return frost[i].map((kg, k) => {
      const wall = walls[i][k * WALL_FIELDS];
      let change = 0;
      if (wall < FREEZING) {
        const water = role === 'evaporator' ? boiling.water[k] * dt : 0;
        change = water < most - kg ? water : most - kg;
      } else if (kg > 0) {
        // the wall follows within the step: it cannot melt more than its warmth allows
        const melted = ((wall - FREEZING) * ice.melt * dt) / (1 + (ice.melt * dt) / capacity) / FUSION;
        change = melted < kg ? -melted : -kg;
      }
      if (change !== 0) warm(walls[i], k, (change * FUSION) / capacity);
      return kg + change;
    });
  });
}

function warm(walls: number[], segment: number, by: number): void {
  for (let field = 0; field < WALL_FIELDS; field++) walls[segment * WALL_FIELDS + field] += by;
}

/** kg on every module. */
export function iceOf(frost: readonly (readonly number[])[]): number[] {
  return frost.map((each) => each.reduce((sum, kg) => sum + kg, 0));
}

/** J that went out of the walls when this ice froze. */
export function heldByIce(frost: readonly (readonly number[])[]): number {
  return iceOf(frost).reduce((sum, kg) => sum + kg * FUSION, 0);
}

/** The clocks of freezing and melting, and the machine turned round where one of them says so. */
export function defrosting(rig: NetworkRig, state: NetworkState, dt: number): NetworkState {
  const all = (role: Outdoors['role']): Outdoors => ({ role, count: rig.data.modules.length });
  const coil = Math.min(...state.liquidSensed.slice(0, rig.network.modules.length));
  if (state.meltingFor !== null) {
    const meltingFor = state.meltingFor + dt;
    const felt = coil - rig.effective.machine.defrostNotEnding;
    const over = felt > CLEAR || meltingFor >= LONGEST || !state.turning;
    if (!over) return { ...state, meltingFor };
    return turnedRound(rig, { ...state, meltingFor: null, freezingFor: 0 }, all('evaporator'), state.demands);
  }
  const heats = state.outdoors.role === 'evaporator' && state.turning && state.regime === 'flow';
  if (!heats) return state;
  const freezing = coil < 272.65;
  const freezingFor = freezing ? state.freezingFor + dt : state.freezingFor;
  const under = rig.conditions.outdoor - coil;
  const starts = freezing && freezingFor > LEAST_FREEZING && (under > ICED_UNDER || freezingFor > MOST_FREEZING);
  if (!starts || rig.effective.machine.defrostNotStarting > 0) return { ...state, freezingFor };
  const cooling = state.demands.map((each): UnitDemand => (each === 'off' ? 'off' : 'cooling'));
  return turnedRound(rig, { ...state, freezingFor, meltingFor: 0 }, all('condenser'), cooling);
}

/**
 * The reversing valve shifts: both sides come to one pressure in a moment, and what they hold lies spread over the volumes
 * of the new ones. Mass and energy are kept.
 */
export function turnedRound(
  rig: NetworkRig,
  state: NetworkState,
  outdoors: Outdoors,
  routing: readonly UnitDemand[],
): NetworkState {
  const { network } = rig;
  const { role } = outdoors;
  const openings = network.branches.map((_, i) => {
    if (i < network.modules.length) return role === 'condenser' ? 1 : 0.4;
    const unit = routing[i - network.modules.length];
    return unit === 'cooling' ? MELTING_OPENING : rig.data.control.subcoolingOpening;
  });
  const energy = state.energyHigh + state.energyLow - state.debtHigh - state.debtLow;
  const tasks = tasksFor(rig, outdoors, routing, openings, null);
  network.branches.forEach((b, i) => {
    b.role = tasks[i].role;
  });
  const volume = totalVolume(rig);
  const share = highVolume(rig) / volume;
  const both = new Vessel();
  both.settle(rig.fluid, state.charge, energy, volume, 1e6);
  const p = ln(both.pressure);
  return {
    ...state,
    regime: 'still',
    x: [p, p, both.topEnthalpy / 1e5, p - 0.03],
    jacobian: null,
    massHigh: share * state.charge,
    energyHigh: share * energy,
    energyLow: (1 - share) * energy,
    debtHigh: 0,
    debtLow: 0,
    pool: 0,
    outdoors,
    outdoorsFor: 0,
    routing,
    openings,
    runningFor: 0,
    valveErrors: state.valveErrors.map(() => 0),
    walls: state.walls.map((each) => evened(each)),
  };
}

/** Walls of a coil whose refrigerant stands: every zone at its segment's mean. */
function evened(walls: readonly number[]): number[] {
  return walls.map((_, i) => walls[i - (i % WALL_FIELDS)]);
}
