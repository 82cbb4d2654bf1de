/** One round: what was read, the one reading that is chosen, the cause, and what the examiner makes of it. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { CauseId } from '../../../physics/types';
import { sentence } from '../../panels/kit/say';
import { useText } from '../../panels/kit/text';
import { afterRound, type RoundDone } from '../../practice/progress';
import { answersOf, gradePick, isAnswerRight, type Offer, type Shown, shortList } from '../../practice/round';
import { practiceLink } from '../route';
import { ContrastView } from './ContrastView';
import { RoundTold } from './RoundTold';
import { type Dealt, deal } from './round';
import { Answers, Because, OwnSum, Picks, Table } from './roundParts';
import { keepEntry } from './store';
import { causeName, comparedName } from './words';

type Dealing =
  | { readonly as: 'dealing' }
  | { readonly as: 'none' }
  | { readonly as: 'failed'; readonly reason: string }
  | { readonly as: 'dealt'; readonly dealt: Dealt };

export function RoundScreen({ what }: { readonly what: string | null }) {
  const text = useText();
  const [now, setNow] = useState<Dealing>({ as: 'dealing' });
  const next = () => {
    setNow({ as: 'dealing' });
    deal(what).then(
      (dealt) => setNow(dealt ? { as: 'dealt', dealt } : { as: 'none' }),
      (error: unknown) => setNow({ as: 'failed', reason: error instanceof Error ? error.message : String(error) }),
    );
  };
  useEffect(next, [what]);
  if (now.as === 'dealt') {
    const { dealt } = now;
    if (dealt.way === 'contrast') {
      const { setting, atmosphere } = dealt.round;
      const read = () => {
        keepEntry({ ...doneOf(dealt), truth: null, pick: null, right: true, hint: false });
        next();
      };
      return <ContrastView setting={setting} edge={dealt.edge} atmosphere={atmosphere} onRead={read} />;
    }
    return <Play key={dealt.round.seed} dealt={dealt} onNext={next} />;
  }
  return (
    <>
      {now.as === 'dealing' && <p role="status">{text.t('practice.working')}</p>}
      {now.as === 'none' && <p role="alert">{text.t('practice.none')}</p>}
      {now.as === 'failed' && <p role="alert">{text.t('practice.failed', { reason: now.reason })}</p>}
      {now.as !== 'dealing' && (
        <p>
          <a class="button" href={practiceLink('path')}>
            {text.t('practice.round.toPath')}
          </a>
        </p>
      )}
    </>
  );
}

const doneOf = ({ edge, way }: Dealt): Pick<RoundDone, 'kind' | 'at' | 'edge' | 'way'> => ({
  kind: 'round',
  at: Date.now(),
  edge: edge.id,
  way,
});

function Play({ dealt, onNext }: { readonly dealt: Dealt; readonly onNext: () => void }) {
  const text = useText();
  const { round, way, supports, edge } = dealt;
  const isWorked = way === 'completion';
  const best = round.offers[0]!;
  const [pick, setPick] = useState<Offer | null>(isWorked ? best : null);
  const [summed, setSummed] = useState(isWorked);
  const [answer, setAnswer] = useState<CauseId | null>(null);
  const [because, setBecause] = useState<Shown | null>(null);
  const [hint, setHint] = useState(false);
  const [done, setDone] = useState<RoundDone | null>(null);
  const title = useRef<HTMLHeadingElement>(null);
  const ask = useRef<HTMLHeadingElement>(null);
  useEffect(() => title.current?.focus(), []);
  useEffect(() => {
    if (pick || answer) ask.current?.focus();
  }, [pick, summed, answer, done]);

  const ownSum = pick !== null && !summed && supports.sums === 'own' && pick.compared.quantum.sum !== undefined;
  const inQuarrel = way === 'quarrel';
  const answers = inQuarrel || isWorked ? edge.causes : answersOf(round, supports.causes ?? Number.POSITIVE_INFINITY);
  const offers = supports.places === 'few' ? shortList(round) : [...round.offers].sort(byName);
  const { callout } = round.setting;
  const table = pick && (summed || !ownSum) ? [...round.given, pick] : round.given;

  function finish(cause: CauseId, reason: Shown | null): void {
    const taken = pick ? [pick] : [];
    const graded = isWorked ? (reason === best ? 'settles' : 'nothing') : gradePick(round, pick!);
    const entry: RoundDone = {
      ...doneOf(dealt),
      truth: round.truth,
      pick: graded,
      right: isAnswerRight(round, cause, answers, taken),
      hint,
    };
    keepEntry(entry);
    setDone(entry);
  }

  const give = (cause: CauseId) => {
    setAnswer(cause);
    if (!isWorked) finish(cause, null);
  };
  const place = text.local(callout.text.title);
  return (
    <>
      <header class="stack">
        <h1 ref={title} tabIndex={-1}>
          {text.t(
            inQuarrel
              ? 'practice.round.titleQuarrel'
              : isWorked
                ? 'practice.round.titleCompletion'
                : way === 'solo'
                  ? 'practice.round.titleSolo'
                  : 'practice.round.titleMixed',
          )}
        </h1>
        <p class="soft">
          {place}: {text.t(`names.plant.${callout.plant}`)}.{' '}
          {text.t('practice.conditions', {
            refrigerant: callout.refrigerant,
            outdoor: text.quantity('temperature', callout.conditions.outdoor, 1),
            indoor: text.quantity('temperature', callout.conditions.indoor, 1),
          })}
        </p>
      </header>
      {way !== 'mixed' && (
        <div class="colleagues">
          {edge.causes.map((cause, i) => (
            <p key={cause}>
              {text.t(i === 0 ? 'practice.round.one' : 'practice.round.other', { cause: causeName(text, cause) })}
            </p>
          ))}
        </div>
      )}
      <Table
        caption={text.t(way === 'mixed' ? 'practice.round.tableMixed' : 'practice.round.table')}
        shown={table}
        fresh={pick}
        round={round}
        supports={supports}
      />
      {!pick && (
        <section class="stack" aria-labelledby="pick">
          <h2 id="pick">{text.t(inQuarrel ? 'practice.round.pickQuarrel' : 'practice.round.pick')}</h2>
          <Picks offers={offers} onPick={setPick} />
          {hint ? (
            <p class="said" role="status">
              {text.t('practice.round.hintSays', { reading: comparedName(text, best.compared) })}
            </p>
          ) : (
            <p>
              <button type="button" class="quiet" onClick={() => setHint(true)}>
                {text.t('practice.round.hint')}
              </button>
            </p>
          )}
        </section>
      )}
      {pick && ownSum && (
        <section class="stack" aria-labelledby="sum">
          <h2 id="sum" ref={ask} tabIndex={-1}>
            {text.t('practice.round.sum', { sum: comparedName(text, pick.compared) })}
          </h2>
          <OwnSum offer={pick} round={round} onDone={() => setSummed(true)} />
        </section>
      )}
      {pick && !ownSum && !answer && (
        <section class="stack" aria-labelledby="answer">
          <h2 id="answer" ref={ask} tabIndex={-1}>
            {text.t(inQuarrel ? 'practice.round.answerQuarrel' : 'practice.round.answer')}
          </h2>
          <Answers causes={answers} onAnswer={give} />
        </section>
      )}
      {isWorked && answer && !done && (
        <section class="stack" aria-labelledby="because">
          <p class="said">{sentence(causeName(text, answer))}.</p>
          <h2 id="because" ref={ask} tabIndex={-1}>
            {text.t('practice.round.because')}
          </h2>
          <Because
            shown={table}
            onBecause={(reason) => {
              setBecause(reason);
              finish(answer, reason);
            }}
          />
        </section>
      )}
      {done && pick && answer && (
        <RoundTold
          dealt={dealt}
          done={done}
          pick={pick}
          because={because}
          answers={answers}
          after={afterRound(dealt.before, done)}
          heading={ask}
          onNext={onNext}
        />
      )}
    </>
  );

  function byName(a: Offer, b: Offer): number {
    return comparedName(text, a.compared).localeCompare(comparedName(text, b.compared), text.language);
  }
}
