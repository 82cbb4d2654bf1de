/**
 * Time: one step of a network. What the rooms ask, then the regime (flow / still), the circuit, the rooms, the sensors and
 * the controller. Deterministic: no clock, no randomness.
 */
import { PhysicsError } from '../errors';
import * as L from '../fluids/layout';
import { exp } from '../math/elementary';
import { RESTART_DELAY } from '../solve/controller';
import { type ControllerState, type Controls, isHeld, type UnitDemand } from '../types';
import { decide, isBalancing, limits, outdoorsNext, regulate, sensedNext, thermostats } from './controller';
import { defrosting, iceAfter, iceOf } from './defrost';
import { blowsAlone } from './design';
import { fanShare } from './exchange';
import { drivenBy, type Entry, type FlowResult, flowStep } from './flowStep';
import { sweeping } from './oilReturn';
import type { NetworkRig } from './rig';
import { pressuresSeen } from './seen';
import { LOCK_OUT_TRIPS, type NetworkState, type Room } from './state';
import { stationAt } from './stations';
import { type StillResult, stillStep } from './stillStep';
import { tasksFor } from './tasks';
import { highVolume, totalVolume } from './volumes';

/** s after a start at which the hand-over to flow is tried: keeping the mass split, freeing it, at any jump. */
const TRY_KEEPING = 22;
const TRY_FREEING = 40;
const TRY_ANYHOW = 75;
/** largest |ln p_flow / p_still| accepted at a hand-over */
const CLOSE = 0.25;
/** s that the step of a hand-over spans: short, since its heats are on no account */
const HANDED = 0.2;
/** K and share of humidity from the found room at which the building brings nothing more in (ours) */
export const WARMER = 8;
export const DAMPER = 0.5;
const WATER = 2.501e6;

/** Advance by dt whole seconds. Throws PhysicsError with the time where a step cannot be computed in any way. */
export function advance(rig: NetworkRig, state: NetworkState, controls: Controls, dt: number): NetworkState {
  if (!(dt >= 1 && dt <= 30) || Math.floor(dt) !== dt) {
    throw new PhysicsError('bad-input', `dt: ${dt} is not a whole number of seconds within 1…30`, { dt });
  }
  const asked = rerouted(rig, { ...state, inputs: { ...state.inputs, controls } }, controls, dt);
  const turned = sweeping(rig, defrosting(rig, asked, dt), dt);
  const decided: NetworkState = { ...turned, ...decide(rig, turned, controls, dt) };
  setAir(rig, decided, controls, decided.turning);
  if (decided.turning && decided.regime === 'flow') {
    const next = inFlow(rig, decided, controls, dt, 0);
    if (next) return next.regime === 'still' ? fitting(rig, decided, next) : next;
  }
  const still = decided.regime === 'flow' ? brokenOff(decided) : decided;
  const stepped = standStill(rig, still, controls, dt);
  if (!stepped.turning || stepped.runningFor < TRY_KEEPING) return stepped;
  return handOver(rig, stepped, controls) ?? stepped;
}

/**
 * A machine that broke off in the middle of a step, where its low side can be left with more heat than its gas can have: then
 * it keeps what each kilogram had before, and the heat of that second is on no account.
 */
function fitting(rig: NetworkRig, before: NetworkState, next: NetworkState): NetworkState {
  assign(rig, next);
  setAir(rig, next, next.inputs.controls, next.turning);
  rig.effective.machine.charge = next.charge;
  try {
    stillStep(rig, next, 0);
    return next;
  } catch (error) {
    if (!(error instanceof PhysicsError)) throw error;
    const each = before.energyLow / (before.charge - before.massHigh);
    return { ...next, energyLow: each * (next.charge - next.massHigh) };
  }
}

/** Air of every branch as this state has it. */
export function setAir(rig: NetworkRig, state: NetworkState, controls: Controls, turning: boolean): void {
  const share = isBalancing(state) && state.sweepingFor === null ? fanShare(state.outdoors.role, state.exchange) : 1;
  const melts = state.meltingFor !== null;
  // the units of a machine that is held stand by with it
  const held = isHeld(state.controller);
  const blowsOut = turning && controls.outdoorFanRunning && state.outdoors.count > 0 && !melts;
  rig.ice = iceOf(state.frost);
  rig.setOutdoorAir(share, blowsOut);
  state.rooms.forEach((room, i) => {
    const demand = state.demands[i];
    const alone = blowsAlone(rig, i, controls.units);
    const blows =
      !melts && !state.turnedFrom && !held && (alone || demand === 'cooling' || (demand === 'heating' && turning));
    rig.setUnitAir(i, room, controls.indoorFan === 'low', controls.running && controls.indoorFanRunning && blows);
  });
}

