/**
 * The controller over time: rooms' thermostats, restart delay, limits and trips, valves, speed and the outdoor side.
 * Time constants and gains are ours; restart delays of about three minutes are common practice, no source.
 */
import { motorCurrent } from '../parts/motor';
import { RESTART_DELAY } from '../solve/controller';
import type { ControllerState, Controls, UnitDemand, UnitState } from '../types';
import { isSilent } from './bus';
import { speedError, speedTarget } from './control';
import { MELTING_SPEED } from './defrost';
import { demandsOf } from './design';
import { leastExchange, outdoorsWish, valveShare } from './exchange';
import { SWEEP_OPENING, SWEEP_RAMP, sweepSpeed } from './oilReturn';
import type { NetworkRig } from './rig';
import { condensingSeen, evaporatingSeen } from './seen';
import { LOCK_OUT_TRIPS, type NetworkState, PARKED } from './state';
import { heldBy } from './supply';
import { fedWith, type Outdoors } from './tasks';

const LOW_PRESSURE_BRIDGE = 90;
const LOW_PRESSURE_DELAY = 20;
const OVERLOAD_DELAY = 8;
const BAND = 0.5;
/** K that rooms ask apart from the set point where some cool and others heat */
const APART = 3;
/** s: lags of pipe sensors, of the discharge sensor, of a draining valve and of a change outdoors */
const PIPE_LAG = 10;
const DISCHARGE_LAG = 20;
const DRAIN_LAG = 25;
const OUTDOORS_DWELL = 180;
/** K of superheat under which a coil counts as flooded, and how much faster its valve then closes */
const WET = 1;
const HURRY = 4;

function clip(value: number, low: number, high: number): number {
  return value < low ? low : value > high ? high : value;
}

/** What each room gets after its thermostat. */
export function thermostats(
  rig: NetworkRig,
  state: NetworkState,
  controls: Controls,
): { demands: UnitDemand[]; unitStates: UnitState[] } {
  const asked = demandsOf(rig, rig.conditions.mode, controls.units);
  const both = asked.includes('heating') && asked.includes('cooling');
  const unitStates: UnitState[] = [];
  const demands = asked.map((demand, i): UnitDemand => {
    if (demand === 'off') {
      unitStates.push(isSilent(rig, i) ? 'not-answering' : 'off');
      return 'off';
    }
    const room = state.rooms[i].temperature + rig.effective.units[i].drift.returnAir;
    const cools = demand === 'cooling';
    const set = controls.setPoint + (both ? (cools ? -APART : APART) : 0);
    const over = cools ? set - room : room - set;
    const was = state.unitStates[i] === 'room-satisfied';
    const satisfied = over > BAND || (was && over > -BAND);
    unitStates.push(satisfied ? 'room-satisfied' : demand);
    return satisfied ? 'off' : demand;
  });
  return { demands, unitStates };
}

