/**
 * Time: one step of the whole machine. Decides the regime (flow / still), steps the circuit, then the room, the ice, the
 * sensors and the controller. Deterministic: no clock, no randomness.
 */
import { PhysicsError } from '../errors';
import { exp } from '../math/elementary';
import type { IceData } from '../parts/ice';
import type { ControllerState, Controls } from '../types';
import { coldFans, cutOutNow, decideCold, PASSING_STREAM, passing, STREAM } from './coldStore';
import type { Rig } from './compile';
import { sensorTruth } from './control';
import { crossedLimit, decide, followBulb, laggedSensors, limitTime, RESTART_DELAY, regulate } from './controller';
import type { Direction } from './effective';
import { type Entry, type FlowResult, flowStep, pipeTemps } from './flowStep';
import { blockingIce, demandOf, directionFor, followDefrost, type Rigs, rigOf, turnOver } from './reversal';
import { type CircuitState, LOCK_OUT_TRIPS } from './state';
import { type StillResult, stillStep } from './stillStep';
import { frostStep } from './walls';

/** s after a start at which the hand-over to flow is tried: keeping the mass split, freeing it, freeing it at any jump. */
const TRY_KEEPING = 22;
const TRY_FREEING = 40;
const TRY_ANYHOW = 75;
/** s within which a cold room's switches must act */
const SWITCHED = 5;
/** largest |ln p_flow / p_still| accepted at a hand-over */
const CLOSE = 0.22;
/** K and share of humidity over the found room at which the building brings nothing more in (ours) */
const WARMER = 8;
const DAMPER = 0.5;

/**
 * Controls as the fans see them: both run with the compressor, but neither in a defrost by reversal (out of doors the fan
 * would cool what has to melt, indoors blow cold); a cold room's controller has ideas of its own.
 */
export function fansFor(controls: Controls, state: CircuitState): Controls {
  if (state.cold) return coldFans(controls, state, state.cold);
  const runs = state.turning && (state.defrost === undefined || state.defrost.running === 0);
  return {
    ...controls,
    outdoorFanRunning: controls.outdoorFanRunning && runs,
    indoorFanRunning: controls.indoorFanRunning && runs,
  };
}

/** Advance by dt whole seconds. Throws PhysicsError with the time where a step cannot be computed in any way. */
export function advance(rigs: Rigs, before: CircuitState, controls: Controls, dt: number): CircuitState {
  if (!(dt >= 1 && dt <= 30) || Math.floor(dt) !== dt) {
    throw new PhysicsError('bad-input', `dt: ${dt} is not a whole number of seconds within 1…30`, { dt });
  }
  const demand = demandOf(rigs, controls);
  const state = turned(rigs, before, demand);
  const rig = rigOf(rigs, state);
  let now = state;
  let left = dt;
  while (left > 0) {
    const part = now.cold ? Math.min(left, now.turning && now.regime === 'still' ? 1 : SWITCHED) : left;
    now = once(rig, now, controls, demand, part);
    left -= part;
  }
  return now.defrost === undefined ? now : { ...now, defrost: followDefrost(rig, now, demand, dt) };
}

/** The machine with its reversing valve where it has to be. A change of what is asked for stops the compressor first. */
function turned(rigs: Rigs, state: CircuitState, demand: Direction): CircuitState {
  if (state.direction === undefined) return state;
  const from = rigOf(rigs, state);
  const { direction, defrost } = directionFor(from, state, demand);
  if (direction === state.direction) return { ...state, defrost };
  const still = state.regime === 'flow' ? brokenOff(from, state) : state;
  const controller = defrost.running > 0 ? 'defrosting' : direction;
  const over: CircuitState = { ...turnOver(from, rigs.of(direction, true), still), defrost, controller };
  const asked = defrost.running > 0 || (state.defrost?.running ?? 0) > 0;
  return asked || !state.turning
    ? over
    : { ...over, turning: false, controller: 'waiting-to-restart', restartIn: RESTART_DELAY };
}

