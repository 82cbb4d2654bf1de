/** What either cause gives, as two bands, and the dot that was read. */
import type { CauseId } from '../../../physics/types';
import type { ValueKind } from '../../examiner/types';
import { amount } from './message';
import { sentence } from './say';
import { useText } from './text';

const WIDTH = 360;
const LEFT = 16;
const ROWS = { first: 58, second: 118 } as const;

interface Range {
  readonly cause: CauseId;
  readonly low: number;
  readonly high: number;
}

interface Props {
  readonly bands: readonly [Range, Range];
  /** SI, pressures absolute; null = nothing was read */
  readonly read: number | null;
  readonly kind: ValueKind;
  /** Pa, at the site */
  readonly atmosphere: number;
}

export function Bands({ bands, read, kind, atmosphere }: Props) {
  const text = useText();
  const values = [...(read === null ? [] : [read]), ...bands.flatMap(({ low, high }) => [low, high])];
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
  const dot = read === null ? null : x(read);
  const own = read === null ? '' : `${text.t('debrief.you')} ${amount(text, kind, read, atmosphere)}.`;
  return (
    <>
      <svg class="bands" viewBox={`0 0 ${WIDTH} 160`} role="img" aria-label={`${said.join('. ')}. ${own}`}>
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
        {dot !== null && <line x1={dot} x2={dot} y1={28} y2={146} class="bands-read" />}
        {dot !== null && <circle cx={dot} cy={20} r={8} class="bands-dot" />}
      </svg>
      <ul class="bands-legend">
        {read !== null && (
          <li>
            <svg viewBox="0 0 24 16" aria-hidden="true">
              <circle cx="12" cy="8" r="6" class="bands-dot" />
            </svg>
            <span>
              {text.t('debrief.you')} <strong class="number">{amount(text, kind, read, atmosphere)}</strong>
            </span>
          </li>
        )}
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
