/** A right verdict that is not proved yet: one more reading of the trainee's choice, before the repair. No scolding. */
import { WORKED_HINT } from '../../attempt';
import { useText } from '../kit/text';
import { useSession } from '../session';

/** Fewer points are not worth a word. */
const WORTH = 0.5;

export function ProveIt() {
  const text = useText();
  const session = useSession();
  const { proof } = session.advice.value;
  if (!proof || proof.open < WORTH) return null;
  // The first callouts show no number, and a study has none.
  const study = session.state.value.hints.some(({ level }) => level === WORKED_HINT);
  const numbered = session.callout.mode !== 'guided' && !study;
  const spent = proof.note !== null;
  return (
    <section class="prove stack" aria-labelledby="prove-it">
      <h3 id="prove-it">{text.t('finish.prove.title')}</h3>
      <p role="status">
        {!spent && (numbered ? text.t('finish.prove.open', points(proof.open)) : text.t('finish.prove.openPlain'))}
        {spent && proof.won < WORTH && text.t('finish.prove.nothing')}
        {spent &&
          proof.won >= WORTH &&
          (numbered ? text.t('finish.prove.won', points(proof.won)) : text.t('finish.prove.wonPlain'))}
      </p>
      {!spent && (
        <p>
          <button
            type="button"
            onClick={() => {
              session.sheet.value = null;
              document.getElementById('machine')?.focus();
            }}
          >
            {text.t('finish.prove.go')}
          </button>
        </p>
      )}
    </section>
  );

  function points(value: number) {
    return { points: text.number(value) };
  }
}