function once(rig: Rig, state: CircuitState, controls: Controls, demand: Direction, dt: number): CircuitState {
  const decided: CircuitState = {
    ...state,
    ...(state.cold ? decideCold(rig, state, state.cold, controls, dt) : decide(rig, state, controls, demand, dt)),
  };
  const fans = fansFor(controls, decided);
  const share = passing(rig.effective, decided);
  const streams = share >= (decided.cold?.solenoid === false ? PASSING_STREAM : STREAM);
  takeAir(rig, fans, state);
  if (decided.turning && decided.regime === 'flow' && streams) {
    const next = inFlow(rig, decided, fans, dt, 0);
    if (next) return next;
  }
  const still = decided.regime === 'flow' ? brokenOff(rig, decided) : decided;
  const stepped = standStill(rig, decided, still, controls, dt);
  if (!stepped.turning || !streams || stepped.runningFor < TRY_KEEPING) return stepped;
  return handOver(rig, stepped, fans) ?? stepped;
}

/** Ice that the coil which evaporates can carry, where it blocks air. */
function coolerIce({ circuit, data }: Rig): IceData | undefined {
  return circuit.heating ? data.outdoorIce : data.ice;
}

/** Both air streams for these fans, this room and the ice that lies on the cooler or on the outdoor coil. */
export function takeAir(rig: Rig, fans: Controls, state: CircuitState): void {
  rig.ice = blockingIce(rig, state);
  rig.setAir(fans, state.room, state.roomHumidity);
  rig.env.passing = passing(rig.effective, state);
}

/** A step of the vessels. Where the running compressor leaves the tables, the switch that guards that end has opened. */
function standStill(
  rig: Rig,
  decided: CircuitState,
  still: CircuitState,
  controls: Controls,
  dt: number,
): CircuitState {
  const fans = fansFor(controls, still);
  takeAir(rig, fans, still);
  rig.effective.charge = still.charge;
  try {
    return afterStill(rig, decided, still, stillStep(rig, still, dt), fans, dt);
  } catch (error) {
    if (!(error instanceof PhysicsError) || !still.turning) throw error;
    if (dt > 1) {
      // a switch opens somewhere in between
      const half = Math.floor(dt / 2);
      const first = standStill(rig, decided, still, controls, half);
      return standStill(rig, first, first, controls, dt - half);
    }
    const emptied = cutOutNow(rig, still);
    if (emptied) return standStill(rig, emptied, emptied, controls, dt);
    const high = exp(still.x[0]) > 0.85 * rig.data.limits.highPressure;
    const stopped = tripped(rig, still, high ? 'stopped-on-high-pressure' : 'stopped-on-discharge-heat');
    return standStill(rig, stopped, stopped, controls, dt);
  }
}

/** A step in flow, halved where it cannot be solved; null where even short steps fail. */
function inFlow(rig: Rig, state: CircuitState, controls: Controls, dt: number, depth: number): CircuitState | null {
  let result: FlowResult;
  try {
    result = flowStep(rig, state, state.x, dt, 'going');
  } catch (error) {
    if (!(error instanceof PhysicsError)) throw error;
    if (depth >= 4) return null;
    const half = inFlow(rig, state, controls, dt / 2, depth + 1);
    if (!half?.turning || half.regime !== 'flow') return half;
    takeAir(rig, controls, half);
    return inFlow(rig, half, controls, dt / 2, depth + 1);
  }
  return afterFlow(rig, state, controls, result, dt);
}

