/**
 * The controller of a cold room. Its thermostat shuts the solenoid valve; the compressor then empties the low side until
 * the low-pressure switch stops it, and starts again when that switch closes. A clock starts defrosts. The condenser's fan
 * follows two head pressures. Common practice, no source; times and bounds are a machine's own.
 */
import { exp } from '../math/elementary';
import { WALL_FIELDS } from '../parts/coil';
import { throughSolenoid } from '../parts/solenoid';
import type { ControllerState, Controls } from '../types';
import type { Rig } from './compile';
import type { Effective, MachineData } from './effective';
import { type CircuitState, LOCK_OUT_TRIPS } from './state';

export interface ColdStoreData {
  /** Pa at the compressor's inlet at which the low-pressure switch opens and closes */
  readonly cutOut: number;
  readonly cutIn: number;
  /** Pa of head below which the condenser's fan stops, and above which it starts */
  readonly fanOff: number;
  readonly fanOn: number;
  /** W of the heater in the compressor's sump while it stands */
  readonly crankcase: number;
  /** kg of liquid between the solenoid and the metering device */
  readonly line: number;
  readonly defrost: DefrostData;
}

export interface DefrostData {
  /** s from one defrost to the next, W of its heater */
  readonly interval: number;
  readonly heater: number;
  /** kg of ice that an interval brings at the design point */
  readonly growth: number;
  /** K of the coldest part of the coil at which it ends; s after which it ends at the latest */
  readonly endTemp: number;
  readonly longest: number;
  /** s for the water to drip off; K of the coil at which the fan may start, and s after which it starts anyhow */
  readonly drip: number;
  readonly fanTemp: number;
  readonly fanDelay: number;
}

/** What the controller is about; `emptying` = pump-down before a defrost. */
export type ColdPhase = 'cooling' | 'emptying' | 'defrosting' | 'dripping' | 'fan-waiting';

export interface ColdStoreState {
  readonly phase: ColdPhase;
  /** s in this phase; s until the next defrost */
  readonly phaseFor: number;
  readonly defrostIn: number;
  /** the thermostat asks for cooling; the low-pressure switch is closed; the condenser's fan relay is in */
  readonly calling: boolean;
  readonly switchClosed: boolean;
  readonly fan: boolean;
  /** the solenoid's coil has current */
  readonly solenoid: boolean;
  /** kg of liquid between the solenoid and the metering device, which still drains after the solenoid has shut */
  readonly line: number;
  /** W of the coil's and the sump's heater in the step */
  readonly coilHeat: number;
  readonly crankcaseHeat: number;
}

/** K either side of the set-point; s that the compressor rests at least; s after which a pump-down counts as done */
const BAND = 0.5;
const REST = 60;
const LONGEST_PUMP_DOWN = 240;
/** suction over the cut-out from which it counts as all but reached */
const ABOUT_TO = 1.4;
/** s after a start during which the low-pressure switch is bridged: head has to come up first on a cold day */
const BRIDGED = 120;
/** s to the next defrost of a machine that is found running (judgement: beyond a visit) */
const FOUND_BEFORE_DEFROST = 3 * 3600;

export function freshColdStore(running: boolean): ColdStoreState {
  return {
    phase: 'cooling',
    phaseFor: 0,
    defrostIn: FOUND_BEFORE_DEFROST,
    calling: running,
    switchClosed: true,
    fan: running,
    solenoid: running,
    line: 0,
    coilHeat: 0,
    crankcaseHeat: 0,
  };
}

/** Share of its area that the solenoid valve passes: 1 on machines that have none. */
export function passing(effective: Effective, state: CircuitState): number {
  if (state.cold === undefined) return 1;
  return state.cold.solenoid ? 1 - effective.solenoidLost : effective.solenoidPassing;
}

/** Below this share there is no stream that a march along the coils could describe: the sides are vessels. */
export const STREAM = 0.05;
/** The same for a solenoid that should be shut: what passes less is pumped off as it comes. */
export const PASSING_STREAM = 0.15;

/** Factor on the metering area as it is, solenoid included. */
export function meteringOpening(effective: Effective, opening: number, share: number): number {
  return throughSolenoid(opening, share) * effective.metering + effective.bypass;
}

/** Controls as the fans of a cold room see them. */
export function coldFans(controls: Controls, state: CircuitState, cold: ColdStoreState): Controls {
  return {
    ...controls,
    outdoorFanRunning: controls.outdoorFanRunning && state.turning && cold.fan,
    indoorFanRunning:
      controls.indoorFanRunning && controls.running && (cold.phase === 'cooling' || cold.phase === 'emptying'),
  };
}

/** Head that the fan's cycling holds on the mean when it runs this share of the time, Pa: declared, ours. */
export function meanHead(store: ColdStoreData, effective: Effective, duty: number): number {
  const left = 1 - effective.fanSwitchLost;
  return left * (store.fanOff + 0.5 * (1 - duty) * (store.fanOn - store.fanOff));
}

type Decision = Pick<
  CircuitState,
  'turning' | 'controller' | 'restartIn' | 'runningFor' | 'opening' | 'speed' | 'limitFor'
> & { readonly cold: ColdStoreState };

