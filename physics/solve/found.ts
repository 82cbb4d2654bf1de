/**
 * A machine as found: the state in which it settled or in which it is held, what it says of itself there, the ice that lies on
 * its coils and the load that it keeps up with.
 */
import { WALL_FIELDS } from '../parts/coil';
import type { ControllerState, Controls } from '../types';
import { DAMPER, WARMER } from './afterStep';
import { freshColdStore } from './coldStore';
import type { Rig } from './compile';
import { bulbTruth, sensorTruth } from './control';
import { pipeTemps } from './flowStep';
import { reversible, standingState } from './standing';
import type { CircuitState } from './state';

/** kg of hoar on a segment of a coil that freezes in normal service, some minutes after a defrost */
const HOAR = 0.03;

/**
 * The state that rests at a steady solution.
 * @param x the solution's ln p_high, ln p_low, cylinder enthalpy / 1e5; the rig's circuit stands there
 */
export function settledState(rig: Rig, controls: Controls, x: Float64Array, charge: number): CircuitState {
  const { circuit, env, data } = rig;
  const truth = sensorTruth(circuit);
  const room = rig.roomTemp;
  const roomHumidity = rig.roomHumidity;
  const frost = iceOf(rig, HOAR);
  const walls = { condenser: [...circuit.condenser.walls], evaporator: [...circuit.evaporator.walls] };
  return {
    time: 0,
    regime: 'flow',
    turning: true,
    x: [x[0], x[1], x[2]],
    jacobian: null,
    condenserWall: walls.condenser,
    evaporatorWall: walls.evaporator,
    shell: circuit.compressor.shell,
    pipes: pipeTemps(rig),
    inputs: {
      dt: 0,
      condenserWall: walls.condenser,
      evaporatorWall: walls.evaporator,
      shell: circuit.compressor.shell,
      massHigh: circuit.massHigh,
      pool: 0,
      opening: env.opening,
      speed: env.speed,
      room,
      roomHumidity,
      controls,
      ...(data.coldStore && { passing: env.passing, ice: rig.ice, fanDuty: rig.fanDuty }),
      ...(data.outdoorIce && { ice: rig.ice }),
    },
    charge,
    massHigh: circuit.massHigh,
    pool: 0,
    energyHigh: circuit.energyHigh,
    energyLow: circuit.energyLow,
    debtHigh: 0,
    debtLow: 0,
    opening: env.opening,
    speed: env.speed,
    valveError: 0,
    speedError: 0,
    bulb: bulbTruth(circuit, circuit.tEvaporatorOut),
    sensed: truth,
    room,
    roomHumidity,
    ...loadNow(rig),
    roomFound: room,
    humidityFound: roomHumidity,
    frost,
    ...(data.coldStore && { cold: freshColdStore(true) }),
    ...reversible(rig, data.condenser.segments),
    controller:
      data.control.variableSpeed && env.speed > data.control.maxSpeed - 1e-6 ? 'cooling-at-full-speed' : workWord(rig),
    restartIn: 0,
    runningFor: 3600,
    limitFor: 0,
    trips: 0,
    handOver: 0,
    rate: 0,
  };
}

/**
 * Found standing though it is switched on: the sides have met, and the room has come as far as the weather takes it, so that
 * nothing moves. Once the machine runs and the room cools, the building's load comes back by the same rule as ever.
 * @param sound W and kg/s that the machine keeps up with when nothing holds it
 */
export function heldState(
  rig: Rig,
  controls: Controls,
  held: ControllerState,
  charge: number,
  sound: Pick<CircuitState, 'load' | 'waterLoad'>,
): CircuitState {
  const { indoor, wetBulb } = rig.conditions;
  rig.circuit.indoorAir.setWetBulb(indoor, wetBulb);
  const { humidity } = rig.circuit.indoorAir;
  return {
    ...standingState(rig, controls, indoor, humidity, charge),
    ...sound,
    roomFound: sound.load < 0 ? indoor + WARMER : indoor - WARMER,
    humidityFound: humidity / (1 + DAMPER),
    controller: held,
    rate: 0,
  };
}

/** Heat (W) and water (kg/s) that the machine takes out of the room with the circuit where it is. */
export function loadNow(rig: Rig): { load: number; waterLoad: number } {
  const { airHeat, waterTotal } = rig.circuit.indoorCoil;
  const { sensible, water } = rig.roomLoss(airHeat, waterTotal);
  return { load: sensible, waterLoad: water };
}

/** Ice on the evaporator in this steady state, kg a segment: as found where it takes air away, else `kg` where walls freeze. */
export function iceOf(rig: Rig, kg: number): number[] {
  if (blocks(rig)) return rig.circuit.heating && rig.effective.ice === 0 ? noIce(rig) : foundIce(rig);
  const { evaporator } = rig.circuit;
  return Array.from(evaporator.temperature, (_, i) => (evaporator.walls[i * WALL_FIELDS] < 273.15 ? kg : 0));
}

/** What the controller would say of itself while it runs in this steady state (a limit that it would stop on included). */
export function runningState(rig: Rig, controls: Controls): ControllerState {
  const { data, env, circuit } = rig;
  const { limits, control } = data;
  if (circuit.pDischarge > limits.highPressure) return 'stopped-on-high-pressure';
  if (circuit.pSuction < limits.lowPressure) return 'stopped-on-low-pressure';
  if (circuit.compressor.tDischarge > limits.dischargeTemp) return 'stopped-on-discharge-heat';
  if (!control.variableSpeed || controls.fixedSpeed) return workWord(rig);
  if (circuit.compressor.tDischarge > limits.slowDownTemp - 0.5 || circuit.pDischarge > limits.slowDownPressure - 1e4) {
    return 'slowed-by-discharge-heat';
  }
  return env.speed > control.maxSpeed - 1e-6 ? 'cooling-at-full-speed' : 'cooling';
}

/** Ice on the coil that evaporates takes air away. */
export function blocks({ circuit, data }: Rig): boolean {
  return (circuit.heating ? data.outdoorIce : data.ice) !== undefined;
}

/** kg of ice on each segment as found: where water freezes, as it came out of the air there. */
function foundIce(rig: Rig): number[] {
  const { evaporator } = rig.circuit;
  const { ice } = rig.effective;
  const taken = Array.from(evaporator.water, (water, i) => (evaporator.walls[i * WALL_FIELDS] < 273.15 ? water : 0));
  const total = taken.reduce((sum, water) => sum + water, 0);
  return taken.map((water) => (ice > 0 ? ice * (total > 0 ? water / total : 1 / taken.length) : water > 0 ? HOAR : 0));
}

/** A coil that was defrosted a moment ago. */
function noIce(rig: Rig): number[] {
  return new Array<number>(rig.data.evaporator.segments).fill(0);
}

/** The controller's word for a machine that does what it is asked for. */
function workWord({ circuit }: Rig): ControllerState {
  return circuit.heating ? 'heating' : 'cooling';
}