function afterFlow(rig: Rig, state: CircuitState, controls: Controls, result: FlowResult, dt: number): CircuitState {
  const { circuit, data } = rig;
  const { condenserWall, evaporatorWall } = result;
  const frost = frostStep(
    state.frost,
    evaporatorWall,
    circuit.evaporator.water,
    data.evaporator.wallCapacity / data.evaporator.segments,
    dt,
    coolerIce(rig),
  );
  const { condenserIce } = state;
  const melting = condenserIce && {
    condenserIce: frostStep(
      condenserIce,
      condenserWall,
      circuit.condenser.water,
      data.condenser.wallCapacity / data.condenser.segments,
      dt,
      circuit.heating ? undefined : data.outdoorIce,
    ),
  };
  const sensed = laggedSensors(state.sensed, sensorTruth(circuit), dt);
  const power = circuit.compressor.power;
  const limitFor = limitTime(rig, power, state.limitFor, circuit.pSuction, circuit.compressor.tDischarge, dt);
  const next: CircuitState = {
    ...state,
    time: state.time + dt,
    regime: 'flow',
    x: result.x,
    jacobian: result.jacobian,
    condenserWall,
    evaporatorWall,
    shell: circuit.compressor.shell,
    inputs: {
      dt,
      condenserWall: state.condenserWall,
      evaporatorWall: state.evaporatorWall,
      shell: state.shell,
      massHigh: state.massHigh,
      pool: result.pool,
      opening: state.opening,
      speed: state.speed,
      room: state.room,
      roomHumidity: state.roomHumidity,
      controls,
      ...(state.cold && { passing: rig.env.passing, ice: rig.ice }),
      ...(data.outdoorIce && { ice: rig.ice }),
    },
    massHigh: circuit.massHigh,
    pool: result.pool,
    energyHigh: circuit.energyHigh,
    energyLow: circuit.energyLow,
    sensed,
    frost,
    ...melting,
    limitFor,
    controller: runningWord(rig, state, controls),
    handOver: result.handOver,
    debtHigh: result.debtHigh,
    debtLow: result.debtLow,
    ...roomStep(rig, state, circuit.indoorCoil.airHeat, circuit.indoorCoil.waterTotal, dt),
    rate: largestRate(state, result.x, condenserWall, evaporatorWall, dt),
  };
  const regulated = {
    ...next,
    ...regulate(rig, next, controls, dt),
    ...(data.valve && followBulb(rig, next, circuit.tEvaporatorOut, circuit.pEvaporatorOut, dt)),
  };
  return tripped(
    rig,
    regulated,
    crossedLimit(rig, power, regulated, circuit.pDischarge, circuit.pSuction, circuit.compressor.tDischarge),
  );
}

function afterStill(
  rig: Rig,
  decided: CircuitState,
  still: CircuitState,
  result: StillResult,
  fans: Controls,
  dt: number,
): CircuitState {
  const { state } = result;
  const truth = {
    suctionLine: state.pipes.suction,
    evaporatorCoil: state.evaporatorWall[0],
    dischargeLine: state.pipes.discharge,
  };
  const next: CircuitState = {
    ...state,
    inputs: { ...state.inputs, controls: fans },
    ...(rig.data.valve && followBulb(rig, state, state.pipes.evaporatorOut, result.low.pressure, dt)),
    sensed: laggedSensors(decided.sensed, truth, dt),
    limitFor: decided.turning
      ? limitTime(rig, result.power, decided.limitFor, result.low.pressure, state.pipes.discharge, dt)
      : 0,
    ...roomStep(rig, still, result.airHeat, result.water, dt),
    rate: largestRate(still, state.x, state.condenserWall, state.evaporatorWall, dt),
  };
  if (!next.turning) return next;
  return tripped(
    rig,
    next,
    crossedLimit(rig, result.power, next, result.high.pressure, result.low.pressure, state.pipes.discharge),
  );
}

/** Flow stops: the sides become vessels with the mass and energy that they held. */
function brokenOff(rig: Rig, state: CircuitState): CircuitState {
  restore(rig, state);
  return {
    ...state,
    regime: 'still',
    pipes: pipeTemps(rig),
    energyHigh: state.energyHigh - state.debtHigh,
    energyLow: state.energyLow - state.debtLow,
    debtHigh: 0,
    debtLow: 0,
  };
}

/** Put the rig's circuit at a flow state's last evaluation. */
export function restore(rig: Rig, state: CircuitState): void {
  const { inputs } = state;
  const { env, circuit } = rig;
  rig.ice = inputs.ice ?? 0;
  rig.fanDuty = inputs.fanDuty ?? 1;
  rig.setAir(inputs.controls, inputs.room, inputs.roomHumidity);
  rig.fanDuty = 1;
  env.passing = inputs.passing ?? 1;
  env.dt = inputs.dt;
  env.opening = inputs.opening;
  env.speed = inputs.speed;
  env.condenserWall = inputs.condenserWall;
  env.evaporatorWall = inputs.evaporatorWall;
  env.shell = inputs.shell;
  env.massHigh = inputs.massHigh;
  env.pool = inputs.pool;
  rig.effective.charge = state.charge;
  circuit.evaluate(exp(state.x[0]), exp(state.x[1]), state.x[2] * 1e5, env, new Float64Array(3));
}

