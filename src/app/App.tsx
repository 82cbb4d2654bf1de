/** The page: the first screen, a way to practise, or one callout. */
import { useEffect } from 'preact/hooks';
import { TextContext, useText } from '../panels/kit/text';
import '../styles/tokens.css';
import '../styles/base.css';
import '../styles/shell.css';
import { Boundary } from './Boundary';
import { CalloutLoader } from './CalloutLoader';
import { HeadTools } from './HeadTools';
import { Home } from './Home';
import { PracticeLoader } from './PracticeLoader';
import { text } from './preferences';
import { route } from './route';

export function App() {
  return (
    <TextContext.Provider value={text}>
      <Page />
    </TextContext.Provider>
  );
}

function Page() {
  const here = route.value;
  const words = useText();
  useEffect(() => {
    document.title = words.t('app.name');
  }, [words]);
  if (here.at === 'callout') {
    return (
      <Boundary key={`${here.pack}/${here.callout}/${here.seed}`}>
        <CalloutLoader pack={here.pack} callout={here.callout} seed={here.seed} />
      </Boundary>
    );
  }
  return (
    <>
      <header class="head">
        {here.at === 'home' ? (
          <span class="head-name">{words.t('app.name')}</span>
        ) : (
          <a class="button quiet" href="#home">
            {words.t('app.nav.home')}
          </a>
        )}
        <HeadTools />
      </header>
      {here.at === 'practice' ? (
        <Boundary key={here.way}>
          <PracticeLoader way={here.way} what={here.what} />
        </Boundary>
      ) : (
        <Home />
      )}
    </>
  );
}
