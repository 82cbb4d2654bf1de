import type { Grade, ProveIt } from '../../examiner/types';
import { messageText } from '../kit/message';
import { sentence } from '../kit/say';
import { useText } from '../kit/text';
import { useSession } from '../session';

export function Points({ grade }: { readonly grade: Grade }) {
  const text = useText();
  const { atmosphere } = useSession().state.value.site;
  return (
    <div class="stack">
      {grade.scored ? (
        <p class="debrief-total number">{text.t('debrief.points.total', { total: text.number(grade.total) })}</p>
      ) : (
        <p>{text.t('debrief.points.unscored')}</p>
      )}
      {grade.cap < 100 && grade.uncapped > grade.total && (
        <p class="caution">
          {text.t('debrief.points.capped', { uncapped: text.number(grade.uncapped), cap: grade.cap })}
        </p>
      )}
      <ul class="points">
        {grade.parts
          .filter(({ weight }) => weight > 0)
          .map((part) => (
            <li key={part.part}>
              <h3>
                {text.t(`names.part.${part.part}`)}{' '}
                {grade.scored && (
                  <span class="number">
                    {part.points === null
                      ? text.t('debrief.points.notMeasured')
                      : text.t('debrief.points.of', {
                          points: text.number(part.points, 1),
                          weight: text.number(part.weight, 1),
                        })}
                  </span>
                )}
              </h3>
              {part.reasons.map((reason) => (
                <p key={JSON.stringify(reason)}>{sentence(messageText(text, reason, atmosphere))}</p>
              ))}
            </li>
          ))}
      </ul>
      {grade.hazards.met > 0 && <p>{text.t('debrief.points.hazards', grade.hazards)}</p>}
      {grade.scored && <Proof proof={grade.proveIt} />}
      {grade.hints > 0 && grade.scored && <p>{text.t('debrief.points.hints', { count: grade.hints })}</p>}
      {grade.scored && <p class="soft">{text.t('debrief.points.meaning')}</p>}
    </div>
  );
}

/** What one more reading won, or could have won. */
function Proof({ proof }: { readonly proof: ProveIt | null }) {
  const text = useText();
  if (!proof || proof.open < WORTH) return null;
  const won = proof.won >= WORTH;
  return (
    <p>
      {text.t(won ? 'debrief.points.proved' : 'debrief.points.prove', {
        points: text.number(won ? proof.won : proof.open),
      })}
    </p>
  );
}

/** Fewer points than this are not worth a word. */
const WORTH = 0.5;
