/** The script of the guided callout: each step knows by itself when it is done, so that no order can jam it. */
import type { AttemptState, Note } from '../../attempt';
import { measuredNotes } from '../../attempt';
import type { Drafts, SheetId } from '../session';

export type StepId =
  | 'feelSuction'
  | 'feelLiquid'
  | 'protect'
  | 'gauge'
  | 'clamp'
  | 'sum'
  | 'twin'
  | 'stake'
  | 'predict'
  | 'telling'
  | 'verdict'
  | 'repair'
  | 'verify';

export interface Step {
  readonly id: StepId;
  /** where it happens */
  readonly place?: string;
  readonly sheet?: SheetId;
  readonly done: (state: AttemptState, drafts: Drafts) => boolean;
}

const taken = (state: AttemptState, instrument: Note['instrument'], place: string) =>
  state.notes.some((note) => note.instrument === instrument && note.place === place && !note.struck);

export const SCRIPT: readonly Step[] = [
  { id: 'feelSuction', place: 'suction-line', done: (state) => taken(state, 'hand', 'suction-line') },
  { id: 'feelLiquid', place: 'liquid-line', done: (state) => taken(state, 'hand', 'liquid-line') },
  { id: 'protect', sheet: 'job', done: (state) => state.safety['eye-and-hand-protection'] !== undefined },
  { id: 'gauge', place: 'suction-port', done: (state) => taken(state, 'low-gauge', 'suction-port') },
  { id: 'clamp', place: 'suction-line', done: (state) => taken(state, 'pipe-clamp', 'suction-line') },
  {
    id: 'sum',
    sheet: 'notebook',
    done: (state) => state.sums.some(({ sum, right, shown }) => sum === 'superheat' && (right || shown)),
  },
  { id: 'twin', sheet: 'notebook', done: (_state, drafts) => drafts.guide.twinSeen },
  { id: 'stake', sheet: 'stakes', done: (state) => state.stakes.length > 0 },
  { id: 'predict', done: (state, drafts) => drafts.guide.prediction !== null || state.verdicts.length > 0 },
  { id: 'telling', done: (state) => measuredSinceStake(state) > 0 },
  { id: 'verdict', sheet: 'finish', done: (state) => state.verdicts.length > 0 },
  { id: 'repair', sheet: 'finish', done: (state) => state.repairs.length > 0 },
  { id: 'verify', sheet: 'finish', done: (state) => state.verification !== null },
];

function measuredSinceStake(state: AttemptState): number {
  const before = state.stakes[0]?.notes ?? state.notes.length;
  return measuredNotes({ ...state, notes: state.notes.slice(before) });
}

/** The first step that is not done; null when all are. */
export function currentStep(state: AttemptState, drafts: Drafts): number | null {
  const index = SCRIPT.findIndex((step) => !step.done(state, drafts));
  return index < 0 ? null : index;
}
