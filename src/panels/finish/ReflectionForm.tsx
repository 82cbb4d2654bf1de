/** Every third job, while the mended machine settles: for, against, missing. Never scored, and can be left. */
import { useState } from 'preact/hooks';
import { channelsAt } from '../../instruments';
import { channelName, noteName, sentence, valueText } from '../kit/say';
import { useText } from '../kit/text';
import { optionsAt } from '../place/options';
import { type Session, useSession } from '../session';

type Side = 'verdict' | 'rival' | 'neither';
const SIDES: readonly Side[] = ['verdict', 'rival', 'neither'];

export function ReflectionForm() {
  const text = useText();
  const session = useSession();
  const { verdicts, reflections, notes } = session.state.value;
  const [sides, setSides] = useState<Readonly<Record<number, Side>>>({});
  const [missing, setMissing] = useState<string | null>(null);
  const [left, setLeft] = useState(false);
  const verdict = verdicts.at(-1);
  if (reflections.length > 0) return <p class="said">{text.t('app.said.reflect')}</p>;
  const open = notes.filter(({ struck, state }) => !struck && state !== 'repaired');
  if (!verdict || !session.looksBack.value || left || open.length === 0) return null;
  const cause = (side: Side) => text.t(`names.cause.${side === 'rival' ? verdict.rival : verdict.cause}`);
  const chosen = (side: Side) => open.filter(({ index }) => sides[index] === side).map(({ index }) => index);
  return (
    <fieldset class="slot">
      <legend>{text.t('panels.reflect.title')}</legend>
      <p>{text.t('panels.reflect.help')}</p>
      {open.map((note) => (
        <label class="field" key={note.index}>
          <span>
            {sentence(noteName(text, note))}: <strong class="number">{valueText(text, note)}</strong>
          </span>
          <select
            value={sides[note.index] ?? 'neither'}
            onChange={(event) => setSides({ ...sides, [note.index]: event.currentTarget.value as Side })}
          >
            {SIDES.map((side) => (
              <option key={side} value={side}>
                {text.t(`panels.reflect.${side}`, { cause: cause(side) })}
              </option>
            ))}
          </select>
        </label>
      ))}
      <label class="field">
        <span>{text.t('panels.reflect.missing')}</span>
        <select value={missing ?? ''} onChange={(event) => setMissing(event.currentTarget.value || null)}>
          <option value="">{text.t('panels.reflect.nothing')}</option>
          {unread(session).map(([channel, name]) => (
            <option key={channel} value={channel}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <div class="wrap">
        <button
          type="button"
          onClick={() =>
            session.dispatch({ kind: 'reflect', forVerdict: chosen('verdict'), forRival: chosen('rival'), missing })
          }
        >
          {text.t('panels.reflect.keep')}
        </button>
        <button type="button" class="quiet" onClick={() => setLeft(true)}>
          {text.t('panels.reflect.skip')}
        </button>
      </div>
    </fieldset>
  );

  /** What the bag could have read and nobody did, by name. */
  function unread({ plant, callout }: Session): [string, string][] {
    const read = new Set<string>(notes.map(({ channel }) => channel));
    const found = new Map<string, string>();
    for (const place of plant.places) {
      for (const { instrument, quantity } of optionsAt(place, callout.toolbag)) {
        for (const channel of channelsAt(instrument, place, quantity)) {
          if (!read.has(channel)) found.set(channel, sentence(channelName(text, channel)));
        }
      }
    }
    return [...found].sort(([, a], [, b]) => a.localeCompare(b));
  }
}