/**
 * New demands and outdoor roles. A coil that goes over to the other side takes what it holds along; what of it is liquid
 * lies on the low side and boils off.
 */
function rerouted(rig: NetworkRig, state: NetworkState, controls: Controls, dt: number): NetworkState {
  const { demands, unitStates } = thermostats(rig, state, controls);
  // with nobody asking, valves and coils stay on the pipes that they are on
  const sweeps = state.sweepingFor !== null;
  const kept = state.meltingFor !== null || sweeps;
  const wished = !kept && demands.some((each) => each !== 'off') ? demands : state.routing;
  const routing = sweeps ? wished.map((): UnitDemand => 'cooling') : wished;
  const outdoors = kept ? state.outdoors : outdoorsNext(rig, { ...state, demands });
  const same = outdoors.role === state.outdoors.role && outdoors.count === state.outdoors.count;
  const next: NetworkState = {
    ...state,
    demands,
    routing,
    unitStates,
    outdoors,
    outdoorsFor: same ? state.outdoorsFor + dt : 0,
    exchange: same ? state.exchange : 0.5,
  };
  const { branches } = rig.network;
  const before = tasksFor(rig, state.outdoors, state.routing, state.openings, null);
  const after = tasksFor(rig, outdoors, routing, state.openings, null);
  const changed = branches.filter((_, i) => before[i].role !== after[i].role);
  if (changed.length === 0) return next;
  branches.forEach((b, i) => {
    b.role = before[i].role;
  });
  let { massHigh, energyHigh, energyLow, pool } = next;
  const vHigh = highVolume(rig);
  const vLow = totalVolume(rig) - vHigh;
  if (next.regime === 'flow') restore(rig, state);
  branches.forEach((b, i) => {
    const out = before[i].role === 'condenser';
    if (out === (after[i].role === 'condenser')) return;
    // standing still a side is one vessel: a coil takes its share of the volume along
    const share = (b.data.coil.volume + b.data.gasVolume) / (out ? vHigh : vLow);
    const flows = next.regime === 'flow';
    const mass = flows ? b.mass : (out ? massHigh : next.charge - massHigh) * share;
    const energy = flows ? b.energy : (out ? energyHigh : energyLow) * share;
    massHigh += out ? -mass : mass;
    energyHigh += out ? -energy : energy;
    energyLow += out ? energy : -energy;
    if (flows && out) pool += liquidOf(rig, i);
  });
  branches.forEach((b, i) => {
    b.role = after[i].role;
  });
  const openings = next.openings.map((now, i) => (before[i].role === after[i].role ? now : 0.4));
  return { ...next, massHigh, energyHigh, energyLow, pool, openings, jacobian: null };
}

/** kg in a condensing coil beyond what it would hold as vapour. */
function liquidOf(rig: NetworkRig, index: number): number {
  const b = rig.network.branches[index];
  const over = b.mass - b.data.coil.volume * rig.network.high[L.RHO_V];
  return over > 0 ? over : 0;
}

/** A step of the vessels. Where the running compressor leaves the tables, the switch that guards that end has opened. */
function standStill(rig: NetworkRig, still: NetworkState, controls: Controls, dt: number): NetworkState {
  assign(rig, still);
  setAir(rig, still, controls, still.turning);
  rig.effective.machine.charge = still.charge;
  try {
    return afterStill(rig, still, stillStep(rig, still, dt), dt);
  } catch (error) {
    if (!(error instanceof PhysicsError) || !still.turning) throw error;
    if (dt > 1) {
      // a switch opens somewhere in between
      const half = Math.floor(dt / 2);
      return standStill(rig, standStill(rig, still, controls, half), controls, dt - half);
    }
    const high = exp(still.x[0]) > 0.85 * rig.data.limits.highPressure;
    const stopped = tripped(still, high ? 'stopped-on-high-pressure' : 'stopped-on-discharge-heat');
    return standStill(rig, stopped, controls, dt);
  }
}

/** Roles of the branches as this state has them. */
export function assign(rig: NetworkRig, state: NetworkState): void {
  const tasks = tasksFor(rig, state.outdoors, state.routing, state.openings, state.inputs.controls.valveHold);
  rig.network.branches.forEach((b, i) => {
    b.role = tasks[i].role;
  });
  rig.drive.tasks = tasks;
}

/** A step in flow, halved where it cannot be solved; null where even short steps fail. */
function inFlow(
  rig: NetworkRig,
  state: NetworkState,
  controls: Controls,
  dt: number,
  depth: number,
): NetworkState | null {
  let result: FlowResult;
  try {
    result = flowStep(rig, state, dt, 'going');
  } catch (error) {
    if (!(error instanceof PhysicsError)) throw error;
    if (depth >= 4) return null;
    const half = inFlow(rig, state, controls, dt / 2, depth + 1);
    if (!half?.turning || half.regime !== 'flow') return half;
    setAir(rig, half, controls, true);
    return inFlow(rig, half, controls, dt / 2, depth + 1);
  }
  return afterFlow(rig, state, controls, result, dt);
}