/** Openings, speed and outdoor fans after a step in flow. */
export function regulate(
  rig: NetworkRig,
  state: NetworkState,
  controls: Controls,
  dt: number,
): Pick<NetworkState, 'openings' | 'valveErrors' | 'speed' | 'speedError' | 'exchange'> {
  const { network, data, drive } = rig;
  const { control } = data;
  const openings: number[] = [];
  const valveErrors: number[] = [];
  network.branches.forEach((b, i) => {
    const now = state.openings[i];
    const task = drive.tasks[i];
    const own = i < network.modules.length ? Number.NaN : b.effective.stuckOpening;
    const held = Number.isNaN(own) && i >= network.modules.length ? controls.valveHold : own;
    if (held !== null && !Number.isNaN(held)) {
      openings.push(held);
      valveErrors.push(0);
    } else if (state.meltingFor !== null && i >= network.modules.length) {
      openings.push(now);
      valveErrors.push(0);
    } else if (
      state.sweepingFor !== null &&
      b.role !== 'idle' &&
      !(i < network.modules.length && network.plainCooling)
    ) {
      openings.push(now + clip(SWEEP_OPENING - now, -SWEEP_RAMP * dt, SWEEP_RAMP * dt));
      valveErrors.push(0);
    } else if (b.role === 'evaporator' && isFed(rig, state.demands, i)) {
      const seen = state.gasSensed[i] - state.liquidSensed[i] + task.adrift;
      const error = clip(seen - network.superheatWanted(i, task.superheat), -8, 12);
      const pace = seen < WET ? HURRY : 1;
      const step = now * (4e-3 * (error - state.valveErrors[i]) + 1.3e-4 * pace * error * dt);
      openings.push(clip(now + step, control.minOpening, b.effective.stroke));
      valveErrors.push(error);
    } else if (b.role === 'condenser') {
      const plain = network.plainCooling;
      const balances = i < network.modules.length && isBalancing(state);
      const share = balances ? valveShare(state.exchange) : b.effective.stroke;
      const wanted = plain
        ? 1
        : isFed(rig, state.demands, i)
          ? share * network.drainLaw(b.subcooling)
          : control.drainOpening;
      openings.push(now + ((wanted - now) * dt) / (dt + DRAIN_LAG));
      valveErrors.push(0);
    } else {
      openings.push(PARKED);
      valveErrors.push(0);
    }
  });
  let { speed, exchange } = state;
  let pace = 0;
  if (state.meltingFor !== null) speed += clip(MELTING_SPEED - speed, -0.02 * dt, 0.02 * dt);
  else if (state.sweepingFor !== null) speed += clip(sweepSpeed(state) - speed, -SWEEP_RAMP * dt, SWEEP_RAMP * dt);
  else if (controls.fixedSpeed) speed += clip(1 - speed, -0.02 * dt, 0.02 * dt);
  else {
    pace = clip(speedError(rig, speedTarget(state.demands, state.outdoors.role === 'evaporator')), -6, 6);
    speed = clip(speed + 6e-3 * (pace - state.speedError) + 5e-4 * pace * dt, control.minSpeed, control.maxSpeed);
  }
  if (isBalancing(state) && state.meltingFor === null && state.sweepingFor === null) {
    const boils = state.outdoors.role === 'evaporator';
    const error = boils
      ? control.evaporatingTarget - evaporatingSeen(rig)
      : condensingSeen(rig) - control.condensingTarget;
    exchange = clip(exchange + 1e-3 * clip(error, -6, 6) * dt, leastExchange(state.outdoors), 1);
  }
  return { openings, valveErrors, speed, speedError: pace, exchange };
}

/** Whether a branch works for somebody: outdoors always, a unit when the demand that reaches its coil is not off. */
export function isFed(rig: NetworkRig, demands: readonly UnitDemand[], branch: number): boolean {
  const unit = branch - rig.network.modules.length;
  return unit < 0 || fedWith(rig, demands, unit) !== 'off';
}

/** Whether rooms cool and heat at once, so that the outdoor side only balances. */
export function isBalancing(state: Pick<NetworkState, 'demands'>): boolean {
  return state.demands.includes('heating') && state.demands.includes('cooling');
}

/** What the modules do next: as the rooms ask, or a step of balance, not more often than every few minutes. */
export function outdoorsNext(rig: NetworkRig, state: NetworkState): Outdoors {
  const { control } = rig.data;
  const count = rig.data.modules.length;
  if (!isBalancing(state)) {
    const heats = state.demands.includes('heating');
    const cools = state.demands.includes('cooling');
    if (!heats && !cools) return state.outdoors;
    return { role: heats ? 'evaporator' : 'condenser', count };
  }
  if (state.outdoorsFor < OUTDOORS_DWELL || state.regime === 'still') return state.outdoors;
  const hot = condensingSeen(rig) - control.condensingTarget;
  const cold = control.evaporatingTarget - evaporatingSeen(rig);
  const { role } = state.outdoors;
  const level = role === 'condenser' ? state.outdoors.count : -state.outdoors.count;
  let next = level + outdoorsWish(state.outdoors, state.exchange, hot, cold);
  // one module stays in either way: throttled shut it takes nothing, so there is no step between
  if (next === 0) next = level > 0 ? -1 : 1;
  next = clip(next, -count, count);
  if (next === level) return state.outdoors;
  return { role: next > 0 ? 'condenser' : 'evaporator', count: next < 0 ? -next : next };
}

