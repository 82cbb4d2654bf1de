/**
 * The controller over time: thermostat, restart delay, limits and trips, valve and speed in velocity-form PI.
 * Time constants and gains are ours; restart delays of about three minutes are common practice, no source.
 */
import { motorCurrent } from '../parts/motor';
import type { ControllerState, Controls } from '../types';
import type { Rig } from './compile';
import { bulbTruth, reported, speedError, thermostaticOpening, valveError } from './control';
import { type Direction, motorVoltage } from './effective';
import { heldBy } from './held';
import { type CircuitState, LOCK_OUT_TRIPS } from './state';

const RESTART_DELAY = 180;
/** s after a start during which the low-pressure switch is bridged, and s that it must be open to act */
const LOW_PRESSURE_BRIDGE = 90;
const LOW_PRESSURE_DELAY = 20;
const OVERLOAD_DELAY = 8;
const THERMOSTAT_BAND = 0.5;
/** sensor time constants, s */
const LAG = { suctionLine: 12, evaporatorCoil: 8, dischargeLine: 20 } as const;

export function laggedSensors(
  sensed: CircuitState['sensed'],
  truth: CircuitState['sensed'],
  dt: number,
): CircuitState['sensed'] {
  const toward = (now: number, next: number, lag: number): number => now + ((next - now) * dt) / (dt + lag);
  return {
    suctionLine: toward(sensed.suctionLine, truth.suctionLine, LAG.suctionLine),
    evaporatorCoil: toward(sensed.evaporatorCoil, truth.evaporatorCoil, LAG.evaporatorCoil),
    dischargeLine: toward(sensed.dischargeLine, truth.dischargeLine, LAG.dischargeLine),
  };
}

function clip(value: number, low: number, high: number): number {
  return value < low ? low : value > high ? high : value;
}

/** New valve opening and speed after a step in flow. */
export function regulate(
  rig: Rig,
  state: CircuitState,
  controls: Controls,
  dt: number,
): Pick<CircuitState, 'opening' | 'speed' | 'valveError' | 'speedError'> {
  const { control } = rig.data;
  const { stuckOpening } = rig.effective;
  const seen = reported(rig.circuit, rig.env.outdoor, state.sensed);
  let { opening, speed } = state;
  let valve = 0;
  let pace = 0;
  if (control.metering === 'electronic') {
    const hold = Number.isNaN(stuckOpening) ? controls.valveHold : stuckOpening;
    if (hold !== null) opening = hold;
    else {
      valve = clip(valveError(rig.circuit, seen), -8, 12);
      // the flow, and with it the superheat, answers to the relative opening
      const gain = opening;
      opening = clip(opening + gain * (4e-3 * (valve - state.valveError) + 1.3e-4 * valve * dt), control.minOpening, 1);
    }
  }
  if (control.variableSpeed) {
    if (controls.fixedSpeed) speed += clip(1 - speed, -0.02 * dt, 0.02 * dt);
    else {
      pace = clip(speedError(rig.circuit, seen), -6, 6);
      speed = clip(speed + 6e-3 * (pace - state.speedError) + 5e-4 * pace * dt, control.minSpeed, control.maxSpeed);
    }
  }
  return { opening, speed, valveError: valve, speedError: pace };
}

/**
 * Bulb and pin of a thermostatic valve after a step; they follow by themselves, whether or not the machine runs.
 * @param pipe temperature at the evaporator's outlet, K; `pOut` pressure there, Pa
 */
export function followBulb(
  rig: Rig,
  state: CircuitState,
  pipe: number,
  pOut: number,
  dt: number,
): Pick<CircuitState, 'bulb' | 'opening'> {
  const { valve } = rig.data;
  if (valve === undefined) return { bulb: state.bulb, opening: state.opening };
  const bulb = state.bulb + ((bulbTruth(rig.circuit, pipe) - state.bulb) * dt) / (dt + valve.bulbLag);
  const { stuckOpening } = rig.effective;
  if (!Number.isNaN(stuckOpening)) return { bulb, opening: stuckOpening };
  const toward = thermostaticOpening(rig.circuit, bulb, pOut);
  return { bulb, opening: state.opening + ((toward - state.opening) * dt) / (dt + valve.pinLag) };
}

