/**
 * Time: one step of the whole machine. Decides the regime (flow / still) and steps the circuit; what follows from it is in
 * `afterStep`. Deterministic: no clock, no randomness.
 */
import { PhysicsError } from '../errors';
import { exp } from '../math/elementary';
import type { Controls } from '../types';
import { afterFlow, afterStill } from './afterStep';
import { cutOutNow, decideCold, PASSING_STREAM, passing, STREAM } from './coldStore';
import type { Rig } from './compile';
import { decide, RESTART_DELAY } from './controller';
import type { Direction } from './effective';
import { type Entry, type FlowResult, flowStep } from './flowStep';
import { brokenOff, fansFor, takeAir, tripped } from './regime';
import { demandOf, directionFor, followDefrost, type Rigs, rigOf, turnOver } from './reversal';
import type { CircuitState } from './state';
import { stillStep } from './stillStep';

/** s after a start at which the hand-over to flow is tried: keeping the mass split, freeing it, freeing it at any jump. */
const TRY_KEEPING = 22;
const TRY_FREEING = 40;
const TRY_ANYHOW = 75;
/** s within which a cold room's switches must act */
const SWITCHED = 5;
/** largest |ln p_flow / p_still| accepted at a hand-over */
const CLOSE = 0.22;

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
