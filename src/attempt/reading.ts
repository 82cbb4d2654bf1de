/** Taking a reading: getting there, putting the instrument on, letting it settle, noting what it shows. */
import { castDraft, type Draft } from 'immer';
import type { Place } from '../../physics/types';
import {
  CATALOGUE,
  type ChannelName,
  channelsAt,
  type InstrumentId,
  isUnheard,
  OWN_SENSES,
  type PhysicalQuantity,
  preparing,
  read,
  readableAt,
  type Scene,
  spillOf,
} from '../instruments';
import { hazardsOfReading, newlyMet } from './hazards';
import { spill } from './machineChanges';
import { operatingState } from './operating';
import { ensure } from './refusal';
import type { AttemptState } from './state';
import type { Action, Note } from './types';

export type ReadAction = Extract<Action, { kind: 'read' }>;

/** The seconds of a reading: `on` = when the instrument sits on its place, `at` = when it is read, `end` = when it is noted. */
export interface ReadingPlan {
  readonly place: Place;
  readonly channel: ChannelName;
  readonly newlyOn: boolean;
  readonly on: number;
  readonly at: number;
  readonly end: number;
}

/** What a reading would take now, without taking it. Throws ActionRefused where it cannot be taken. */
export function planReading(state: AttemptState, action: ReadAction): ReadingPlan {
  const { instrument, quantity } = action;
  const { site, clock } = state;
  const place = site.place(action.place);
  ensure(place !== undefined, 'unknown-place', action.place);
  ensure(inBag(state, instrument), 'not-in-toolbag', instrument);
  ensure(CATALOGUE[instrument].fits.includes(place.kind), 'does-not-fit', `${instrument} at ${place.id}`);
  const channels = channelsAt(instrument, place, quantity);
  ensure(channels.length > 0, 'nothing-to-read', `${quantity} at ${place.id}`);
  const channel = chosenChannel(channels, action);
  ensure(!place.needs?.includes('isolated') || !state.controls.running, 'needs-isolation', place.id);

  const heard = instrument !== 'data-link' || !isUnheard(site.snapshot(state.events, clock), channel);
  ensure(heard, 'unit-silent', channel);

  const { cost, dwell } = CATALOGUE[instrument];
  const insulated = action.insulated ?? true;
  const connected = state.connections[instrument];
  const stays = connected?.place === place.id && connected.insulated === insulated;
  const before = preparing(instrument, place, insulated, state.opened.includes(place.side));
  const on = stays ? connected.since : clock + before + cost.connect;
  const at = Math.max(stays ? clock : on, on + (action.dwell ?? dwell));
  return { place, channel, newlyOn: !stays, on, at, end: at + cost.read };
}

export function inBag({ site }: Pick<AttemptState, 'site'>, instrument: InstrumentId): boolean {
  return OWN_SENSES.includes(instrument) || site.callout.toolbag.includes(instrument);
}

function chosenChannel(channels: readonly ChannelName[], { channel, quantity }: ReadAction): ChannelName {
  if (channel === undefined) return channels[0]!;
  const chosen = channels.find((each) => each === channel);
  ensure(chosen !== undefined, 'no-such-channel', `${quantity} ${channel}`);
  return chosen;
}

export function takeReading(state: AttemptState, draft: Draft<AttemptState>, action: ReadAction): void {
  const { instrument, quantity } = action;
  const { place, channel, newlyOn, on, at, end } = planReading(state, action);
  const insulated = action.insulated ?? true;
  let events = state.events;
  let spilt = 0;
  draft.hazards.push(...castDraft(newlyMet(state, hazardsOfReading(instrument, place, state.site.flammable))));
  if (newlyOn) {
    if (!OWN_SENSES.includes(instrument)) draft.connections[instrument] = { place: place.id, since: on, insulated };
    if (place.needs?.includes('panel-open') && !state.opened.includes(place.side)) draft.opened.push(place.side);
    spilt = spillOf(instrument, place, state.site.snapshot(events, on));
    events = spill(state, draft, spilt, on);
  }

  const key = `${instrument}/${place.id}`;
  const ordinal = state.readCounts[key] ?? 0;
  draft.readCounts[key] = ordinal + 1;
  const reading = read(sceneOf(state, events), {
    instrument,
    place,
    quantity,
    channel,
    time: at,
    since: on,
    ordinal,
    insulated,
    zeroed: state.safety['zero-gauges']?.taken ?? false,
    compared: state.safety['compare-thermometers']?.taken ?? false,
  });
  const note: Note = {
    ...reading,
    index: state.notes.length,
    action: state.attempt.actions.length,
    star: 'none',
    state: operatingState({ ...state, events }, at, channel),
    epoch: state.epoch,
    cost: end - state.clock,
    spilt,
    struck: false,
  };
  draft.notes.push(castDraft(note));
  draft.clock = end;
  draft.undo.push({ kind: 'note', note: note.index });
}

export function sceneOf(state: Pick<AttemptState, 'site' | 'attempt'>, events: AttemptState['events']): Scene {
  const { site, attempt } = state;
  return {
    seed: attempt.seed,
    snapshot: (t) => site.snapshot(events, t),
    atmosphere: site.atmosphere,
    variableSpeed: site.plant.variableSpeed,
  };
}

/** Every instrument of the bag that physically fits a place, with what it reads there. */
export function choicesAt(
  state: AttemptState,
  placeId: string,
): { readonly instrument: InstrumentId; readonly quantities: readonly PhysicalQuantity[] }[] {
  const place = state.site.place(placeId);
  if (!place) return [];
  const own: InstrumentId[] = [...OWN_SENSES, ...state.site.callout.toolbag.filter((id) => !OWN_SENSES.includes(id))];
  return own
    .map((instrument) => ({ instrument, quantities: readableAt(instrument, place) }))
    .filter(({ quantities }) => quantities.length > 0);
}
