/** In which operating state the machine is, as far as the examiner has expectations for it. */
import type { Controls } from '../../physics/types';
import type { ChannelName } from '../instruments';
import { type AttemptState, STATE_FREE } from './state';
import type { OperatingState } from './types';

/** A machine just switched off has not begun to move yet: that it stands still counts only after this long, s. */
const STOPPED = 60;

/** What of the state decides it. */
type Acted = Pick<AttemptState, 'site' | 'events' | 'controls' | 'repairs'>;

export function operatingState(state: Acted, time: number, channel: ChannelName): OperatingState {
  if (state.repairs.length > 0) return 'repaired';
  const { controls, site } = state;
  if (STATE_FREE.includes(channel)) return controls.running ? 'running' : 'standing';
  const { machine, state: now, stuck } = site.at(state.events, time);
  if (stuck) return 'other';
  if (!controls.running) return offFor(state, time) >= STOPPED && machine.settled(now) ? 'standing' : 'other';
  if (!sameButSpeed(controls, machine.defaultControls)) return 'other';
  return underLoad(site.snapshot(state.events, time).controller) ? running(controls, state) : 'other';
}

function offFor({ events }: Acted, time: number): number {
  const last = events.findLast(({ kind, t }) => kind === 'controls' && t <= time);
  return time - (last?.t ?? Number.NEGATIVE_INFINITY);
}

function running(controls: Controls, { site }: Acted): OperatingState {
  return controls.fixedSpeed && site.plant.variableSpeed ? 'full-speed' : 'running';
}

function underLoad(controller: string): boolean {
  return (
    controller === 'cooling' || controller === 'cooling-at-full-speed' || controller === 'slowed-by-discharge-heat'
  );
}

export function sameControls(a: Controls, b: Controls): boolean {
  return sameButSpeed(a, b) && a.fixedSpeed === b.fixedSpeed;
}

function sameButSpeed(a: Controls, b: Controls): boolean {
  return (Object.keys(a) as (keyof Controls)[]).every((key) => key === 'fixedSpeed' || a[key] === b[key]);
}
