/** The one reading that tells: what either cause gives, as two bands, and the dot that was read. */
import type { Picture } from '../../examiner/types';
import { amount } from '../kit/message';
import { sentence } from '../kit/say';
import { useText } from '../kit/text';
import { useSession } from '../session';

const WIDTH = 360;
const LEFT = 16;
const ROWS = { first: 58, second: 118 } as const;

export function BandPicture({ picture }: { readonly picture: Picture }) {
  const text = useText();
  const { atmosphere } = useSession().state.value.site;
  const { bands, read, kind } = picture;
  const values = [read, ...bands.flatMap(({ low, high }) => [low, high])];
  const from = Math.min(...values);
  const to = Math.max(...values);
  const span = Math.max(to - from, 1e-9);
  const x = (value: number) => LEFT + ((WIDTH - 2 * LEFT) * (value - from + 0.08 * span)) / (1.16 * span);
  const said = bands.map((band) =>
    sentence(
      text.t('debrief.expected', {
        cause: text.t(`names.cause.${band.cause}`),
        low: amount(text, kind, band.low, atmosphere),
        high: amount(text, kind, band.high, atmosphere),
      }),
    ),
  );
  const dot = x(read);
  return (
    <>
      <svg
        class="bands"
        viewBox={`0 0 ${WIDTH} 160`}
        role="img"
        aria-label={`${said.join('. ')}. ${text.t('debrief.you')} ${amount(text, kind, read, atmosphere)}.`}
      >
        <defs>
          <pattern id="band-hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <line x1="0" y1="0" x2="0" y2="6" class="bands-hatch" />
          </pattern>
        </defs>
        {bands.map((band, index) => {
          const y = index === 0 ? ROWS.first : ROWS.second;
          return (
            <g key={band.cause}>
              <rect
                x={x(band.low)}
                y={y - 14}
                width={Math.max(4, x(band.high) - x(band.low))}
                height={28}
                class={index === 0 ? 'bands-true' : 'bands-rival'}
                fill={index === 0 ? undefined : 'url(#band-hatch)'}
              />
            </g>
          );
        })}
        <line x1={dot} x2={dot} y1={28} y2={146} class="bands-read" />
        <circle cx={dot} cy={20} r={8} class="bands-dot" />
      </svg>
      <ul class="bands-legend">
        <li>
          <svg viewBox="0 0 24 16" aria-hidden="true">
            <circle cx="12" cy="8" r="6" class="bands-dot" />
          </svg>
          <span>
            {text.t('debrief.you')} <strong class="number">{amount(text, kind, read, atmosphere)}</strong>
          </span>
        </li>
        {said.map((line, index) => (
          <li key={line}>
            <svg viewBox="0 0 24 16" aria-hidden="true">
              <rect
                x="1"
                y="2"
                width="22"
                height="12"
                class={index === 0 ? 'bands-true' : 'bands-rival'}
                fill={index === 0 ? undefined : 'url(#band-hatch)'}
              />
            </svg>
            <span>{line}</span>
          </li>
        ))}
      </ul>
    </>
  );
}