/** Whether the compressor turns in the coming step, what the heaters and relays do, and what the controller says. */
export function decideCold(
  rig: Rig,
  state: CircuitState,
  before: ColdStoreState,
  controls: Controls,
  dt: number,
): Decision {
  const store = storeOf(rig.data);
  const pHigh = exp(state.x[0]);
  const pLow = exp(state.x[1]);
  const restartIn = Math.max(0, state.restartIn - dt);
  const left = 1 - rig.effective.fanSwitchLost;
  const calling = before.calling ? state.room >= controls.setPoint - BAND : state.room > controls.setPoint + BAND;
  const bridged = before.solenoid && state.turning && state.runningFor < BRIDGED;
  const switchClosed = before.switchClosed ? bridged || pLow >= store.cutOut : pLow > store.cutIn;
  const fan = pHigh > left * store.fanOn || (before.fan && pHigh >= left * store.fanOff);
  const phased = controls.running ? nextPhase(rig, state, { ...before, calling, switchClosed, fan }, dt) : before;
  const wanted = phased.phase === 'cooling' || phased.phase === 'fan-waiting';
  const solenoid = controls.running && calling && wanted;
  // what stands behind the solenoid when it shuts drains into the cooler
  const drains = before.solenoid && rig.effective.solenoidLost < 1 - STREAM ? store.line : before.line;
  const cold = { ...phased, calling, switchClosed, fan, solenoid, line: solenoid ? 0 : drains };
  const locked = state.controller.startsWith('stopped-on-') && state.trips >= LOCK_OUT_TRIPS;
  const resting = cold.phase === 'defrosting' || cold.phase === 'dripping';
  const may = controls.running && switchClosed && !locked && !resting;
  const turning = may && (state.turning || restartIn === 0);
  const stopped = state.turning && !turning;
  return {
    turning,
    controller: wordOf(state, cold, controls, turning, locked),
    restartIn: stopped ? REST : turning ? 0 : restartIn,
    runningFor: turning ? (state.turning ? state.runningFor + dt : 0) : 0,
    limitFor: turning ? state.limitFor : 0,
    opening: state.opening,
    speed: 1,
    cold: {
      ...cold,
      coilHeat:
        cold.phase === 'defrosting' && controls.running ? store.defrost.heater * (1 - rig.effective.heaterLost) : 0,
      crankcaseHeat: !turning && controls.running ? store.crankcase : 0,
    },
  };
}

/**
 * On a hot day the gas of the last seconds of a pump-down is hotter than the tables reach: the low-pressure switch, which
 * is about to open, opens then. Null where the machine is not that far.
 */
export function cutOutNow(rig: Rig, state: CircuitState): CircuitState | null {
  if (state.cold === undefined || state.cold.solenoid) return null;
  if (exp(state.x[1]) > ABOUT_TO * storeOf(rig.data).cutOut) return null;
  return { ...state, turning: false, restartIn: REST, runningFor: 0, cold: { ...state.cold, switchClosed: false } };
}

function nextPhase(rig: Rig, state: CircuitState, cold: ColdStoreState, dt: number): ColdStoreState {
  const { defrost } = storeOf(rig.data);
  const { effective } = rig;
  const phaseFor = cold.phaseFor + dt;
  const enter = (phase: ColdPhase): ColdStoreState => ({ ...cold, phase, phaseFor: 0 });
  switch (cold.phase) {
    case 'cooling': {
      const defrostIn = Math.max(0, cold.defrostIn - dt);
      if (defrostIn === 0 && effective.defrostNotStarting === 0) return { ...enter('emptying'), defrostIn };
      return { ...cold, phaseFor, defrostIn };
    }
    case 'emptying':
      return !state.turning || phaseFor >= LONGEST_PUMP_DOWN ? enter('defrosting') : { ...cold, phaseFor };
    case 'defrosting': {
      const felt = coldestWall(state) - effective.defrostNotEnding;
      return felt >= defrost.endTemp || phaseFor >= defrost.longest ? enter('dripping') : { ...cold, phaseFor };
    }
    case 'dripping':
      return phaseFor >= defrost.drip ? enter('fan-waiting') : { ...cold, phaseFor };
    case 'fan-waiting':
      return coldestWall(state) <= defrost.fanTemp || phaseFor >= defrost.fanDelay
        ? { ...enter('cooling'), defrostIn: defrost.interval }
        : { ...cold, phaseFor };
  }
}

function wordOf(
  state: CircuitState,
  cold: ColdStoreState,
  controls: Controls,
  turning: boolean,
  locked: boolean,
): ControllerState {
  if (!controls.running) return 'off';
  if (cold.phase === 'defrosting' || cold.phase === 'dripping') return cold.phase;
  if (turning) {
    if (!cold.solenoid) return 'pumping-down';
    return cold.phase === 'fan-waiting' ? 'fan-waiting' : 'cooling';
  }
  const safety = state.controller.startsWith('stopped-on-') && state.controller !== 'stopped-on-low-pressure';
  if (locked || (safety && state.restartIn > 0)) return state.controller;
  if (!cold.calling) return 'room-satisfied';
  return cold.switchClosed ? 'waiting-to-restart' : 'stopped-on-low-pressure';
}

/** K of the coldest segment of the evaporator. */
function coldestWall(state: CircuitState): number {
  let coldest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < state.evaporatorWall.length; i += WALL_FIELDS) {
    if (state.evaporatorWall[i] < coldest) coldest = state.evaporatorWall[i];
  }
  return coldest;
}

function storeOf(data: MachineData): ColdStoreData {
  if (data.coldStore === undefined) throw new RangeError('coldStore: a cold room needs its numbers');
  return data.coldStore;
}
