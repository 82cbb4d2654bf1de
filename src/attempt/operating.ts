/** In which operating state the machine is, as far as the examiner has expectations for it. */
import {
  type ControllerState,
  type Controls,
  isHeld,
  type PlantDescription,
  type Snapshot,
  unitOf,
} from '../../physics/types';
import { type ChannelName, kindOfChannel } from '../instruments';
import { type AttemptState, STATE_FREE } from './state';
import type { OperatingState } from './types';

/** A machine just switched off has not begun to move yet: how it stands counts only after this long, s. */
const STOPPED = 60;
/** Both sides within this share of each other, and the compressor's pipe within this many K of the air round it. */
const EQUAL = { pressure: 0.02, temperature: 2 } as const;

/** What of the state decides it. */
type Acted = Pick<AttemptState, 'site' | 'events' | 'controls' | 'repairs'>;

export function operatingState(state: Acted, time: number, channel: ChannelName): OperatingState {
  if (state.repairs.length > 0) return 'repaired';
  const { controls, site } = state;
  if (STATE_FREE.includes(kindOfChannel(channel))) return controls.running ? 'running' : 'standing';
  const { machine, stuck } = site.at(state.events, time);
  if (stuck) return 'other';
  const snapshot = site.snapshot(state.events, time);
  if (!controls.running) return atRest(site.plant, state, time, snapshot, channel) ? 'standing' : 'other';
  if (!sameButSpeed(controls, machine.defaultControls)) return 'other';
  if (isHeld(snapshot.controller)) return running(controls, state);
  return underLoad(snapshot.controller) && served(snapshot, channel) ? running(controls, state) : 'other';
}

/** Where a solenoid keeps the sides apart only the high side can be compared: the low side follows the room. */
const KEPT_APART: readonly ChannelName[] = ['liquidPressure', 'liquidPressureAfterDrier'];

function atRest(
  plant: PlantDescription,
  state: Acted,
  time: number,
  snapshot: Snapshot,
  channel: ChannelName,
): boolean {
  if (offFor(state, time) < STOPPED) return false;
  return plant.pumpsDown ? KEPT_APART.includes(channel) && cooledDown(snapshot) : equalised(snapshot);
}

/** The pressures have met and the hot parts have cooled down: the standing pressure can be compared with the weather. */
function equalised(snapshot: Snapshot): boolean {
  const { probes } = snapshot;
  const { suctionPressure, dischargePressure } = probes;
  const apart = Math.abs(dischargePressure.value - suctionPressure.value);
  return apart <= EQUAL.pressure * suctionPressure.value && cooledDown(snapshot);
}

function cooledDown({ probes }: Snapshot): boolean {
  return Math.abs(probes.dischargeLineTemp.value - probes.outdoorAirTemp.value) <= EQUAL.temperature;
}

function offFor({ events }: Acted, time: number): number {
  const last = events.findLast(({ kind, t }) => kind === 'controls' && t <= time);
  return time - (last?.t ?? Number.NEGATIVE_INFINITY);
}

function running(controls: Controls, { site }: Acted): OperatingState {
  return controls.fixedSpeed && site.plant.variableSpeed ? 'full-speed' : 'running';
}

function underLoad(controller: ControllerState): boolean {
  return controller.startsWith('cooling') || controller.startsWith('heating') || controller.startsWith('slowed-by-');
}

/** A unit whose room is content tells of itself only that. */
function served({ units }: Snapshot, channel: ChannelName): boolean {
  const unit = units?.find(({ id }) => id === unitOf(channel));
  return unit === undefined || ['cooling', 'heating', 'not-answering'].includes(unit.state);
}

export function sameControls(a: Controls, b: Controls): boolean {
  return sameButSpeed(a, b) && a.fixedSpeed === b.fixedSpeed;
}

function sameButSpeed(a: Controls, b: Controls): boolean {
  const keys = Object.keys({ ...a, ...b }) as (keyof Controls)[];
  return (
    keys.every((key) => key === 'fixedSpeed' || key === 'units' || a[key] === b[key]) && sameUnits(a.units, b.units)
  );
}

function sameUnits(a: Controls['units'] = {}, b: Controls['units'] = {}): boolean {
  return [...Object.keys(a), ...Object.keys(b)].every((unit) => a[unit] === b[unit]);
}
