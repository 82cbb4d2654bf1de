/**
 * What surrounds a step: the air that the fans give, the circuit put back where a state left it, flow that breaks off, and
 * a limit that stops the machine.
 */
import { exp } from '../math/elementary';
import type { ControllerState, Controls } from '../types';
import { coldFans, passing } from './coldStore';
import type { Rig } from './compile';
import { RESTART_DELAY } from './controller';
import { pipeTemps } from './flowStep';
import { blockingIce } from './reversal';
import { type CircuitState, LOCK_OUT_TRIPS } from './state';

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

/** Both air streams for these fans, this room and the ice that lies on the cooler or on the outdoor coil. */
export function takeAir(rig: Rig, fans: Controls, state: CircuitState): void {
  rig.ice = blockingIce(rig, state);
  rig.setAir(fans, state.room, state.roomHumidity);
  rig.env.passing = passing(rig.effective, state);
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

/** Flow stops: the sides become vessels with the mass and energy that they held. */
export function brokenOff(rig: Rig, state: CircuitState): CircuitState {
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

export function tripped(rig: Rig, state: CircuitState, limit: ControllerState | null): CircuitState {
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
