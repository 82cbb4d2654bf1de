/** One line that does anything: type the beginnings of what you mean, Enter takes the first match. */
import { useId, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { useText } from '../../panels/kit/text';
import { useSession } from '../../panels/session';
import { type Command, commandsOf, matching } from './commands';

const SHOWN = 8;

export function CommandLine({ onClose }: { readonly onClose: () => void }) {
  const text = useText();
  const session = useSession();
  const [typed, setTyped] = useState('');
  const [chosen, setChosen] = useState(0);
  const input = useRef<HTMLInputElement>(null);
  const id = useId();
  // At once: the next key may already be meant for the line.
  useLayoutEffect(() => input.current?.focus(), []);
  const found = matching(commandsOf(session, text), typed, SHOWN);
  const run = (command: Command | undefined) => {
    if (!command) return;
    onClose();
    command.run();
  };
  return (
    <div class="command">
      <label class="field">
        <span>{text.t('app.command.label')}</span>
        <input
          ref={input}
          role="combobox"
          aria-expanded={found.length > 0}
          aria-controls={`${id}-list`}
          aria-autocomplete="list"
          aria-activedescendant={found.length > 0 ? `${id}-${chosen}` : undefined}
          autoComplete="off"
          spellcheck={false}
          placeholder={text.t('app.command.example')}
          value={typed}
          onInput={(event) => {
            setTyped(event.currentTarget.value);
            setChosen(0);
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter') run(found[chosen]);
            else if (event.key === 'Escape') onClose();
            else if (event.key === 'ArrowDown') setChosen(Math.min(found.length - 1, chosen + 1));
            else if (event.key === 'ArrowUp') setChosen(Math.max(0, chosen - 1));
            else return;
            event.preventDefault();
            event.stopPropagation();
          }}
          onBlur={(event) => {
            if (!(event.relatedTarget as Element | null)?.closest('.command')) onClose();
          }}
        />
      </label>
      <div id={`${id}-list`} role="listbox" tabIndex={-1} aria-label={text.t('app.command.label')}>
        {found.map((command, index) => (
          <button
            type="button"
            key={command.id}
            id={`${id}-${index}`}
            role="option"
            aria-selected={index === chosen}
            class="row first"
            onClick={() => run(command)}
          >
            {command.label}
          </button>
        ))}
      </div>
      {typed.trim() !== '' && found.length === 0 && <p class="soft">{text.t('app.command.nothing')}</p>}
    </div>
  );
}
