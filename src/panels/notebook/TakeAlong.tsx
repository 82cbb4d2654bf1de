/** The attempt as text or file: nothing is sent, the person carries it. */
import { useState } from 'preact/hooks';
import { saveFile } from '../kit/file';
import { useText } from '../kit/text';
import { useSession } from '../session';

export function TakeAlong() {
  const text = useText();
  const session = useSession();
  const [open, setOpen] = useState(false);
  const [copied, setCopied] = useState(false);
  const { attempt } = session.state.value;
  const code = open ? session.code() : null;
  return (
    <details class="take-along" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{text.t('panels.note.code')}</summary>
      <div class="stack">
        <p class="soft">{text.t('panels.note.codeHelp')}</p>
        {code !== null && <textarea readOnly rows={3} aria-label={text.t('app.home.codeLabel')} value={code} />}
        <div class="wrap">
          {code !== null && (
            <button type="button" onClick={() => void navigator.clipboard.writeText(code).then(() => setCopied(true))}>
              {text.t(copied ? 'panels.note.copied' : 'panels.note.copy')}
            </button>
          )}
          <button
            type="button"
            onClick={() => saveFile(`${attempt.callout}.attempt.json`, 'application/json', session.attemptFile())}
          >
            {text.t('panels.note.save')}
          </button>
        </div>
      </div>
    </details>
  );
}
