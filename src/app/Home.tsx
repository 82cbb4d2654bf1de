/** First screen: the caution, one way in for whoever is new, and the packs by place. */
import { useEffect, useState } from 'preact/hooks';
import type { Callout, Pack } from '../attempt/pack/types';
import { Caution } from '../panels/kit/Caution';
import { useText } from '../panels/kit/text';
import { Emblem } from './Emblem';
import { findCallout, packs } from './library';
import { OpenAttempt } from './OpenAttempt';
import { OfflineLine } from './offline/OfflineLine';
import { calloutLink } from './route';
import type { SavedAttempt } from './saved';
import { Ways } from './Ways';

export function Home() {
  const text = useText();
  const [shelf, setShelf] = useState<readonly Pack[] | null>(null);
  const [saved, setSaved] = useState<readonly SavedAttempt[]>([]);
  const [returns, setReturns] = useState<readonly Job[]>([]);
  const [jobs, setJobs] = useState<ReadonlyMap<string, Job>>(new Map());
  useEffect(() => {
    void packs().then(setShelf);
    void import('./saved').then(async ({ savedAttempts, setCurrent }) => {
      setCurrent(null);
      const kept = await savedAttempts();
      setJobs(await jobsOf(kept));
      setReturns(await returnsAfter(kept));
      setSaved(kept);
    });
  }, []);
  const discard = async (id: string) => {
    const { savedAttempts, throwAway } = await import('./saved');
    await throwAway(id);
    setSaved(await savedAttempts());
  };
  const guided = shelf?.flatMap((pack) =>
    pack.callouts.filter((one) => one.mode === 'guided').map((callout) => ({ pack, callout })),
  )[0];
  const openOnes = saved.filter((one) => !one.finished);
  return (
    <main class="home">
      <div class="home-intro">
        <div>
          <h1>{text.t('app.name')}</h1>
          <p class="soft">{text.t('app.tagline')}</p>
          <OfflineLine />
        </div>
        <Emblem />
      </div>
      {guided && (
        <section class="home-first" aria-labelledby="first">
          <h2 id="first">{text.t('app.home.running')}</h2>
          <p>{text.t('app.home.runningMore')}</p>
          <a class="button main" href={calloutLink(guided.pack.id, guided.callout.id)}>
            {text.t(saved.some((one) => one.finished) ? 'app.home.beginAgain' : 'app.home.begin')}
          </a>
        </section>
      )}
      <Caution />
      {openOnes.length > 0 && shelf && (
        <section class="stack" aria-labelledby="resume">
          <h2 id="resume">{text.t('app.home.resume')}</h2>
          <ul class="stack">
            {openOnes.map((one) => (
              <Resume key={one.id} saved={one} job={jobs.get(one.id)} onThrowAway={() => void discard(one.id)} />
            ))}
          </ul>
        </section>
      )}
      {returns.length > 0 && (
        <section class="stack" aria-labelledby="van">
          <h2 id="van">{text.t('app.ways.van.name')}</h2>
          <ul class="ways">
            {returns.map(({ pack, callout }) => (
              <li key={pack.id}>
                <a href={calloutLink(pack.id, callout.id)}>
                  <span class="home-title">{text.local(callout.text.title)}</span>
                  <span class="soft">{text.t('app.ways.van.what')}</span>
                </a>
              </li>
            ))}
          </ul>
        </section>
      )}
      <Ways />
      <section class="stack" aria-labelledby="packs">
        <h2 id="packs">{text.t('app.home.packs')}</h2>
        {shelf ? (
          <div class="home-packs">
            {shelf.map((pack) => (
              <PackCard key={pack.id} pack={pack} saved={saved} />
            ))}
          </div>
        ) : (
          <p role="status">{text.t('app.home.loading')}</p>
        )}
      </section>
      <OpenAttempt />
    </main>
  );
}

/** Visits that wait: the van has to come back, and nobody has been there yet. Looked for once a job was closed. */
async function returnsAfter(saved: readonly SavedAttempt[]): Promise<readonly Job[]> {
  if (!saved.some(({ finished }) => finished)) return [];
  const { keptPacks } = await import('./practice/jobs');
  return keptPacks()
    .filter(({ id }) => id.startsWith('van-') && !saved.some((one) => one.pack === id))
    .flatMap((pack) => pack.callouts.map((callout) => ({ pack, callout })));
}

interface Job {
  readonly pack: Pack;
  readonly callout: Callout;
}

/** What each open attempt is at; one whose callout is not here any more has none. */
async function jobsOf(saved: readonly SavedAttempt[]): Promise<ReadonlyMap<string, Job>> {
  const found = new Map<string, Job>();
  for (const { id, pack, callout, finished } of saved) {
    const job = finished ? null : await findCallout(pack, callout);
    if (job) found.set(id, job);
  }
  return found;
}

function Resume(props: {
  readonly saved: SavedAttempt;
  readonly job: Job | undefined;
  readonly onThrowAway: () => void;
}) {
  const text = useText();
  const { job: found } = props;
  if (!found) return null;
  return (
    <li class="home-resume">
      <div>
        <h3>{text.local(found.callout.text.title)}</h3>
        <p class="soft">{text.t('app.home.started', { count: props.saved.readings })}</p>
      </div>
      <div class="wrap">
        <a class="button main" href={calloutLink(found.pack.id, found.callout.id)}>
          {text.t('app.home.continue')}
        </a>
        <button type="button" class="quiet" onClick={props.onThrowAway}>
          {text.t('app.home.delete')}
        </button>
      </div>
    </li>
  );
}

/** The customer's own words, as far as the first full stop. */
const firstSentence = (words: string): string => /^.*?[.!?…](?=\s|$)/.exec(words)?.[0] ?? words;

function PackCard({ pack, saved }: { readonly pack: Pack; readonly saved: readonly SavedAttempt[] }) {
  const text = useText();
  const stateOf = (callout: Callout) => {
    const mine = saved.filter((one) => one.pack === pack.id && one.callout === callout.id);
    if (mine.some((one) => one.finished)) return text.t('app.home.finished');
    if (mine.length > 0) return text.t('app.home.open');
    // Most are for one alone: only what differs is said.
    return callout.mode === 'solo' ? '' : text.t(`app.home.${callout.mode}`);
  };
  return (
    <article class="home-pack">
      <h3>{text.local(pack.title)}</h3>
      <p class="soft">{text.local(pack.about)}</p>
      <ul>
        {pack.callouts.map((callout) => (
          <li key={callout.id}>
            <a href={calloutLink(pack.id, callout.id)}>
              <span>
                <span class="home-title">{text.local(callout.text.title)}</span>{' '}
                <q class="soft">{firstSentence(text.local(callout.text.complaint))}</q>
              </span>
              <span class="soft">{stateOf(callout)}</span>
            </a>
          </li>
        ))}
      </ul>
    </article>
  );
}
