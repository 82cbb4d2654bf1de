/** The data link's numbers along the path of the refrigerant, and the tape that records them. */
import { useState } from 'preact/hooks';
import { unitOf } from '../../../physics/types';
import {
  linkChannels,
  liveValues,
  SAMPLE_SECONDS,
  type TapeChannel,
  tapeCsv,
  tapeOf,
  tapeWith,
} from '../../attempt/tape';
import type { ChannelName } from '../../instruments/types';
import { saveFile } from '../kit/file';
import { channelName, channelText } from '../kit/say';
import { useText } from '../kit/text';
import { unitStateOf } from '../kit/unitState';
import { useSession } from '../session';
import { ALL_CHOSEN, type Chosen, isChosen, TapeChoice } from './TapeChoice';
import { TapePlot, TapeTable } from './TapePlot';
import { type Bead, Units } from './Units';

/** Along the refrigerant from the compressor, each air sensor beside its coil. What is not named comes last. */
const PATH: readonly ChannelName[] = [
  'compressorSpeed',
  'compressorCurrent',
  'sensor:dischargeLine',
  'sensor:outdoorAir',
  'valveOpening',
  'sensor:evaporatorCoil',
  'sensor:returnAir',
  'sensor:suctionLine',
  'sensor:suctionPressure',
  'sensor:dischargePressure',
];

const rank = (channel: ChannelName) => (PATH.indexOf(channel) + PATH.length + 1) % (PATH.length + 1);

export function Strand() {
  const text = useText();
  const session = useSession();
  const [ranking, setRanking] = useState<Bead | null>(null);
  const state = session.state.value;
  const channels = linkChannels(state);
  if (channels.length === 0 || !session.callout.toolbag.includes('data-link')) {
    return <p>{text.t('panels.strand.none')}</p>;
  }
  const live = liveValues(state, session.clock.value);
  const panel = session.plant.places.find(({ reads }) => reads.link)!;
  const { units } = session.snapshot.value;
  const note = ({ quantity, channel }: TapeChannel) => {
    session.place.value = panel.id;
    session.take({ instrument: 'data-link', quantity, channel });
  };
  const ordered = channels
    .map((channel, index) => ({ ...channel, index }))
    .filter(({ channel }) => unitOf(channel) === null)
    .sort((a, b) => rank(a.channel) - rank(b.channel));
  return (
    <>
      <p class="soft">{text.t('panels.strand.help')}</p>
      <p>{text.t(`names.controller.${session.snapshot.value.controller}`)}</p>
      <ol class="strand">
        {ordered.map(({ channel, quantity, unit, index }) => (
          <li key={channel}>
            <span class="first">{channelName(text, channel)}</span>
            {live ? (
              <strong class="number">{channelText(text, quantity, live.values[index]!)}</strong>
            ) : (
              <span class="soft">{text.t('panels.strand.notRead')}</span>
            )}
            <button
              type="button"
              aria-label={text.t('panels.strand.read', { what: channelName(text, channel) })}
              onClick={() => note({ channel, quantity, unit })}
            >
              {text.t('panels.strand.note')}
            </button>
          </li>
        ))}
      </ol>
      {units && (
        <Units
          units={units.map(({ id }) => ({ id, state: unitStateOf(session, id) }))}
          channels={channels}
          live={live}
          rank={ranking}
          onRank={setRanking}
          onNote={note}
        />
      )}
      <Tape />
    </>
  );
}

function Tape() {
  const text = useText();
  const session = useSession();
  const [mark, setMark] = useState('');
  const state = session.state.value;
  const running = state.tape.at(-1)?.to === null;
  // As far as the clock that is shown: what is being played is not on it yet.
  const { units } = session.plant;
  const [chosen, setChosen] = useState<Chosen>(ALL_CHOSEN);
  const whole = tapeOf({ ...state, clock: session.clock.value });
  const tape = units ? tapeWith(whole, ({ channel }) => isChosen(chosen, channel)) : whole;
  return (
    <section class="stack">
      <h3>{text.t('panels.strand.tape')}</h3>
      <button
        type="button"
        class={running ? '' : 'main'}
        onClick={() => session.dispatch({ kind: 'tape', on: !running })}
      >
        {text.t(running ? 'panels.strand.tapeOff' : 'panels.strand.tapeOn')}
      </button>
      {running && <p class="soft">{text.t('panels.strand.running')}</p>}
      {running && (
        <form
          class="field"
          onSubmit={(event) => {
            event.preventDefault();
            if (mark.trim() !== '' && session.dispatch({ kind: 'mark', text: mark.trim() })) setMark('');
          }}
        >
          <label>
            <span>{text.t('panels.strand.markLabel')}</span>
            <input value={mark} maxLength={80} onInput={(event) => setMark(event.currentTarget.value)} />
          </label>
          <button type="submit" disabled={mark.trim() === ''}>
            {text.t('panels.strand.mark')}
          </button>
        </form>
      )}
      {tape.samples.length < 2 ? (
        <p class="soft">{text.t('panels.strand.empty', { seconds: SAMPLE_SECONDS })}</p>
      ) : (
        <>
          {units && <TapeChoice units={units} chosen={chosen} onChoose={setChosen} />}
          <TapePlot tape={tape} />
          <details>
            <summary>{text.t('panels.strand.table')}</summary>
            <TapeTable tape={tape} />
          </details>
          <button type="button" onClick={() => saveFile(`${session.callout.id}.tape.csv`, 'text/csv', tapeCsv(tape))}>
            {text.t('panels.strand.csv')}
          </button>
        </>
      )}
    </section>
  );
}