function afterFlow(
  rig: NetworkRig,
  state: NetworkState,
  controls: Controls,
  result: FlowResult,
  dt: number,
): NetworkState {
  const { network } = rig;
  const { branches, compressor } = network;
  const power = compressor.power;
  const { limit, limitFor } = limits(rig, state, power, network.high[L.P], network.low[L.P], compressor.tDischarge, dt);
  const walls = result.walls.map((each) => [...each]);
  const frost = iceAfter(rig, state.frost, walls, dt);
  const next: NetworkState = {
    ...state,
    time: state.time + dt,
    regime: 'flow',
    x: result.x,
    jacobian: result.jacobian,
    walls,
    frost,
    flows: result.flows,
    shell: compressor.shell,
    pipes: pipesNow(rig),
    inputs: {
      dt,
      walls: state.walls,
      shell: state.shell,
      massHigh: state.massHigh,
      pool: result.pool,
      openings: state.openings,
      flows: result.flows,
      speed: state.speed,
      exchange: state.exchange,
      rooms: state.rooms,
      frost: state.frost,
      controls,
      fans: true,
    },
    massHigh: network.massHigh,
    pool: result.pool,
    energyHigh: network.energyHigh,
    energyLow: network.energyLow,
    handOver: result.handOver,
    debtHigh: result.debtHigh,
    debtLow: result.debtLow,
    limitFor,
    controller: runningWord(rig, state, controls),
    ...sensedNext(
      state,
      branches.map((b) => b.tGas),
      branches.map((b) => b.tLiquid),
      compressor.tDischarge,
      dt,
    ),
    rooms: roomsAfter(
      rig,
      state,
      network.units.map((b) => (b.role === 'idle' ? 0 : b.march.airHeat)),
      network.units.map((b) => (b.role === 'idle' ? 0 : b.march.waterTotal)),
      dt,
    ),
    rate: largestRate(state, result.x, result.walls, dt),
  };
  return tripped({ ...next, ...regulate(rig, next, controls, dt) }, limit);
}

function afterStill(rig: NetworkRig, still: NetworkState, result: StillResult, dt: number): NetworkState {
  const { state, high, low } = result;
  const modules = rig.network.modules.length;
  const walls = state.walls.map((each) => [...each]);
  const frost = iceAfter(rig, still.frost, walls, dt);
  const next: NetworkState = {
    ...state,
    walls,
    frost,
    ...sensedNext(
      still,
      state.walls.map((each) => each[each.length - 1]),
      state.walls.map((each) => each[0]),
      state.pipes[1],
      dt,
    ),
    rooms: roomsAfter(rig, still, result.airHeat.slice(modules), result.water.slice(modules), dt),
    rate: largestRate(still, state.x, state.walls, dt),
  };
  if (!next.turning) return { ...next, limitFor: 0 };
  const { limit, limitFor } = limits(rig, next, result.power, high.pressure, low.pressure, state.pipes[1], dt);
  return tripped({ ...next, limitFor }, limit);
}

/** Refrigerant temperatures at the outdoor pipes with the network at a solution, K. */
export function pipesNow(rig: NetworkRig): [number, number, number] {
  const { network } = rig;
  const suction = stationAt(rig, network.service[L.P], network.hSuctionPort, 0).temperature;
  const liquid = stationAt(rig, network.liquid[L.P], network.hLiquid, 0).temperature;
  return [suction, network.compressor.tDischarge, liquid];
}

/** Flow stops: the sides become vessels with the mass and energy that they held. */
function brokenOff(state: NetworkState): NetworkState {
  return {
    ...state,
    regime: 'still',
    energyHigh: state.energyHigh - state.debtHigh,
    energyLow: state.energyLow - state.debtLow,
    debtHigh: 0,
    debtLow: 0,
  };
}

/** Put the rig's network at a flow state's last evaluation. */
export function restore(rig: NetworkRig, state: NetworkState): void {
  const { inputs } = state;
  const as: NetworkState = {
    ...state,
    walls: inputs.walls,
    shell: inputs.shell,
    massHigh: inputs.massHigh,
    openings: inputs.openings,
    flows: inputs.flows,
    speed: inputs.speed,
    exchange: inputs.exchange,
    rooms: inputs.rooms,
    frost: inputs.frost,
  };
  setAir(rig, as, inputs.controls, inputs.fans);
  drivenBy(rig, as, inputs.dt, inputs.pool);
  const { x } = state;
  rig.network.evaluate(exp(x[0]), exp(x[1]), x[2] * 1e5, exp(x[3]), rig.drive, new Float64Array(4));
}

