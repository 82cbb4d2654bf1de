/** Switching the recorder. */
import type { Draft } from 'immer';
import { CATALOGUE, instrumentsAt } from '../instruments';
import { ensure } from './refusal';
import type { AttemptState } from './state';
import type { Action } from './types';

/** Putting the recorder on or off, s. */
const TAPE_SECONDS = 5;

/** The recorder hangs on the data link: the first time it has to be found and plugged in. */
export function switchTape(
  state: AttemptState,
  draft: Draft<AttemptState>,
  { on }: Extract<Action, { kind: 'tape' }>,
): void {
  const panel = state.site.plant.places.find((place) => instrumentsAt(place).includes('data-link'));
  ensure(panel !== undefined && state.site.callout.toolbag.includes('data-link'), 'no-link', 'tape');
  const running = state.tape.at(-1)?.to === null;
  ensure(running !== on, 'no-change', 'tape');
  if (!state.connections['data-link']) {
    draft.clock += CATALOGUE['data-link'].cost.connect;
    draft.connections['data-link'] = { place: panel.id, since: draft.clock, insulated: true };
  }
  draft.clock += TAPE_SECONDS;
  setTape(draft, on);
  draft.undo.push({ kind: 'tape' });
}

export function setTape(draft: Draft<AttemptState>, on: boolean): void {
  if (on) draft.tape.push({ from: draft.clock, to: null });
  else draft.tape.at(-1)!.to = draft.clock;
}
