/** The tape drawn: one small plot a channel, all on the same time, marks as lines through them; and as a table. */
import type { Tape } from '../../attempt/tape';
import { ScrollX } from '../kit/ScrollX';
import { channelName, channelText } from '../kit/say';
import { useText } from '../kit/text';

const WIDTH = 320;
const HEIGHT = 56;
/** Rows of the table; longer tapes show every n-th sample, the CSV has them all. */
const ROWS = 40;

export function TapePlot({ tape }: { readonly tape: Tape }) {
  const text = useText();
  const first = tape.samples[0]!.time;
  const last = tape.samples.at(-1)!.time;
  const x = (time: number) => (WIDTH * (time - first)) / Math.max(1, last - first);
  return (
    <div class="tape-plots">
      {tape.channels.map(({ channel, quantity }, index) => {
        const values = tape.samples.map((sample) => sample.values[index]!);
        const low = Math.min(...values);
        const high = Math.max(...values);
        const span = high - low || 1;
        const y = (value: number) => HEIGHT - 6 - ((HEIGHT - 12) * (value - low)) / span;
        const name = channelName(text, channel);
        return (
          <figure key={channel}>
            <figcaption>
              <span class="first">{name}</span>
              <span class="soft">
                {text.t('panels.strand.lowest', { value: channelText(text, quantity, low) })},{' '}
                {text.t('panels.strand.highest', { value: channelText(text, quantity, high) })}
              </span>
            </figcaption>
            <svg
              viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
              role="img"
              aria-label={text.t('panels.strand.plot', { what: name, from: text.clock(first), to: text.clock(last) })}
            >
              {tape.marks.map((mark) => (
                <line key={mark.time} x1={x(mark.time)} x2={x(mark.time)} y1={0} y2={HEIGHT} class="tape-mark">
                  <title>{mark.text}</title>
                </line>
              ))}
              <polyline
                class="tape-line"
                points={tape.samples
                  .map(({ time }, i) => `${x(time).toFixed(1)},${y(values[i]!).toFixed(1)}`)
                  .join(' ')}
              />
            </svg>
          </figure>
        );
      })}
      <ol class="tape-marks">
        {tape.marks.map((mark) => (
          <li key={mark.time}>
            {text.clock(mark.time)} {mark.text}
          </li>
        ))}
      </ol>
    </div>
  );
}

export function TapeTable({ tape }: { readonly tape: Tape }) {
  const text = useText();
  const every = Math.max(1, Math.ceil(tape.samples.length / ROWS));
  return (
    <ScrollX label={text.t('panels.strand.table')}>
      <table>
        <thead>
          <tr>
            <th scope="col">{text.t('panels.strand.time')}</th>
            {tape.channels.map(({ channel }) => (
              <th key={channel} scope="col">
                {channelName(text, channel)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {tape.samples
            .filter((_, index) => index % every === 0)
            .map((sample) => (
              <tr key={sample.time}>
                <th scope="row">{text.clock(sample.time)}</th>
                {sample.values.map((value, index) => (
                  <td key={tape.channels[index]!.channel}>
                    {channelText(text, tape.channels[index]!.quantity, value)}
                  </td>
                ))}
              </tr>
            ))}
        </tbody>
      </table>
    </ScrollX>
  );
}
