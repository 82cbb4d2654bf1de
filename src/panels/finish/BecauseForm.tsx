/** With a verdict, in three picks: because of this reading, not the rival, since that reading. Never scored, never asked for twice. */
import { useState } from 'preact/hooks';
import { noteName, sentence, valueText } from '../kit/say';
import { useText } from '../kit/text';
import { useSession } from '../session';

export function BecauseForm() {
  const text = useText();
  const session = useSession();
  const { verdicts, becauses, notes, repairs } = session.state.value;
  const [shows, setShows] = useState<number | null>(null);
  const [rulesOut, setRulesOut] = useState<number | null>(null);
  const verdict = verdicts.at(-1);
  const open = notes.filter(({ struck }) => !struck);
  if (!verdict || repairs.length > 0 || open.length === 0) return null;
  if (becauses.some((each) => each.verdict === verdicts.length - 1)) {
    return <p class="said">{text.t('app.said.because')}</p>;
  }
  const choose = (label: string, value: number | null, set: (note: number) => void) => (
    <label class="field">
      <span>{label}</span>
      <select value={value ?? ''} onChange={(event) => set(Number(event.currentTarget.value))}>
        <option value="" disabled>
          {text.t('panels.because.choose')}
        </option>
        {open.map((note) => (
          <option key={note.index} value={note.index}>
            {sentence(noteName(text, note))}: {valueText(text, note)}
          </option>
        ))}
      </select>
    </label>
  );
  return (
    <fieldset class="slot">
      <legend>{text.t('panels.because.title')}</legend>
      {choose(text.t('panels.because.shows', { cause: text.t(`names.cause.${verdict.cause}`) }), shows, setShows)}
      {choose(
        text.t('panels.because.rulesOut', { rival: text.t(`names.cause.${verdict.rival}`) }),
        rulesOut,
        setRulesOut,
      )}
      <button
        type="button"
        disabled={shows === null || rulesOut === null}
        onClick={() => session.dispatch({ kind: 'because', shows: shows!, rulesOut: rulesOut! })}
      >
        {text.t('panels.because.keep')}
      </button>
    </fieldset>
  );
}
