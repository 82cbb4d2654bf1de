/** The page: a thin head with what is always at hand, and under it either the first screen or one callout. */
import { useEffect, useState } from 'preact/hooks';
import { TextContext, useText } from '../panels/kit/text';
import '../styles/tokens.css';
import '../styles/base.css';
import '../styles/shell.css';
import { About } from './About';
import { CalloutLoader } from './CalloutLoader';
import { Home } from './Home';
import { text } from './preferences';
import { route } from './route';
import { Settings } from './Settings';

export function App() {
  return (
    <TextContext.Provider value={text}>
      <Page />
    </TextContext.Provider>
  );
}

function Page() {
  const here = route.value;
  return (
    <>
      <Head inCallout={here.at === 'callout'} />
      {here.at === 'home' ? (
        <Home />
      ) : (
        <CalloutLoader
          key={`${here.pack}/${here.callout}/${here.seed}`}
          pack={here.pack}
          callout={here.callout}
          seed={here.seed}
        />
      )}
    </>
  );
}

function Head({ inCallout }: { readonly inCallout: boolean }) {
  const words = useText();
  const [open, setOpen] = useState<'settings' | 'about' | null>(null);
  useEffect(() => {
    document.title = words.t('app.name');
  }, [words]);
  const close = () => setOpen(null);
  return (
    <header class="head">
      {inCallout && (
        <a class="skip" href="#machine" onClick={skipToMachine}>
          {words.t('app.nav.skip')}
        </a>
      )}
      <nav class="head-nav" aria-label={words.t('app.name')}>
        {inCallout ? (
          <a class="button quiet" href="#home">
            <span aria-hidden="true">←</span> {words.t('app.nav.home')}
          </a>
        ) : (
          <span class="head-name">{words.t('app.name')}</span>
        )}
        <span class="head-tools">
          <button type="button" class="quiet" onClick={() => setOpen('settings')}>
            {words.t('app.nav.settings')}
          </button>
          <button type="button" class="quiet" onClick={() => setOpen('about')}>
            {words.t('app.nav.about')}
          </button>
        </span>
      </nav>
      {open === 'settings' && <Settings onClose={close} />}
      {open === 'about' && <About onClose={close} />}
    </header>
  );
}

/** The fragment is the route, so the jump is made by hand. */
function skipToMachine(event: Event): void {
  event.preventDefault();
  document.getElementById('machine')?.focus();
}
