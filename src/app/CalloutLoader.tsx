/** Fetches the machine, its panels and the pack when a callout is opened, so that the first screen stays light. */
import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { useText } from '../panels/kit/text';
import type { Session } from '../panels/session';
import { findCallout } from './library';

type Opened =
  | { readonly as: 'waiting' }
  | { readonly as: 'open'; readonly Screen: ComponentType<{ session: Session }>; readonly session: Session }
  | { readonly as: 'unknown' }
  | { readonly as: 'failed'; readonly reason: string };

interface Props {
  readonly pack: string;
  readonly callout: string;
  readonly seed: string | null;
}

export function CalloutLoader({ pack, callout, seed }: Props) {
  const text = useText();
  const [opened, setOpened] = useState<Opened>({ as: 'waiting' });
  useEffect(() => {
    let left = false;
    let session: Session | null = null;
    void open(pack, callout, seed).then((result) => {
      if (result.as === 'open') session = result.session;
      if (left) session?.close();
      else setOpened(result);
    });
    return () => {
      left = true;
      session?.close();
    };
  }, [pack, callout, seed]);
  if (opened.as === 'open') return <opened.Screen session={opened.session} />;
  return (
    <main class="home">
      {opened.as === 'waiting' ? (
        <p role="status">{text.t('app.home.loading')}</p>
      ) : (
        <div class="stack" role="alert">
          <h1>{text.t('app.error.title')}</h1>
          <p>
            {opened.as === 'unknown'
              ? text.t('app.error.unknownCallout', { id: `${pack}/${callout}` })
              : text.t('app.error.engine', { reason: opened.reason })}
          </p>
          <p>
            <a href="#home">{text.t('app.nav.home')}</a>
          </p>
        </div>
      )}
    </main>
  );
}

async function open(packId: string, calloutId: string, seed: string | null): Promise<Opened> {
  try {
    const [found, { CalloutScreen, openSession }] = await Promise.all([
      findCallout(packId, calloutId),
      import('./callout'),
    ]);
    if (!found) return { as: 'unknown' };
    return { as: 'open', Screen: CalloutScreen, session: await openSession(found.pack, found.callout, seed) };
  } catch (error) {
    return { as: 'failed', reason: error instanceof Error ? error.message : String(error) };
  }
}