function handOver(rig: Rig, state: CircuitState, controls: Controls): CircuitState | null {
  takeAir(rig, controls, state);
  const entries: Entry[] = state.runningFor < TRY_FREEING ? ['pooling'] : ['pooling', 'going', 'free'];
  for (let k = 0; k < entries.length; k++) {
    try {
      const result = flowStep(rig, state, state.x, 1, entries[k]);
      const jump = Math.max(Math.abs(result.x[0] - state.x[0]), Math.abs(result.x[1] - state.x[1]));
      if (jump > CLOSE && state.runningFor < TRY_ANYHOW) continue;
      // the hand-over itself takes no time: the second that was solved is not counted
      const flowing = afterFlow(rig, state, controls, result, 1);
      return { ...flowing, time: state.time, room: state.room, roomHumidity: state.roomHumidity };
    } catch (error) {
      if (!(error instanceof PhysicsError)) throw error;
      // no liquid lies on the low side: it can simply flow on
      if (entries.length === 1 && 'pool' in error.details) entries.push('going');
    }
  }
  return null;
}

function roomStep(
  rig: Rig,
  state: CircuitState,
  heat: number,
  water: number,
  dt: number,
): Pick<CircuitState, 'room' | 'roomHumidity'> {
  const { data } = rig;
  // the building's load was measured against what the machine took out as found, its fan's heat included; it eases off as
  // the room warms and dampens toward the weather
  const lost = rig.roomLoss(heat, water);
  // a room that is heated cools toward the weather instead
  const away = state.load < 0 && state.direction ? state.roomFound - state.room : state.room - state.roomFound;
  const load = state.load * eased(away / WARMER);
  const waterLoad =
    state.waterLoad * eased((state.roomHumidity - state.humidityFound) / (DAMPER * state.humidityFound));
  const room = state.room + (dt * (load - lost.sensible)) / data.roomCapacity;
  const humidity = state.roomHumidity + (dt * (waterLoad - lost.water)) / data.roomAir;
  const wettest = 0.97 * rig.circuit.indoorAir.saturated.humidity(room);
  return { room, roomHumidity: humidity < 0.001 ? 0.001 : humidity > wettest ? wettest : humidity };
}

/** 1 as found, 0 where the room has come all the way, never negative. */
function eased(share: number): number {
  return share <= 0 ? 1 : share >= 1 ? 0 : 1 - share;
}

function runningWord(rig: Rig, state: CircuitState, controls: Controls): ControllerState {
  const { data, circuit } = rig;
  const { limits, control } = data;
  if (state.cold) return state.controller;
  if (state.defrost && state.defrost.running > 0) return 'defrosting';
  if (circuit.heating) return 'heating';
  if (!control.variableSpeed || controls.fixedSpeed) return 'cooling';
  const near =
    circuit.compressor.tDischarge > limits.slowDownTemp - 0.5 || circuit.pDischarge > limits.slowDownPressure - 1e4;
  if (near) return 'slowed-by-discharge-heat';
  return state.speed > control.maxSpeed - 1e-6 ? 'cooling-at-full-speed' : 'cooling';
}

function tripped(rig: Rig, state: CircuitState, limit: ControllerState | null): CircuitState {
  if (limit === null) return state;
  const stopped = state.regime === 'flow' ? brokenOff(rig, state) : state;
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

function largestRate(
  before: CircuitState,
  x: readonly number[],
  condenserWall: readonly number[],
  evaporatorWall: readonly number[],
  dt: number,
): number {
  // one number in kelvin per second: pressures by about 30 K per unit of ln p
  let most = 30 * Math.max(Math.abs(x[0] - before.x[0]), Math.abs(x[1] - before.x[1]));
  for (let i = 0; i < condenserWall.length; i++)
    most = Math.max(most, Math.abs(condenserWall[i] - before.condenserWall[i]));
  for (let i = 0; i < evaporatorWall.length; i++)
    most = Math.max(most, Math.abs(evaporatorWall[i] - before.evaporatorWall[i]));
  return most / dt;
}
