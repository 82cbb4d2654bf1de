/** After a round: what was in the machine, what the chosen reading was worth, and what comes next. */
import type { RefObject } from 'preact';
import type { CauseId } from '../../../physics/types';
import { rangeOf } from '../../examiner/explain/bands';
import { classOf, senseOf } from '../../instruments/looks';
import { Bands } from '../../panels/kit/Bands';
import { sentence } from '../../panels/kit/say';
import { useText } from '../../panels/kit/text';
import { isTold, type Progress, type RoundDone, SUPPORT_STEPS, type Supports } from '../../practice/progress';
import { beliefAmong, type Offer, type Shown } from '../../practice/round';
import { practiceLink } from '../route';
import type { Dealt } from './round';
import { causeName, comparedName, dayText, shownValue } from './words';

interface Props {
  readonly dealt: Dealt;
  readonly done: RoundDone;
  readonly pick: Offer;
  readonly because: Shown | null;
  readonly answers: readonly CauseId[];
  readonly after: Progress;
  readonly heading: RefObject<HTMLHeadingElement | null>;
  readonly onNext: () => void;
}

export function RoundTold({ dealt, done, pick, because, answers, after, heading, onNext }: Props) {
  const text = useText();
  const { round, before, way } = dealt;
  const best = round.offers[0]!;
  const belief = beliefAmong(round, answers, [pick]);
  const percent = (share: number) => Math.round(100 * share);
  const verdict = isTold(done) || (done.right && done.hint) ? 'right' : done.right ? 'rightByLuck' : 'wrong';
  const sameAsBest = pick === best || done.pick === 'settles';
  const supports = SUPPORT_STEPS[after.level]!;
  return (
    <section class="told stack" aria-labelledby="told">
      <h2 id="told" ref={heading} tabIndex={-1}>
        {text.t(`practice.round.${verdict}`)} {text.t('practice.round.truth', { cause: causeName(text, round.truth) })}
      </h2>
      {way === 'completion' ? (
        <p>
          {because === best
            ? text.t('practice.round.becauseRight')
            : text.t('practice.round.becauseWrong', { reading: comparedName(text, best.compared) })}
        </p>
      ) : (
        <p>
          {text.t(`practice.round.pickGrade.${done.pick ?? 'nothing'}`, { reading: comparedName(text, pick.compared) })}
        </p>
      )}
      <div class="debrief-face">
        <Worth offer={pick} dealt={dealt} title={comparedName(text, pick.compared)} />
        {!sameAsBest && (
          <Worth
            offer={best}
            dealt={dealt}
            title={text.t('practice.round.best', { reading: comparedName(text, best.compared) })}
          />
        )}
      </div>
      <p>
        {text.t('practice.round.examiner', {
          cause: causeName(text, round.truth),
          count: percent(belief[round.truth] ?? 0),
        })}
      </p>
      {way !== 'quarrel' && after.level !== before.level && (
        <p>{text.t(after.level > before.level ? 'practice.round.faded' : 'practice.round.returned')}</p>
      )}
      {way !== 'quarrel' && (
        <p class="soft">{text.t('practice.round.supports', { list: supportWords(supports).join(', ') })}</p>
      )}
      {after.due !== null && (
        <p class="soft">{text.t('practice.round.nextReview', { day: dayText(text, after.due) })}</p>
      )}
      <div class="wrap">
        <button type="button" class="main" onClick={onNext}>
          {text.t('practice.round.next')}
        </button>
        <a class="button" href={practiceLink('path')}>
          {text.t('practice.round.toPath')}
        </a>
      </div>
    </section>
  );

  function supportWords({ beside, sums, causes, places }: Supports): string[] {
    return [
      text.t(`practice.round.support.${beside}`),
      text.t(`practice.round.support.${sums}`),
      causes === null
        ? text.t('practice.round.support.allCauses')
        : text.t('practice.round.support.causes', { count: causes }),
      text.t(`practice.round.support.${places}`),
    ];
  }
}

/** One reading between the two causes: bands and the dot, or words; and how far it goes by itself. */
function Worth({ offer, dealt, title }: { readonly offer: Offer; readonly dealt: Dealt; readonly title: string }) {
  const text = useText();
  const { round, edge } = dealt;
  const { compared, expected, value, sure } = offer;
  const sense = compared.quantum.sum === undefined ? senseOf(compared.quantum.channel) : null;
  const [one, other] = edge.causes;
  return (
    <figure class="debrief-picture">
      <figcaption>
        <h3>{title}</h3>
      </figcaption>
      {sense ? (
        <ul>
          <li>
            <strong>
              {text.t('practice.round.youSaw', { word: shownValue(text, compared, value, round.atmosphere) })}
            </strong>
          </li>
          {edge.causes.map((cause, i) => (
            <li key={cause}>
              {sentence(
                text.t('practice.round.wouldLook', {
                  cause: causeName(text, cause),
                  word: shownValue(text, compared, classOf(sense, expected[i === 0 ? 0 : 1].mean), round.atmosphere),
                }),
              )}
            </li>
          ))}
        </ul>
      ) : (
        <Bands
          bands={[
            { cause: one, ...rangeOf(expected[0]) },
            { cause: other, ...rangeOf(expected[1]) },
          ]}
          read={value}
          kind={compared.kind}
          atmosphere={round.atmosphere}
        />
      )}
      <p class="soft">{text.t('practice.round.sure', { count: Math.round(100 * sure) })}</p>
    </figure>
  );
}