/** The limit that is crossed now, or null. */
export function crossedLimit(
  rig: Rig,
  power: number,
  state: CircuitState,
  pHigh: number,
  pLow: number,
  tDischarge: number,
): ControllerState | null {
  const { limits, motor } = rig.data;
  const { weakCapacitor } = rig.effective;
  const voltage = motorVoltage(rig.effective);
  if (pHigh > limits.highPressure) return 'stopped-on-high-pressure';
  if (state.runningFor < 2 && 1 - weakCapacitor < limits.startCapacitance) return 'stopped-on-overload';
  if (motorCurrent(motor, power, weakCapacitor, voltage) > limits.overloadCurrent && state.limitFor >= OVERLOAD_DELAY) {
    return 'stopped-on-overload';
  }
  if (tDischarge > limits.dischargeTemp && state.limitFor >= OVERLOAD_DELAY) return 'stopped-on-discharge-heat';
  // a cold room's low-pressure switch is part of its control and no trip
  if (state.cold) return null;
  if (pLow < limits.lowPressure && state.runningFor > LOW_PRESSURE_BRIDGE && state.limitFor >= LOW_PRESSURE_DELAY) {
    return 'stopped-on-low-pressure';
  }
  return null;
}

/** s that any delayed limit has been crossed. */
export function limitTime(
  rig: Rig,
  power: number,
  before: number,
  pLow: number,
  tDischarge: number,
  dt: number,
): number {
  const { limits, motor } = rig.data;
  const over =
    pLow < limits.lowPressure ||
    tDischarge > limits.dischargeTemp ||
    motorCurrent(motor, power, rig.effective.weakCapacitor, motorVoltage(rig.effective)) > limits.overloadCurrent;
  return over ? before + dt : 0;
}

/** Whether the compressor turns in the coming step, and what the controller says of it. */
export function decide(
  rig: Rig,
  state: CircuitState,
  controls: Controls,
  demand: Direction,
  dt: number,
): Pick<CircuitState, 'turning' | 'controller' | 'restartIn' | 'runningFor' | 'opening' | 'speed' | 'limitFor'> {
  const { control } = rig.data;
  const restartIn = Math.max(0, state.restartIn - dt);
  const stopped = state.controller.startsWith('stopped-on-');
  const parked =
    control.metering === 'electronic' && Number.isNaN(rig.effective.stuckOpening) && controls.valveHold === null;
  const off = (controller: ControllerState, delay: number) => ({
    turning: false,
    controller,
    restartIn: delay,
    runningFor: 0,
    limitFor: 0,
    opening: parked ? control.parkedOpening : state.opening,
    speed: state.speed,
  });
  if (!controls.running) return off('off', state.turning ? RESTART_DELAY : restartIn);
  const held = heldBy(rig, state.sensed);
  if (held) return off(held, state.turning ? RESTART_DELAY : restartIn);
  if (stopped && state.trips >= LOCK_OUT_TRIPS) return off(state.controller, restartIn);
  const felt = state.room + rig.effective.thermostatOffset;
  const content = demand === 'heating' ? 'room-warm-enough' : 'room-satisfied';
  const [beyond, short] =
    demand === 'heating'
      ? [felt > controls.setPoint + THERMOSTAT_BAND, felt > controls.setPoint - THERMOSTAT_BAND]
      : [felt < controls.setPoint - THERMOSTAT_BAND, felt < controls.setPoint + THERMOSTAT_BAND];
  const satisfied = beyond || (!state.turning && state.controller === content && short);
  if (satisfied) return off(content, state.turning ? RESTART_DELAY : restartIn);
  if (state.turning) {
    return {
      turning: true,
      controller: state.controller,
      restartIn,
      runningFor: state.runningFor + dt,
      limitFor: state.limitFor,
      opening: state.opening,
      speed: state.speed,
    };
  }
  if (restartIn > 0) return off(stopped ? state.controller : 'waiting-to-restart', restartIn);
  return {
    turning: true,
    controller: rig.circuit.heating ? 'heating' : 'cooling',
    restartIn: 0,
    runningFor: 0,
    limitFor: 0,
    opening: parked ? Math.max(control.minOpening, rig.designOpening) : state.opening,
    speed: control.variableSpeed ? 0.6 : 1,
  };
}

export { RESTART_DELAY };
