/**
 * The state after a step, from the circuit that flowed or the vessels that stood: ice, sensors, valve and speed, the room,
 * what the controller says and the limits that it minds.
 */
import type { IceData } from '../parts/ice';
import type { ControllerState, Controls } from '../types';
import type { Rig } from './compile';
import { sensorTruth } from './control';
import { crossedLimit, followBulb, laggedSensors, limitTime, regulate } from './controller';
import type { FlowResult } from './flowStep';
import { tripped } from './regime';
import type { CircuitState } from './state';
import type { StillResult } from './stillStep';
import { frostStep } from './walls';

/** K and share of humidity over the found room at which the building brings nothing more in (ours) */
export const WARMER = 8;
export const DAMPER = 0.5;

export function afterFlow(
  rig: Rig,
  state: CircuitState,
  controls: Controls,
  result: FlowResult,
  dt: number,
): CircuitState {
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

export function afterStill(
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

/** Ice that the coil which evaporates can carry, where it blocks air. */
function coolerIce({ circuit, data }: Rig): IceData | undefined {
  return circuit.heating ? data.outdoorIce : data.ice;
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
