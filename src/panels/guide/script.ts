/** The script of the guided callout: each step knows by itself when it is done, so that no order can jam it. */
import type { AttemptState, Note } from '../../attempt';
import { measuredNotes } from '../../attempt';
import type { Drafts, Lesson, SheetId } from '../session';

type Reading = Lesson['readings'][number];

interface StepBase {
  /** where it happens */
  readonly place?: string;
  readonly sheet?: SheetId;
  readonly done: (state: AttemptState, drafts: Drafts) => boolean;
}
export type PlainStepId =
  | 'feelSuction'
  | 'feelLiquid'
  | 'protect'
  | 'twin'
  | 'stake'
  | 'predict'
  | 'telling'
  | 'verdict'
  | 'repair'
  | 'verify';
export type Step =
  | (StepBase & { readonly id: PlainStepId })
  | (StepBase & { readonly id: 'take'; readonly reading: Reading })
  /** one sum; `lesson` says which, and what it is made of */
  | (StepBase & { readonly id: 'sum'; readonly lesson: Lesson });

const taken = (state: AttemptState, { instrument, place }: Pick<Note, 'instrument' | 'place'>) =>
  state.notes.some((note) => note.instrument === instrument && note.place === place && !note.struck);

const touch = (id: 'feelSuction' | 'feelLiquid', place: string): Step => ({
  id,
  place,
  done: (state) => taken(state, { instrument: 'hand', place }),
});

const take = (reading: Reading): Step => ({
  id: 'take',
  place: reading.place,
  reading,
  done: (state) => taken(state, reading),
});

const workOut = (lesson: Lesson): Step => ({
  id: 'sum',
  sheet: 'notebook',
  lesson,
  done: (state) => state.sums.some(({ sum, right, shown }) => sum === lesson.sum && (right || shown)),
});

const PROTECT: Step = {
  id: 'protect',
  sheet: 'job',
  done: (state) => state.safety['eye-and-hand-protection'] !== undefined,
};
const TWIN: Step = { id: 'twin', sheet: 'notebook', done: (_state, drafts) => drafts.guide.twinSeen };
const BELIEF: readonly Step[] = [
  { id: 'stake', sheet: 'stakes', done: (state) => state.stakes.length > 0 },
  { id: 'predict', done: (state, drafts) => drafts.guide.prediction !== null || state.verdicts.length > 0 },
  { id: 'telling', done: (state) => measuredSinceStake(state) > 0 },
];
const END: readonly Step[] = [
  { id: 'verdict', sheet: 'finish', done: (state) => state.verdicts.length > 0 },
  { id: 'repair', sheet: 'finish', done: (state) => state.repairs.length > 0 },
  { id: 'verify', sheet: 'finish', done: (state) => state.verification !== null },
];

/** The first sum is taught reading by reading; further ones are asked for once the trainee has chosen a reading alone. */
export function scriptOf(lessons: readonly Lesson[]): Step[] {
  const [first, ...further] = lessons;
  const hasGauge = lessons.some(({ readings }) => readings.some(({ instrument }) => instrument.endsWith('-gauge')));
  return [
    touch('feelSuction', 'suction-line'),
    touch('feelLiquid', 'liquid-line'),
    ...(hasGauge ? [PROTECT] : []),
    ...(first ? [...first.readings.map(take), workOut(first), TWIN] : []),
    ...BELIEF,
    ...further.map(workOut),
    ...END,
  ];
}

/** Readings of a lesson that are not in the notebook yet. */
export function missingFor(lesson: Lesson, state: AttemptState): Reading[] {
  return lesson.readings.filter((reading) => !taken(state, reading));
}

function measuredSinceStake(state: AttemptState): number {
  const before = state.stakes[0]?.notes ?? state.notes.length;
  return measuredNotes({ ...state, notes: state.notes.slice(before) });
}

/** Number of the first step that is not done; null when all are. */
export function currentStep(script: readonly Step[], state: AttemptState, drafts: Drafts): number | null {
  const index = script.findIndex((step) => !step.done(state, drafts));
  return index < 0 ? null : index;
}
