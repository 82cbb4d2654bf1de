/** What acts on the machine: each becomes one event of its trajectory. */
import { castDraft, type Draft } from 'immer';
import { possibleDemands, usualDemand } from '../../physics/network/demands';
import type { Controls } from '../../physics/types';
import { sameControls } from './operating';
import { ensure } from './refusal';
import { netCharge, withCharge } from './remedies';
import type { AttemptState } from './state';
import type { MachineEvent } from './trajectory';

/** Walking to the controls and changing one, s (from memory). */
export const CONTROL_SECONDS = 10;
/** Set-points that a room thermostat takes, K. */
const SET_POINT = { low: 289.15, high: 303.15 } as const;

/** Takes `kg` out of the circuit at second `t`. The events as they are then, for a reading that follows at once. */
export function spill(state: AttemptState, draft: Draft<AttemptState>, kg: number, t: number): AttemptState['events'] {
  if (kg <= 0) return state.events;
  const { site } = state;
  const faults = withCharge(state.faults, netCharge(state.faults) - kg / site.nameplate.charge, site.world.families);
  const event: MachineEvent = { t, kind: 'faults', faults };
  draft.faults = { ...faults };
  draft.spilt += kg;
  draft.events.push(castDraft(event));
  return [...state.events, event];
}

export function changeControls(state: AttemptState, draft: Draft<AttemptState>, change: Partial<Controls>): void {
  const controls = withUnits(state, withMode(state, { ...state.controls, ...change }), change.units);
  const { variableSpeed, metering, setPoint: dial = SET_POINT } = state.site.plant;
  ensure(!sameControls(controls, state.controls), 'no-change', Object.keys(change).join(', '));
  ensure(variableSpeed || !controls.fixedSpeed, 'not-on-this-machine', 'fixedSpeed');
  ensure(metering === 'electronic-valve' || controls.valveHold === null, 'not-on-this-machine', 'valveHold');
  ensure(controls.setPoint >= dial.low && controls.setPoint <= dial.high, 'out-of-range', 'setPoint');
  setControls(draft, controls, state.clock + CONTROL_SECONDS);
}

/** What the machine was called to is not kept, so that "as found" is one state. */
function withMode({ site }: AttemptState, changed: Controls): Controls {
  const { mode, ...rest } = changed;
  if (mode === undefined) return changed;
  const { modes, units } = site.plant;
  const both = modes.cooling !== undefined && modes.heating !== undefined;
  ensure(units === undefined && both, 'not-on-this-machine', mode);
  return mode === site.callout.conditions.mode ? rest : changed;
}

/** Only rooms that ask for something else than as found are kept, so that "as found" is one state. */
function withUnits({ controls, site }: AttemptState, changed: Controls, asked: Controls['units']): Controls {
  const { units: _units, ...rest } = changed;
  if (asked === undefined) return changed;
  const { units: known = [], modes } = site.plant;
  const { mode } = site.callout.conditions;
  const possible = possibleDemands(mode, modes.simultaneous !== undefined);
  for (const [unit, demand] of Object.entries(asked)) {
    ensure(known.includes(unit), 'not-on-this-machine', unit);
    ensure(possible.includes(demand), 'not-on-this-machine', demand);
  }
  const kept = Object.entries({ ...controls.units, ...asked }).filter(
    ([unit, demand]) => demand !== usualDemand(mode, known.indexOf(unit)),
  );
  return kept.length === 0 ? rest : { ...rest, units: Object.fromEntries(kept) };
}

export function setControls(draft: Draft<AttemptState>, controls: Controls, t: number): void {
  draft.controls = castDraft(controls);
  draft.events.push(castDraft({ t, kind: 'controls', controls }));
  draft.epoch += 1;
  draft.clock = t;
}
