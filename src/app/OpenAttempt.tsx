/** An attempt that came as text or file. Bad input says where and what, and loses nothing. */
import { useState } from 'preact/hooks';
import type { Attempt } from '../attempt';
import { useText } from '../panels/kit/text';
import { findCallout } from './library';
import { calloutLink } from './route';

export function OpenAttempt() {
  const text = useText();
  const [code, setCode] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const open = async (read: (codes: typeof import('../attempt/codes')) => Attempt | Promise<Attempt>) => {
    try {
      const [codes, saved] = await Promise.all([import('../attempt/codes'), import('./saved')]);
      const attempt = await read(codes);
      const link = calloutLink(attempt.pack, attempt.callout);
      if (!(await findCallout(attempt.pack, attempt.callout))) {
        setProblem(text.t('app.error.unknownCallout', { id: link.slice(1) }));
        return;
      }
      await saved.layDown(attempt);
      saved.setCurrent(saved.attemptId(attempt));
      location.hash = link;
    } catch (error) {
      setProblem(text.t('app.error.code', { reason: error instanceof Error ? error.message : String(error) }));
    }
  };
  return (
    <details>
      <summary>{text.t('app.home.code')}</summary>
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault();
          void open((codes) => codes.decode(code));
        }}
      >
        <p class="soft">{text.t('app.home.codeHelp')}</p>
        <label class="field">
          <span>{text.t('app.home.codeLabel')}</span>
          <textarea rows={3} value={code} onInput={(event) => setCode(event.currentTarget.value)} />
        </label>
        {problem && <p role="alert">{problem}</p>}
        <div class="wrap">
          <button type="submit" class="main" disabled={code.trim() === ''}>
            {text.t('app.home.codeOpen')}
          </button>
          <label class="button file">
            <span>{text.t('app.home.file')}</span>
            <input
              type="file"
              accept=".json,application/json"
              onChange={(event) => {
                const file = event.currentTarget.files?.[0];
                if (file) void open(async (codes) => codes.fromFile(await file.text()));
              }}
            />
          </label>
        </div>
      </form>
    </details>
  );
}
