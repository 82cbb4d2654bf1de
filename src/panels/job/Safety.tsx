/** Real choices before touching: each step is done or left out on purpose, and either is a record. */
import { useState } from 'preact/hooks';
import { HAZARD_ACTS, type HazardAct, SAFETY_STEPS, type SafetyStep } from '../../attempt';
import { Dialog } from '../kit/Dialog';
import { sentence } from '../kit/say';
import { useText } from '../kit/text';
import { useSession } from '../session';

export function Safety() {
  const text = useText();
  return (
    <>
      <p>{text.t('panels.safety.help')}</p>
      <aside class="caution">
        <p>{text.t('panels.safety.lawful')}</p>
      </aside>
      <ul class="safety">
        {SAFETY_STEPS.map((step) => (
          <Step key={step} step={step} />
        ))}
      </ul>
      <Hazards />
    </>
  );
}

function Step({ step }: { readonly step: SafetyStep }) {
  const text = useText();
  const session = useSession();
  const choice = session.state.value.safety[step];
  const name = text.t(`names.safety.${step}`);
  const word = choice === undefined ? 'open' : choice.taken ? 'taken' : 'skipped';
  const choose = (taken: boolean) => session.dispatch({ kind: 'safety', step, taken });
  return (
    <li>
      <span>
        {sentence(name)} <span class="soft">({text.t(`panels.safety.${word}`)})</span>
      </span>
      <span class="pair">
        <button
          type="button"
          aria-pressed={choice?.taken === true}
          aria-label={`${text.t('panels.safety.take')}: ${name}`}
          onClick={() => choose(true)}
        >
          {text.t('panels.safety.take')}
        </button>
        <button
          type="button"
          aria-pressed={choice?.taken === false}
          aria-label={`${text.t('panels.safety.skip')}: ${name}`}
          onClick={() => choose(false)}
        >
          {text.t('panels.safety.skip')}
        </button>
      </span>
    </li>
  );
}

/** Deliberate hazardous acts only ever happen through the sheet that names them. */
function Hazards() {
  const text = useText();
  const session = useSession();
  const [asked, setAsked] = useState<HazardAct | null>(null);
  return (
    <details>
      <summary>{text.t('panels.safety.hazards')}</summary>
      <div class="stack">
        <p>{text.t('panels.safety.hazardHelp')}</p>
        {HAZARD_ACTS.map((act) => (
          <button type="button" key={act} class="row first" onClick={() => setAsked(act)}>
            {sentence(text.t(`names.hazard.${act}`))}
          </button>
        ))}
      </div>
      {asked && (
        <Dialog
          title={text.t('panels.safety.confirmTitle')}
          close={text.t('panels.safety.confirmNo')}
          onClose={() => setAsked(null)}
        >
          <p class="caution">{text.t('panels.safety.confirmBody', { act: text.t(`names.hazard.${asked}`) })}</p>
          <div class="wrap">
            <button type="button" class="main" onClick={() => setAsked(null)}>
              {text.t('panels.safety.confirmNo')}
            </button>
            <button
              type="button"
              onClick={() => {
                setAsked(null);
                session.dispatch({ kind: 'hazard', act: asked });
              }}
            >
              {text.t('panels.safety.confirmYes')}
            </button>
          </div>
        </Dialog>
      )}
    </details>
  );
}
