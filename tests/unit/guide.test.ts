/** The guided callout teaches what its score asks for. */
import { expect, test } from 'vitest';
import { NO_DRAFTS } from '../../src/app/callout/drafts';
import { lessonsOf } from '../../src/app/callout/lessons';
import { type Action, type AttemptState, apply, start } from '../../src/attempt';
import { encodeDifferential, gradeAttempt } from '../../src/examiner';
import { openCase } from '../../src/examiner/case';
import { currentStep, missingFor, type Step, scriptOf } from '../../src/panels/guide/script';
import { readingAction } from '../../src/panels/place/options';
import type { Drafts, Lesson } from '../../src/panels/session';
import { differentialFor, isFirst, shippedCallouts } from '../support/differentials';

const ALL = shippedCallouts()
  .filter(isFirst)
  .filter(({ callout }, i) => i % 3 === 0 || callout.mode === 'guided');
const GUIDED = ALL.find(({ callout }) => callout.mode === 'guided')!;

/** Works a sum out of the newest readings that it is made of, as the notebook asks it. */
function sumOf(state: AttemptState, { sum, readings }: Lesson): Action {
  const notes = readings.map(
    ({ instrument, place }) => state.notes.findLast((note) => note.instrument === instrument && note.place === place)!,
  );
  const { saturation, atmosphere } = state.site;
  const indices = notes.map(({ index }) => index);
  const [a, b] = notes as [(typeof notes)[0], (typeof notes)[0]];
  if (sum === 'superheat' || sum === 'subcooling') {
    const pressure = a.value + atmosphere;
    const line = (sum === 'superheat' ? saturation.tDew(pressure) : saturation.tBubble(pressure))!;
    const answer = sum === 'superheat' ? b.value - line : line - b.value;
    return { kind: 'sum', sum, notes: indices, saturation: line, answer };
  }
  return { kind: 'sum', sum, notes: indices, answer: Math.abs(a.value - b.value) };
}

/** Does what one step says, and no more. */
function follow(state: AttemptState, drafts: Drafts, step: Step): { state: AttemptState; drafts: Drafts } {
  const guide = (part: Partial<Drafts['guide']>) => ({
    state,
    drafts: { ...drafts, guide: { ...drafts.guide, ...part } },
  });
  const act = (...actions: Action[]) => ({ state: actions.reduce((at, action) => apply(at, action), state), drafts });
  const read = (instrument: Lesson['readings'][number]['instrument'], place: string) =>
    readingAction(place, {
      instrument,
      quantity: instrument.endsWith('gauge') ? 'pressure' : instrument === 'hand' ? 'touch' : 'temperature',
    });
  switch (step.id) {
    case 'feelSuction':
    case 'feelLiquid':
      return act(read('hand', step.place!));
    case 'protect':
      return act({ kind: 'safety', step: 'eye-and-hand-protection', taken: true });
    case 'take':
      return act(read(step.reading.instrument, step.reading.place));
    case 'sum': {
      const after = act(...missingFor(step.lesson, state).map(({ instrument, place }) => read(instrument, place)));
      return { state: apply(after.state, sumOf(after.state, step.lesson)), drafts };
    }
    case 'twin':
      return guide({ twinSeen: true });
    case 'stake':
      return act({ kind: 'stake', moment: 'survey', chips: { undercharge: 10 } });
    case 'predict':
      return guide({ prediction: 'lower' });
    case 'telling':
      return act(read('air-probe', 'supply-air'));
    case 'verdict': {
      const [cause, rival] = Object.keys(state.site.callout.tally) as ['undercharge', 'filter-dirty'];
      return act({ kind: 'verdict', cause, size: 'clear', rival, cites: [state.notes.length - 1] });
    }
    case 'repair':
      return act({ kind: 'repair', remedy: 'nothing-to-mend', steps: [], root: null });
    case 'verify':
      return act({ kind: 'verified', notes: [] });
  }
}

test.each(ALL.map((one) => [one.callout.id, one] as const))(
  'the lessons of %s are the sums that Working asks for',
  (_id, one) => {
    const differential = differentialFor(one);
    const state = start(one.pack, one.callout.id, 'lessons');
    const lessons = lessonsOf(state, encodeDifferential(differential));
    expect(lessons.map(({ sum }) => sum)).toEqual(openCase(state, differential).needed);
    for (const { readings } of lessons) expect(readings.length).toBe(2);
  },
);

test('whoever does what the guide says, and no more, has all of Working', () => {
  const differential = differentialFor(GUIDED);
  let state = start(GUIDED.pack, GUIDED.callout.id, 'guided');
  let drafts: Drafts = NO_DRAFTS;
  const script = scriptOf(lessonsOf(state, encodeDifferential(differential)));
  const said: string[] = [];
  for (let now = currentStep(script, state, drafts); now !== null; now = currentStep(script, state, drafts)) {
    said.push(script[now]!.id);
    expect(said.length).toBeLessThanOrEqual(script.length);
    ({ state, drafts } = follow(state, drafts, script[now]!));
  }
  // Each step once, in the order of the script.
  expect(said).toEqual(script.map(({ id }) => id));
  expect(said.filter((id) => id === 'sum').length).toBeGreaterThan(0);
  const { parts } = gradeAttempt(state.attempt, GUIDED.pack, differential);
  const working = parts.find(({ part }) => part === 'working')!;
  expect(working.points).toBeCloseTo(working.weight, 6);
});

test('without a sum to teach the guide still goes from the first touch to the proof', () => {
  expect(scriptOf([]).map(({ id }) => id)).toEqual([
    'feelSuction',
    'feelLiquid',
    'stake',
    'predict',
    'telling',
    'verdict',
    'repair',
    'verify',
  ]);
});