function handOver(rig: NetworkRig, state: NetworkState, controls: Controls): NetworkState | null {
  assign(rig, state);
  setAir(rig, state, controls, true);
  const entries: Entry[] = state.runningFor < TRY_FREEING ? ['pooling'] : ['pooling', 'going', 'free'];
  for (let k = 0; k < entries.length; k++) {
    try {
      const result = flowStep(rig, state, HANDED, entries[k]);
      const jump = Math.max(Math.abs(result.x[0] - state.x[0]), Math.abs(result.x[1] - state.x[1]));
      if (jump > CLOSE && state.runningFor < TRY_ANYHOW) continue;
      // the hand-over itself takes no time: the moment that was solved is not counted
      const flowing = afterFlow(rig, state, controls, result, HANDED);
      return { ...flowing, time: state.time, rooms: state.rooms };
    } catch (error) {
      if (!(error instanceof PhysicsError)) throw error;
      // no liquid lies on the low side: it can simply flow on
      if (entries.length === 1 && 'pool' in error.details) entries.push('going');
    }
  }
  return null;
}

/** Rooms after a step: what the units take out or bring in, against what the building does. */
function roomsAfter(
  rig: NetworkRig,
  state: NetworkState,
  heat: readonly number[],
  water: readonly number[],
  dt: number,
): Room[] {
  return state.rooms.map((room, i) => {
    const { data, air, fan } = rig.network.units[i];
    const sensible = heat[i] - water[i] * WATER - fan.power;
    const away = (room.temperature - room.temperatureFound) * (room.load < 0 ? -1 : 1);
    const load = room.load * eased(away / WARMER);
    const waterLoad = room.waterLoad * eased((room.humidity - room.humidityFound) / (DAMPER * room.humidityFound));
    const temperature = room.temperature + (dt * (load - sensible)) / (data.roomCapacity ?? 1e6);
    const humidity = room.humidity + (dt * (waterLoad - water[i])) / (data.roomAir ?? 50);
    const wettest = 0.97 * air.saturated.humidity(temperature);
    return { ...room, temperature, humidity: humidity < 0.001 ? 0.001 : humidity > wettest ? wettest : humidity };
  });
}

/** 1 as found, 0 where the room has come all the way, never negative. */
function eased(share: number): number {
  return share <= 0 ? 1 : share >= 1 ? 0 : 1 - share;
}

/** What the controller says of a running machine. */
export function runningWord(
  rig: NetworkRig,
  state: Pick<NetworkState, 'demands' | 'outdoors' | 'speed' | 'meltingFor' | 'sweepingFor'>,
  controls: Controls,
): ControllerState {
  if (state.meltingFor !== null) return 'defrosting';
  if (state.sweepingFor !== null) return 'bringing-oil-back';
  const { network, data } = rig;
  const { limits: ends, control } = data;
  if (!controls.fixedSpeed) {
    if (network.compressor.tDischarge > ends.slowDownTemp - 0.5) return 'slowed-by-discharge-heat';
    const seen = pressuresSeen(rig);
    if (seen.high > ends.slowDownPressure - 1e4) return 'slowed-by-high-pressure';
    if (seen.low < ends.slowDownLow + 1e3) return 'slowed-by-low-pressure';
  }
  if (isBalancing(state)) return 'cooling-and-heating';
  const full = !controls.fixedSpeed && state.speed > control.maxSpeed - 1e-6;
  if (state.demands.includes('heating')) return full ? 'heating-at-full-speed' : 'heating';
  return full ? 'cooling-at-full-speed' : 'cooling';
}

function tripped(state: NetworkState, limit: ControllerState | null): NetworkState {
  if (limit === null) return state;
  const stopped = state.regime === 'flow' ? brokenOff(state) : state;
  const trips = state.trips + 1;
  return {
    ...stopped,
    turning: false,
    controller: limit,
    trips,
    restartIn: trips >= LOCK_OUT_TRIPS ? 1e9 : RESTART_DELAY,
    runningFor: 0,
    limitFor: 0,
  };
}

/** One number in kelvin per second: pressures by about 30 K per unit of ln p. */
function largestRate(
  before: NetworkState,
  x: readonly number[],
  walls: readonly (readonly number[])[],
  dt: number,
): number {
  let most = 30 * Math.max(Math.abs(x[0] - before.x[0]), Math.abs(x[1] - before.x[1]));
  walls.forEach((each, k) => {
    const old = before.walls[k];
    for (let i = 0; i < each.length; i++) most = Math.max(most, Math.abs(each[i] - old[i]));
  });
  return most / dt;
}
