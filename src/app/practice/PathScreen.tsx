/** The path: what is due today, and every pair of every machine with the step that comes next. */
import { useEffect, useState } from 'preact/hooks';
import { sentence } from '../../panels/kit/say';
import { useText } from '../../panels/kit/text';
import { dueAt, newProgress, type Progress, STAGES } from '../../practice/progress';
import { practiceLink } from '../route';
import { type Chapter, chapters, edgesOn, type Placed } from './atlas';
import { progress } from './store';
import { dayText, pairName } from './words';

export function PathScreen() {
  const text = useText();
  const [book, setBook] = useState<readonly Chapter[] | null>(null);
  useEffect(() => {
    void chapters().then(setBook);
  }, []);
  const due = dueAt(progress.value, Date.now()).length;
  const mixed = [...progress.value.values()].filter(({ stage }) => stage === 'mixed').length;
  const started = [...progress.value.values()].findLast(({ stage }) => stage !== 'mixed');
  return (
    <>
      <header class="stack">
        <h1>{text.t('practice.path.title')}</h1>
        <p class="soft">{text.t('practice.path.intro')}</p>
      </header>
      <div class="wrap">
        {started && (
          <a class="button main" href={practiceLink('path', started.edge)}>
            {text.t('practice.path.next')}
          </a>
        )}
        {due > 0 && (
          <a class={`button ${started ? '' : 'main'}`} href={practiceLink('quarrel')}>
            {text.t('practice.path.due', { count: due })}
          </a>
        )}
        {mixed > 1 && (
          <a class="button" href={practiceLink('path', 'mixed')}>
            {text.t('practice.path.mixed')}
          </a>
        )}
      </div>
      {due === 0 && started && <p class="soft">{text.t('practice.path.noneDue')}</p>}
      <section class="stack" aria-labelledby="plants">
        <h2 id="plants">{text.t('practice.path.plants')}</h2>
        {book?.map((chapter, index) => (
          <ChapterView key={chapter.plant} chapter={chapter} open={index === 0} />
        ))}
      </section>
    </>
  );
}

/** Pairs of a machine that are shown at once. */
const FIRST = 6;

function ChapterView({ chapter, open: opened }: { readonly chapter: Chapter; readonly open: boolean }) {
  const text = useText();
  const [open, setOpen] = useState(opened);
  const [edges, setEdges] = useState<readonly Placed[] | null>(null);
  const [all, setAll] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    if (!open || edges) return;
    edgesOn(chapter).then(setEdges, (error: unknown) =>
      setProblem(error instanceof Error ? error.message : String(error)),
    );
  }, [open]);
  return (
    <details class="chapter" open={opened} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{sentence(text.t(`names.plant.${chapter.plant}`))}</summary>
      {problem !== null && <p role="alert">{text.t('practice.failed', { reason: problem })}</p>}
      {open && !edges && problem === null && <p role="status">{text.t('practice.working')}</p>}
      {edges && (
        <>
          <p class="soft">
            {edges.length === 0
              ? text.t('practice.path.noPairs')
              : text.t('practice.path.pairs', { count: edges.length })}
          </p>
          <ul class="pairs">
            {edges
              .filter((edge, i) => all || i < FIRST || progress.value.has(edge.id))
              .map((edge) => (
                <PairRow key={edge.id} edge={edge} at={progress.value.get(edge.id) ?? newProgress(edge.id)} />
              ))}
          </ul>
          {!all && edges.length > FIRST && (
            <button type="button" onClick={() => setAll(true)}>
              {text.t('practice.path.more', { count: edges.length })}
            </button>
          )}
        </>
      )}
    </details>
  );
}

function PairRow({ edge, at }: { readonly edge: Placed; readonly at: Progress }) {
  const text = useText();
  const step = STAGES.indexOf(at.stage);
  const begun = at.rounds > 0 || step > 0;
  const state = [
    text.t('practice.path.at', { number: step + 1, stage: text.t(`practice.path.stage.${at.stage}`) }),
    ...(at.rounds > 0 ? [text.t('practice.path.told', { told: at.told, rounds: at.rounds })] : []),
    ...(at.due === null
      ? []
      : [
          at.due <= Date.now()
            ? text.t('practice.path.dueNow')
            : text.t('practice.path.dueOn', { day: dayText(text, at.due) }),
        ]),
  ];
  return (
    <li>
      <div class="pair-what">
        <h3>{pairName(text, edge.causes)}</h3>
        <p class="soft">{text.t('practice.path.alike', { share: text.quantity('share', edge.alike) })}</p>
        <p class="pair-state">
          <span class="pair-steps" aria-hidden="true">
            {STAGES.map((stage, i) => (
              <span key={stage} data-done={i < step || (i === step && at.sides.length === 2)} data-now={i === step} />
            ))}
          </span>
          <span>{state.join(' · ')}</span>
        </p>
      </div>
      <a
        class="button"
        href={practiceLink('path', edge.id)}
        aria-label={`${text.t(begun ? 'practice.path.goOn' : 'practice.path.begin')}: ${pairName(text, edge.causes)}`}
      >
        {text.t(begun ? 'practice.path.goOn' : 'practice.path.begin')}
      </a>
    </li>
  );
}
