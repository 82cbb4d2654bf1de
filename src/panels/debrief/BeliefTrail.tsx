/** The trainee's chips beside what the readings supported, after each reading. */
import type { CauseId } from '../../../physics/types';
import type { Debrief, Posterior } from '../../examiner/types';
import { noteName, sentence, valueText } from '../kit/say';
import { useText } from '../kit/text';
import { useSession } from '../session';

export function BeliefTrail({ trail }: { readonly trail: Debrief['trail'] }) {
  const text = useText();
  const session = useSession();
  const { notes } = session.state.value;
  const all = trail.reduce((sum, { bits }) => sum + bits, 0);
  return (
    <>
      <p class="soft">{text.t('debrief.trail.help')}</p>
      <ol class="belief-trail">
        {trail.map((step) => {
          const note = notes[step.note];
          return (
            <li key={step.note}>
              <p>
                {note && (
                  <>
                    {sentence(noteName(text, note))} <strong class="number">{valueText(text, note)}</strong>
                  </>
                )}{' '}
                <span class="soft">{text.t(`debrief.trail.weight.${weightOf(step.bits, all)}`)}</span>
              </p>
              <Share label={text.t('debrief.trail.own')} belief={step.own} hatched />
              <Share label={text.t('debrief.trail.examiner')} belief={step.examiner} />
            </li>
          );
        })}
      </ol>
    </>
  );
}

/** How far a reading moved the examiner, in words: nobody reads bits. Bounds in bits are judgement. */
function weightOf(bits: number, all: number): 'none' | 'little' | 'much' | 'most' {
  if (bits < 0.1) return 'none';
  if (bits < 0.5) return 'little';
  return bits > all / 2 ? 'most' : 'much';
}

/** Less would stand there as 0 %. */
const SHOWN = 0.005;

/** The two causes that lead, as words with their share; the bar repeats it for the eye. */
function Share(props: { readonly label: string; readonly belief: Posterior; readonly hatched?: boolean }) {
  const text = useText();
  const leading = (Object.entries(props.belief) as [CauseId, number][])
    .filter(([, share]) => share >= SHOWN)
    .sort(([, a], [, b]) => b - a)
    .slice(0, 2);
  return (
    <div class="share">
      <span class="soft">{props.label}</span>
      <span class="share-bars">
        {leading.map(([cause, share]) => (
          <span key={cause} class="share-bar" data-hatched={props.hatched === true}>
            <span class="share-fill" style={{ width: `${100 * share}%` }} aria-hidden="true" />
            <span>
              {text.quantity('share', share)} {text.t(`names.cause.${cause}`)}
            </span>
          </span>
        ))}
      </span>
    </div>
  );
}
