/** The one writer of an attempt's state. */
import { castDraft, type Draft, produce } from 'immer';
import { checkChips, checkMoment, unsureChips } from './chips';
import { SAFETY_SECONDS } from './hazards';
import { giveBecause, lookBack, takeChalk } from './head';
import { takeHint } from './hints';
import { changeControls, spill } from './machineChanges';
import { noteOf, stamp } from './notes';
import type { Pack } from './pack/types';
import { takeReading } from './reading';
import { ActionRefused, ensure } from './refusal';
import { carryOut } from './repairing';
import { Site, type World } from './site';
import type { AttemptState, Spent } from './state';
import { markSum } from './sums';
import { switchTape } from './taping';
import type { Action, Attempt, HazardAct } from './types';
import { takeBack } from './undo';
import { closeWith, giveVerdict } from './verdicts';

/** Share of the nameplate charge that a deliberate hazardous act lets out (assumption, from memory). */
const LET_OUT: Readonly<Partial<Record<HazardAct, number>>> = {
  'loosen-pressurised-joint': 0.05,
  'vent-refrigerant': 0.15,
};
const LONGEST_WAIT = 7200;

/** The callout of this id; ActionRefused is not meant here: the pack does not have it. */
export function calloutOf(pack: Pack, id: string) {
  const callout = pack.callouts.find((each) => each.id === id);
  if (!callout) throw new RangeError(`pack ${pack.id} has no callout "${id}"`);
  return callout;
}

/** A new attempt, nothing done yet. */
export function startAttempt(pack: Pack, calloutId: string, seed: string, world: World): AttemptState {
  const site = new Site(world, pack, calloutOf(pack, calloutId));
  const attempt: Attempt = {
    format: 1,
    pack: pack.id,
    packVersion: pack.version,
    callout: calloutId,
    seed,
    physics: world.physics,
    actions: [],
  };
  return stateAtArrival(site, attempt);
}

export function stateAtArrival(site: Site, attempt: Attempt): AttemptState {
  return {
    site,
    attempt,
    clock: 0,
    controls: site.machine.defaultControls,
    faults: site.callout.faults,
    events: [],
    epoch: 0,
    connections: {},
    opened: [],
    readCounts: {},
    notes: [],
    safety: {},
    hazards: [],
    hazardActs: [],
    sums: [],
    stakes: [],
    verdicts: [],
    repairs: [],
    verification: null,
    hints: [],
    chalks: [],
    becauses: [],
    reflections: [],
    tape: [],
    marks: [],
    spent: { survey: 0, safety: 0, measuring: 0, waiting: 0, controls: 0, repair: 0, verifying: 0 },
    spilt: 0,
    undo: [],
  };
}

/** The state after one more action. Throws ActionRefused and changes nothing where it cannot be done. */
export function applyAction(state: AttemptState, action: Action): AttemptState {
  ensure(state.verification === null, 'attempt-closed', action.kind);
  return produce(state, (draft) => {
    draft.attempt.actions.push(castDraft({ t: state.clock, action }));
    perform(state, draft, action);
    draft.spent[purposeOf(state, action)] += draft.clock - state.clock;
  });
}

/** Why an action cannot be done now, or null. */
export function refusalOf(state: AttemptState, action: Action): ActionRefused | null {
  try {
    applyAction(state, action);
    return null;
  } catch (error) {
    if (error instanceof ActionRefused) return error;
    throw error;
  }
}

/** What each kind of action does; one entry a kind, so that a new kind cannot be forgotten. */
type Handlers = {
  readonly [Kind in Action['kind']]: (
    state: AttemptState,
    draft: Draft<AttemptState>,
    action: Extract<Action, { kind: Kind }>,
  ) => void;
};

const HANDLERS: Handlers = {
  safety(state, draft, { step, taken }) {
    draft.undo.push({ kind: 'safety', step, was: state.safety[step] ?? null });
    draft.safety[step] = { taken, ...stamp(state) };
    draft.clock += taken ? SAFETY_SECONDS[step] : 0;
  },
  look(state, draft, { place }) {
    takeReading(state, draft, { kind: 'read', instrument: 'eyes', place, quantity: 'look' });
  },
  read: takeReading,
  wait(_state, draft, { seconds }) {
    ensure(Number.isInteger(seconds) && seconds >= 1 && seconds <= LONGEST_WAIT, 'out-of-range', `${seconds} s`);
    draft.clock += seconds;
  },
  control(state, draft, { change }) {
    draft.undo.push({ kind: 'control', was: { ...state.controls } });
    changeControls(state, draft, change);
  },
  tape: switchTape,
  mark(state, draft, { text }) {
    draft.marks.push({ text, ...stamp(state) });
    draft.undo.push({ kind: 'mark' });
  },
  sum(state, draft, action) {
    draft.sums.push(castDraft(markSum(action, state.notes, state.sums, state.site, stamp(state))));
    draft.undo = [];
  },
  stake(state, draft, { moment, chips }) {
    checkMoment(state, moment);
    checkChips(chips, state.site.callout);
    const unsure = unsureChips(chips);
    draft.stakes.push({ moment, chips: { ...chips }, unsure, notes: state.notes.length, ...stamp(state) });
    draft.undo = [];
  },
  star(state, draft, { note: index, side }) {
    const note = noteOf(state, index);
    draft.undo.push({ kind: 'star', note: index, was: note.star });
    draft.notes[index]!.star = side;
  },
  verdict: giveVerdict,
  repair: carryOut,
  verified: closeWith,
  hint: takeHint,
  chalk: takeChalk,
  because: giveBecause,
  reflect: lookBack,
  hazard(state, draft, { act }) {
    draft.hazardActs.push({ act, ...stamp(state) });
    spill(state, draft, (LET_OUT[act] ?? 0) * state.site.nameplate.charge, state.clock);
    draft.undo = [];
  },
  undo: takeBack,
};

function perform(state: AttemptState, draft: Draft<AttemptState>, action: Action): void {
  // One handler a kind is what Handlers says; the compiler cannot follow it through the look-up.
  const handler = HANDLERS[action.kind] as (state: AttemptState, draft: Draft<AttemptState>, action: Action) => void;
  handler(state, draft, action);
}

/** What the time of an action counts as. */
function purposeOf(state: AttemptState, action: Action): keyof Spent {
  if (action.kind === 'repair') return 'repair';
  if (state.repairs.length > 0) return 'verifying';
  switch (action.kind) {
    case 'look':
      return 'survey';
    case 'read':
      return action.instrument === 'eyes' || action.instrument === 'hand' ? 'survey' : 'measuring';
    case 'safety':
      return 'safety';
    case 'wait':
      return 'waiting';
    case 'control':
    case 'undo':
      return 'controls';
    default:
      return 'measuring';
  }
}
