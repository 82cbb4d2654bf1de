/** One screen that says what mattered, one button on; everything else lies one tap behind it. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Grade, Debrief as Told } from '../../examiner/types';
import { MachineInTheHead } from '../chalk/Chalk';
import { Caution } from '../kit/Caution';
import { messageText, quantumName } from '../kit/message';
import { sentence } from '../kit/say';
import { useText } from '../kit/text';
import { useSession } from '../session';
import { BandPicture } from './BandPicture';
import { BeliefTrail } from './BeliefTrail';
import { Cycle } from './Cycle';
import { Points } from './Points';
import { Replay } from './Replay';
import { Rivals } from './Rivals';
import { Runs } from './Runs';

const LAYERS = ['points', 'rivals', 'replay', 'trail', 'head', 'cycle', 'runs'] as const;
type Layer = (typeof LAYERS)[number];

export function DebriefScreen({ onMachine }: { readonly onMachine: () => void }) {
  const text = useText();
  const session = useSession();
  const { judgement } = session;
  const now = judgement.value;
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => title.current?.focus(), []);
  return (
    <main class="debrief">
      <header>
        <p class="soft">{text.local(session.callout.text.title)}</p>
        <h1 ref={title} tabIndex={-1}>
          {text.t('debrief.title')}
        </h1>
      </header>
      {now.as === 'working' && (
        <div class="stack" role="status">
          <p>{text.t('finish.working.title')} …</p>
          <progress value={now.done} max={now.total} aria-label={text.t('finish.working.title')} />
        </div>
      )}
      {now.as === 'failed' && (
        <div class="stack" role="alert">
          <p>{text.t('finish.working.failed', { reason: now.reason })}</p>
          <p>
            <button type="button" onClick={() => session.judge()}>
              {text.t('finish.working.again')}
            </button>
          </p>
        </div>
      )}
      {now.as === 'ready' && <Ready told={now.debrief} grade={now.grade} onMachine={onMachine} />}
      {now.as !== 'ready' && (
        <p>
          <ToMachine onMachine={onMachine} />
        </p>
      )}
    </main>
  );
}

function ToMachine({ onMachine }: { readonly onMachine: () => void }) {
  const text = useText();
  return (
    <button type="button" onClick={onMachine}>
      {text.t('debrief.machine')}
    </button>
  );
}

interface ReadyProps {
  readonly told: Told;
  readonly grade: Grade;
  readonly onMachine: () => void;
}

function Ready({ told, grade, onMachine }: ReadyProps) {
  const text = useText();
  const session = useSession();
  const [layer, setLayer] = useState<Layer | null>(null);
  const { atmosphere } = session.state.value.site;
  return (
    <>
      <p class="debrief-verdict">{sentence(messageText(text, told.verdict, atmosphere))}</p>
      <div class="debrief-face">
        {told.picture && (
          <figure class="debrief-picture">
            <figcaption>
              <h2>{text.t('debrief.picture')}</h2>
              <p class="first">{quantumName(text, told.picture.quantum)}</p>
            </figcaption>
            <BandPicture picture={told.picture} />
          </figure>
        )}
        <ol class="debrief-said">
          {told.sentences.map((message) => (
            <li key={JSON.stringify(message)}>{sentence(messageText(text, message, atmosphere))}</li>
          ))}
        </ol>
      </div>
      <div class="wrap">
        {told.lookAlike !== null && (
          <a class="button main" href={`#callout=${session.pack.id}/${told.lookAlike}`}>
            {text.t('debrief.lookAlike')}
          </a>
        )}
        <a class="button" href="#home">
          {text.t('debrief.home')}
        </a>
        <ToMachine onMachine={onMachine} />
      </div>
      <section class="stack" aria-labelledby="behind">
        <h2 id="behind">{text.t('debrief.more')}</h2>
        <div class="wrap">
          {LAYERS.map((one) => (
            <button
              type="button"
              key={one}
              aria-expanded={layer === one}
              aria-pressed={layer === one}
              onClick={() => setLayer(layer === one ? null : one)}
            >
              {text.t(`debrief.layer.${one}`)}
            </button>
          ))}
        </div>
        {layer === 'points' && <Points grade={grade} />}
        {layer === 'rivals' && <Rivals rows={told.rivals} missed={told.missed} />}
        {layer === 'replay' && <Replay told={told} />}
        {layer === 'trail' && <BeliefTrail trail={told.trail} />}
        {layer === 'head' && <MachineInTheHead />}
        {layer === 'cycle' && <Cycle cycles={told.cycles} />}
        {layer === 'runs' && <Runs runs={told.runs} />}
      </section>
      <Caution />
    </>
  );
}
