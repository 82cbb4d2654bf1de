/** What is at hand on every screen: settings, and what this is. */
import { useState } from 'preact/hooks';
import { useText } from '../panels/kit/text';
import { About } from './About';
import { Settings } from './Settings';

export function HeadTools() {
  const text = useText();
  const [open, setOpen] = useState<'settings' | 'about' | null>(null);
  return (
    <span class="head-tools">
      <button type="button" class="quiet" onClick={() => setOpen('settings')}>
        {text.t('app.nav.settings')}
      </button>
      <button type="button" class="quiet head-about" onClick={() => setOpen('about')}>
        {text.t('app.nav.about')}
      </button>
      {open === 'settings' && <Settings onClose={() => setOpen(null)} onAbout={() => setOpen('about')} />}
      {open === 'about' && <About onClose={() => setOpen(null)} />}
    </span>
  );
}