/** Lagging sensors after a step. */
export function sensedNext(
  state: NetworkState,
  gas: readonly number[],
  liquid: readonly number[],
  discharge: number,
  dt: number,
): Pick<NetworkState, 'gasSensed' | 'liquidSensed' | 'dischargeSensed'> {
  const toward = (now: number, next: number, lag: number): number => now + ((next - now) * dt) / (dt + lag);
  return {
    gasSensed: state.gasSensed.map((t, i) => toward(t, gas[i], PIPE_LAG)),
    liquidSensed: state.liquidSensed.map((t, i) => toward(t, liquid[i], PIPE_LAG)),
    dischargeSensed: toward(state.dischargeSensed, discharge, DISCHARGE_LAG),
  };
}

/** The limit that is crossed now, or null; s that a delayed one has been crossed. */
export function limits(
  rig: NetworkRig,
  state: NetworkState,
  power: number,
  pHigh: number,
  pLow: number,
  tDischarge: number,
  dt: number,
): { limit: ControllerState | null; limitFor: number } {
  const { limits: ends, motor } = rig.data;
  const current = motorCurrent(motor, power, 0, rig.effective.machine.voltage);
  const over = pLow < ends.lowPressure || tDischarge > ends.dischargeTemp || current > ends.overloadCurrent;
  const limitFor = over ? state.limitFor + dt : 0;
  let limit: ControllerState | null = null;
  if (pHigh > ends.highPressure) limit = 'stopped-on-high-pressure';
  else if (current > ends.overloadCurrent && limitFor >= OVERLOAD_DELAY) limit = 'stopped-on-overload';
  else if (tDischarge > ends.dischargeTemp && limitFor >= OVERLOAD_DELAY) limit = 'stopped-on-discharge-heat';
  else if (pLow < ends.lowPressure && state.runningFor > LOW_PRESSURE_BRIDGE && limitFor >= LOW_PRESSURE_DELAY) {
    limit = 'stopped-on-low-pressure';
  }
  return { limit, limitFor };
}

/** Whether the compressors turn in the coming step, and what the controller says of it. */
export function decide(
  rig: NetworkRig,
  state: NetworkState,
  controls: Controls,
  dt: number,
): Pick<NetworkState, 'turning' | 'controller' | 'restartIn' | 'runningFor' | 'limitFor' | 'openings' | 'speed'> {
  const restartIn = Math.max(0, state.restartIn - dt);
  const stopped = state.controller.startsWith('stopped-on-');
  const parked = rig.network.branches.map((b, i) => {
    const own = i < rig.network.modules.length ? Number.NaN : b.effective.stuckOpening;
    if (!Number.isNaN(own)) return own;
    return controls.valveHold !== null && i >= rig.network.modules.length ? controls.valveHold : PARKED;
  });
  const off = (controller: ControllerState, delay: number) => ({
    turning: false,
    controller,
    restartIn: delay,
    runningFor: 0,
    limitFor: 0,
    openings: parked,
    speed: state.speed,
  });
  if (!controls.running) return off('off', state.turning ? RESTART_DELAY : restartIn);
  const held = heldBy(rig);
  if (held) return off(held, state.turning ? RESTART_DELAY : restartIn);
  if (stopped && state.trips >= LOCK_OUT_TRIPS) return off(state.controller, restartIn);
  // oil is fetched to the end, also where the rooms have had enough meanwhile
  if (state.sweepingFor === null && !state.demands.some((each) => each !== 'off')) {
    return off('room-satisfied', state.turning ? RESTART_DELAY : restartIn);
  }
  if (state.turning) {
    return {
      turning: true,
      controller: state.controller,
      restartIn,
      runningFor: state.runningFor + dt,
      limitFor: state.limitFor,
      openings: state.openings,
      speed: state.speed,
    };
  }
  if (restartIn > 0) return off(stopped ? state.controller : 'waiting-to-restart', restartIn);
  return {
    turning: true,
    controller: state.demands.includes('heating') ? 'heating' : 'cooling',
    restartIn: 0,
    runningFor: 0,
    limitFor: 0,
    openings: rig.network.branches.map((_, i) => startOpening(rig, state, i)),
    speed: 0.5,
  };
}

/** Where a valve stands when the compressors start: about where it will regulate. */
function startOpening(rig: NetworkRig, state: NetworkState, index: number): number {
  const { network, data } = rig;
  const modules = network.modules.length;
  if (index < modules) return state.outdoors.role === 'condenser' ? 1 : 0.4;
  const unit = index - modules;
  const demand = fedWith(rig, state.demands, unit);
  if (demand === 'heating') return data.control.subcoolingOpening;
  return demand === 'cooling' ? 0.4 : PARKED;
}
