/**
 * Oil that stays out in the pipes while gas moves slowly, and how the machine fetches it: after hours at low speed the
 * compressors run faster for some minutes with the valves of all units opened, so that liquid washes the oil back. Where
 * rooms heat the machine turns round for it, as for a defrost, with the units' fans off. Common practice, no source;
 * speeds and times from memory. The oil itself is not computed.
 */
import type { UnitDemand } from '../types';
import { turnedRound } from './defrost';
import type { NetworkRig } from './rig';
import type { NetworkState } from './state';

/** relative speed under which gas leaves oil behind, and from which it takes along what lies there */
const SLOW_SPEED = 0.35;
const SWEPT_SPEED = 0.8;
/** s of slow running after which the machine fetches its oil, and s that this takes */
const DUE_AFTER = 14_400;
const SWEEP = 300;
/** s of running before it begins, so that a start is over */
const RUN_IN = 900;
/** relative speed meanwhile, the same where the machine has turned round for it, and the units' opening */
const SWEEP_SPEED = 0.8;
const TURNED_SPEED = 0.5;
export const SWEEP_OPENING = 0.6;
/** 1/s at which speed and valves go there */
export const SWEEP_RAMP = 0.02;

/** Whether oil gathers in the pipes now. Where rooms cool and heat at once nothing is fetched, and no clock runs. */
export function isSlow({ turning, regime, meltingFor, sweepingFor, speed, demands }: NetworkState): boolean {
  if (demands.includes('heating') && demands.includes('cooling')) return false;
  return turning && regime === 'flow' && meltingFor === null && sweepingFor === null && speed < SLOW_SPEED;
}

export function sweepSpeed({ turnedFrom }: NetworkState): number {
  return turnedFrom ? TURNED_SPEED : SWEEP_SPEED;
}

/**
 * The clocks of slow running and of the sweep. Somebody who holds speed or valves is at work on the machine: no sweep
 * begins then. One that a stop breaks off begins anew later; a defrost, which runs all valves open, washes oil back itself.
 */
export function sweeping(rig: NetworkRig, state: NetworkState, dt: number): NetworkState {
  const { controls } = state.inputs;
  const served = controls.fixedSpeed || controls.valveHold !== null;
  if (state.meltingFor !== null) return { ...state, slowFor: 0 };
  if (state.sweepingFor !== null) {
    const sweepingFor = state.sweepingFor + dt;
    if (state.turning && !served && sweepingFor < SWEEP) return { ...state, sweepingFor };
    return ended(rig, sweepingFor < SWEEP ? state : { ...state, slowFor: 0 });
  }
  if (!isSlow(state)) {
    const takesAlong = state.turning && state.regime === 'flow' && state.speed > SWEPT_SPEED;
    return takesAlong ? { ...state, slowFor: 0 } : state;
  }
  const slowFor = state.slowFor + dt;
  const starts = slowFor > DUE_AFTER && state.runningFor > RUN_IN && !served;
  return starts ? begun(rig, { ...state, slowFor, sweepingFor: 0 }) : { ...state, slowFor };
}

function begun(rig: NetworkRig, state: NetworkState): NetworkState {
  const { outdoors, routing } = state;
  if (!routing.includes('heating')) return state;
  const cooling = routing.map((): UnitDemand => 'cooling');
  const count = rig.data.modules.length;
  const turned = turnedRound(rig, state, { role: 'condenser', count }, cooling);
  return { ...turned, controller: 'bringing-oil-back', freezingFor: 0, turnedFrom: { outdoors, routing } };
}

function ended(rig: NetworkRig, state: NetworkState): NetworkState {
  const over: NetworkState = { ...state, sweepingFor: null, turnedFrom: null };
  const { turnedFrom } = state;
  return turnedFrom ? turnedRound(rig, over, turnedFrom.outdoors, turnedFrom.routing) : over;
}
