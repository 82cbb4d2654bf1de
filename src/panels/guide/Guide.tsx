/** One step of the guided callout at a time, over the machine; it can be folded away and never blocks. */
import { useState } from 'preact/hooks';
import type { AttemptState, Note } from '../../attempt';
import { CATALOGUE } from '../../instruments/catalogue';
import { instrumentName, placeName } from '../kit/say';
import { useText } from '../kit/text';
import { begun } from '../notebook/sumDraft';
import { type Prediction, useSession } from '../session';
import { currentStep, missingFor, type Step, scriptOf } from './script';

const PREDICTIONS: readonly Prediction[] = ['lower', 'same', 'higher'];

export function Guide() {
  const text = useText();
  const session = useSession();
  const [folded, setFolded] = useState(false);
  const drafts = session.drafts.value;
  const lessons = session.lessons.value;
  const state = session.state.value;
  const script = scriptOf(lessons ?? []);
  const now = currentStep(script, state, drafts);
  if (now === null) return null;
  const step = script[now]!;
  const missing = step.id === 'sum' ? missingFor(step.lesson, state) : [];
  const remember = (guide: Partial<typeof drafts.guide>) => {
    session.drafts.value = { ...session.drafts.value, guide: { ...session.drafts.value.guide, ...guide } };
  };
  const show = () => {
    const place = step.place ?? missing[0]?.place;
    if (place) {
      session.place.value = place;
      session.placeOpen.value = true;
    } else if (step.sheet) session.sheet.value = step.sheet;
    if (step.id === 'sum' && missing.length === 0) {
      session.drafts.value = { ...session.drafts.value, sum: begun(step.lesson.sum, session) };
    }
  };
  const verified =
    step.id === 'verdict' ? predictionText(text, state, session.twin.value, drafts.guide.prediction) : null;
  return (
    <aside class="guide" aria-label={text.t('guide.title')} data-folded={folded}>
      <header>
        <h2>
          {text.t('guide.title')}{' '}
          {lessons && <span class="soft">{text.t('guide.step', { now: now + 1, all: script.length })}</span>}
        </h2>
        <button type="button" class="quiet" aria-expanded={!folded} onClick={() => setFolded(!folded)}>
          {text.t(folded ? 'guide.unfold' : 'guide.hide')}
        </button>
      </header>
      {!folded && (
        <>
          {verified && <p class="soft">{verified}</p>}
          <p>{sayOf(text, step)}</p>
          {missing.length > 0 && (
            <p class="soft">
              {text.t('guide.missing', { places: missing.map(({ place }) => placeName(text, place)).join('; ') })}
            </p>
          )}
          <div class="wrap">
            {(step.place || step.sheet) && (
              <button type="button" class="guide-show" onClick={show}>
                {text.t('guide.show')}
              </button>
            )}
            {step.id === 'twin' && (
              <button type="button" class="main" onClick={() => remember({ twinSeen: true })}>
                {text.t('guide.next')}
              </button>
            )}
            {step.id === 'predict' &&
              PREDICTIONS.map((prediction) => (
                <button type="button" key={prediction} onClick={() => remember({ prediction })}>
                  {text.t(`guide.predict.${prediction}`)}
                </button>
              ))}
          </div>
        </>
      )}
    </aside>
  );
}

type Words = ReturnType<typeof useText>;

function sayOf(text: Words, step: Step): string {
  switch (step.id) {
    case 'take':
      return text.t('guide.say.take', {
        instrument: instrumentName(text, step.reading.instrument),
        place: placeName(text, step.reading.place),
      });
    case 'sum':
      return text.t(`guide.say.${step.lesson.sum}`);
    default:
      return text.t(`guide.say.${step.id}`);
  }
}

/** What was foretold against what came, both from the two machines' own readings. */
function predictionText(
  text: Words,
  state: AttemptState,
  twin: AttemptState | null,
  prediction: Prediction | null,
): string | null {
  const note = state.notes.findLast(({ word, struck }) => word === undefined && !struck);
  const alike = note && twin?.notes[note.index];
  if (!note || !alike || prediction === null) return null;
  return text.t('guide.predicted', {
    said: text.t(`guide.predict.${prediction}`),
    was: text.t(`guide.predict.${compare(note, alike)}`),
  });
}

/** Alike is what lies within the two bands of the instrument. */
function compare(mine: Note, twin: Note): Prediction {
  const band = CATALOGUE[mine.instrument].accuracy[mine.quantity];
  const room = 2 * ((band?.absolute ?? 0) + (band?.ofReading ?? 0) * Math.abs(twin.value));
  if (Math.abs(mine.value - twin.value) <= room) return 'same';
  return mine.value < twin.value ? 'lower' : 'higher';
}
