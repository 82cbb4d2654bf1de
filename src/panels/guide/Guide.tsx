/** One step of the guided callout at a time, over the machine; it can be folded away and never blocks. */
import { useState } from 'preact/hooks';
import type { AttemptState, Note } from '../../attempt';
import { CATALOGUE } from '../../instruments/catalogue';
import { useText } from '../kit/text';
import { type Prediction, useSession } from '../session';
import { currentStep, SCRIPT } from './script';

const PREDICTIONS: readonly Prediction[] = ['lower', 'same', 'higher'];

export function Guide() {
  const text = useText();
  const session = useSession();
  const [folded, setFolded] = useState(false);
  const drafts = session.drafts.value;
  const now = currentStep(session.state.value, drafts);
  if (now === null) return null;
  const step = SCRIPT[now]!;
  const remember = (guide: Partial<typeof drafts.guide>) => {
    session.drafts.value = { ...session.drafts.value, guide: { ...session.drafts.value.guide, ...guide } };
  };
  const show = () => {
    if (step.sheet) session.sheet.value = step.sheet;
    if (step.place) {
      session.place.value = step.place;
      session.placeOpen.value = true;
    }
  };
  const verified =
    step.id === 'verdict'
      ? predictionText(text, session.state.value, session.twin.value, drafts.guide.prediction)
      : null;
  return (
    <aside class="guide" aria-label={text.t('guide.title')} data-folded={folded}>
      <header>
        <h2>
          {text.t('guide.title')} <span class="soft">{text.t('guide.step', { now: now + 1, all: SCRIPT.length })}</span>
        </h2>
        <button type="button" class="quiet" aria-expanded={!folded} onClick={() => setFolded(!folded)}>
          {text.t(folded ? 'guide.unfold' : 'guide.hide')}
        </button>
      </header>
      {!folded && (
        <>
          {verified && <p class="soft">{verified}</p>}
          <p>{text.t(`guide.say.${step.id}`)}</p>
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
