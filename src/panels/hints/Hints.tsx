/** Hints, one idea at a time: where to look, which two causes to keep apart, the step worked out on this machine. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { type HintLevel, hintRefusal, nextHint, WORKED_HINT } from '../../attempt';
import type { HintShown } from '../advice';
import { useText } from '../kit/text';
import { type Session, useSession } from '../session';
import { hintText } from './hintText';

/** The button has this id, so that a key can lead there. */
export const HINT_BUTTON = 'hint';

const STEP = { 1: 'look', 2: 'pair', 3: 'worked' } as const satisfies Readonly<Record<HintLevel, string>>;

export function Hints() {
  const text = useText();
  const session = useSession();
  const { hints } = session.advice.value;
  const refused = hintRefusal(session.state.value);
  const over = refused === 'no-hint-now';
  if (over && hints.length === 0) return null;
  const newest = hints.at(-1);
  const earlier = hints.slice(0, -1);
  return (
    <section class="hints stack" aria-label={text.t('panels.hint.title')}>
      {newest && <Card shown={newest} />}
      {earlier.length > 0 && (
        <details>
          <summary>{text.t('panels.hint.earlier')}</summary>
          {earlier.map((shown) => (
            <Card key={shown.action} shown={shown} />
          ))}
        </details>
      )}
      {!over && <Ask session={session} tooSoon={refused !== null} />}
    </section>
  );
}

/** The last step asks back, since it costs the score. */
function Ask({ session, tooSoon }: { readonly session: Session; readonly tooSoon: boolean }) {
  const text = useText();
  const [asking, setAsking] = useState(false);
  const state = session.state.value;
  const level = nextHint(state);
  const costs = level === WORKED_HINT && !state.hints.some((hint) => hint.level === WORKED_HINT);
  const step = text.t(`panels.hint.step.${STEP[level]}`);
  if (asking && costs && !tooSoon) {
    return (
      <div class="hint-card stack" role="group" aria-label={step}>
        <p>{text.t('panels.hint.cost')}</p>
        <div class="wrap">
          <button
            type="button"
            class="main"
            onClick={() => {
              setAsking(false);
              session.askHint();
            }}
          >
            {text.t('panels.hint.costYes')}
          </button>
          <button type="button" onClick={() => setAsking(false)}>
            {text.t('panels.hint.costNo')}
          </button>
        </div>
      </div>
    );
  }
  return (
    <p class="hint-ask">
      <button
        type="button"
        class="quiet"
        id={HINT_BUTTON}
        aria-disabled={tooSoon}
        aria-describedby={tooSoon ? 'hint-soon' : undefined}
        onClick={() => {
          if (costs && !tooSoon) setAsking(true);
          else session.askHint();
        }}
      >
        {text.t('panels.hint.ask', { level, step })}
      </button>
      {tooSoon && (
        <small class="soft" id="hint-soon">
          {text.t('panels.hint.soon')}
        </small>
      )}
    </p>
  );
}

function Card({ shown }: { readonly shown: HintShown }) {
  const text = useText();
  const session = useSession();
  const { site, attempt } = session.state.value;
  const { atmosphere } = site;
  const card = useRef<HTMLElement>(null);
  const justOpened = shown.action === attempt.actions.length - 1;
  useEffect(() => {
    if (!justOpened || shown.as === 'working') return;
    card.current?.scrollIntoView({ block: 'start' });
    // The button that asked back is gone: without this the keyboard would start at the top of the page again.
    if (document.activeElement === document.body) card.current?.focus();
  }, [justOpened, shown.as]);
  return (
    <article class="hint-card stack" ref={card} tabIndex={-1}>
      <h3 class="first">{text.t(`panels.hint.step.${STEP[shown.level]}`)}</h3>
      {shown.as === 'working' && <p class="soft">{text.t('panels.hint.working')}</p>}
      {shown.as === 'failed' && (
        <div class="stack" role="alert">
          <p>{text.t('panels.hint.failed', { reason: shown.reason })}</p>
          <p>
            <button type="button" onClick={() => session.againHint(shown.action)}>
              {text.t('panels.hint.again')}
            </button>
          </p>
        </div>
      )}
      {shown.as === 'ready' && (
        <>
          {hintText(text, shown.hint, atmosphere).map((line) => (
            <p key={line}>{line}</p>
          ))}
          {shown.hint.reading && <Show place={shown.hint.reading.place} session={session} />}
          {shown.level === WORKED_HINT && <Sibling session={session} />}
        </>
      )}
    </article>
  );
}

/** Marks the place on the drawing; on a phone the sheet gives way to the machine. */
function Show({ place, session }: { readonly place: string; readonly session: Session }) {
  const text = useText();
  return (
    <p>
      <button
        type="button"
        onClick={() => {
          session.place.value = place;
          session.sheet.value = null;
          document.getElementById('machine')?.focus();
        }}
      >
        {text.t('panels.hint.show')}
      </button>
    </p>
  );
}

/** A study is followed by a callout of the same kind that counts. */
function Sibling({ session }: { readonly session: Session }) {
  const text = useText();
  const { lookAlike } = session.callout;
  const sibling = session.pack.callouts.find(({ id }) => id === lookAlike);
  return (
    <p class="soft">
      {text.t('panels.hint.study')}{' '}
      {sibling && (
        <a href={`#callout=${session.pack.id}/${sibling.id}`}>
          {text.t('panels.hint.sibling', { title: text.local(sibling.text.title) })}
        </a>
      )}
    </p>
  );
}
