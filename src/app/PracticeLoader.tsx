/** Fetches a way to practise when it is opened, so that the first screen stays light. */
import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { useText } from '../panels/kit/text';
import type { PracticeWay } from './route';

export interface WayProps {
  readonly way: PracticeWay;
  readonly what: string | null;
}

export function PracticeLoader({ way, what }: WayProps) {
  const text = useText();
  const [screen, setScreen] = useState<{ readonly Screen: ComponentType<WayProps> } | null>(null);
  const [reason, setReason] = useState<string | null>(null);
  useEffect(() => {
    import('./practice').then(
      ({ PracticeScreen }) => setScreen({ Screen: PracticeScreen }),
      (error: unknown) => setReason(error instanceof Error ? error.message : String(error)),
    );
  }, []);
  if (screen) return <screen.Screen way={way} what={what} />;
  return (
    <main class="home">
      {reason === null ? (
        <p role="status">{text.t('app.home.loading')}</p>
      ) : (
        <p role="alert">{text.t('app.error.engine', { reason })}</p>
      )}
    </main>
  );
}
