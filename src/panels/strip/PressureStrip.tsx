/**
 * One vertical ladder for one noted pressure. High side and low side differ by line weight and hatch, never by colour
 * alone; nothing is subtracted here.
 */
import { useId, useState } from 'preact/hooks';
import type { Note } from '../../attempt';
import { toShown } from '../../i18n';
import { placeName, sentence } from '../kit/say';
import { useText } from '../kit/text';
import { useSession } from '../session';
import { ladder, pressureAt, type Rung } from './ladder';

const HEIGHT = 210;
const TOP = 10;
const WIDTH = 170;
const BODY = { left: 62, right: 110 } as const;

interface Props {
  readonly note: Note;
  /** the trainee takes a saturation temperature, K, off the strip */
  readonly onTake?: (line: 'dew' | 'bubble', temperature: number) => void;
}

export function PressureStrip({ note, onTake }: Props) {
  const text = useText();
  const session = useSession();
  const { saturation, atmosphere } = session.state.value.site;
  const place = session.plant.places.find(({ id }) => id === note.place);
  const side = place?.pressureSide ?? 'low';
  const noted = note.value + (note.gauge ? atmosphere : 0);
  const [pointer, setPointer] = useState(noted);
  const [gauge, setGauge] = useState(true);
  const id = useId();
  const shape = ladder(saturation, side, pointer, gauge ? atmosphere : 0, text.system);
  const dew = saturation.tDew(pointer);
  const bubble = saturation.tBubble(pointer);
  const shown = (p: number) =>
    gauge ? text.quantity('pressureGauge', p - atmosphere, 1000) : text.quantity('pressure', p, 1000);
  const name = sentence(placeName(text, note.place));
  if (dew === null || bubble === null) return null;
  const spoken = text.t('panels.strip.pointerText', {
    pressure: shown(pointer),
    dew: text.quantity('temperature', dew),
    bubble: text.quantity('temperature', bubble),
  });
  const y = (t: number) => TOP + HEIGHT * (1 - (t - shape.low) / (shape.high - shape.low));
  return (
    <figure class="strip" data-side={side}>
      <figcaption>
        <strong>{name}</strong> <span class="soft">({text.t(`panels.strip.${side}`)})</span>
      </figcaption>
      <div class="strip-ladder">
        <svg viewBox={`0 0 ${WIDTH} ${HEIGHT + 2 * TOP}`} role="img" aria-label={spoken}>
          <defs>
            <pattern
              id={`${id}-hatch`}
              width={side === 'high' ? 5 : 11}
              height={side === 'high' ? 5 : 11}
              patternUnits="userSpaceOnUse"
              patternTransform="rotate(45)"
            >
              <line x1="0" y1="0" x2="0" y2="11" class="strip-hatch" />
            </pattern>
          </defs>
          <rect
            x={BODY.left}
            y={TOP}
            width={BODY.right - BODY.left}
            height={HEIGHT}
            fill={`url(#${id}-hatch)`}
            class="strip-body"
          />
          <Edge rungs={shape.pressures} x={BODY.left} to={-1} format={(value) => text.number(value)} />
          <Edge rungs={shape.temperatures} x={BODY.right} to={1} format={(value) => text.number(value)} />
          <line x1={BODY.left - 14} x2={BODY.right + 14} y1={y(dew)} y2={y(dew)} class="strip-pointer" />
        </svg>
        <p class="strip-units soft">
          <span>{text.unit(gauge ? 'pressureGauge' : 'pressure')}</span>
          <span>{text.unit('temperature')}</span>
        </p>
      </div>
      <div class="strip-side">
        <ul class="strip-read">
          <li>
            <span>{text.t('panels.strip.pointer')}</span>
            <strong class="number">{shown(pointer)}</strong>
          </li>
          {(['dew', 'bubble'] as const).map((line) => {
            const temperature = line === 'dew' ? dew : bubble;
            return (
              <li key={line}>
                {onTake ? (
                  <button type="button" onClick={() => onTake(line, temperature)}>
                    <span>{text.t(`panels.sums.${line}`)}</span>{' '}
                    <strong class="number">{text.quantity('temperature', temperature)}</strong>
                  </button>
                ) : (
                  <>
                    <span>{text.t(`panels.strip.${line}`)}</span>
                    <strong class="number">{text.quantity('temperature', temperature)}</strong>
                  </>
                )}
              </li>
            );
          })}
        </ul>
      </div>
      <label class="strip-move">
        <span class="hidden">{text.t('panels.strip.pointer')}</span>
        <input
          type="range"
          min={Math.round(pressureAt(saturation, shape.low + 1) / 1000)}
          max={Math.round(pressureAt(saturation, shape.high - 1) / 1000)}
          value={Math.round(pointer / 1000)}
          aria-valuetext={spoken}
          onInput={(event) => setPointer(1000 * Number(event.currentTarget.value))}
        />
      </label>
      <fieldset class="strip-scale">
        <legend class="soft">{text.t('panels.strip.scale')}</legend>
        <span class="pair">
          {[true, false].map((as) => (
            <button type="button" key={String(as)} aria-pressed={gauge === as} onClick={() => setGauge(as)}>
              {text.t(as ? 'panels.strip.gauge' : 'panels.strip.absolute')}
            </button>
          ))}
        </span>
      </fieldset>
      <p class="strip-air soft">
        {text.t('panels.strip.atmosphere', { pressure: text.quantity('pressure', atmosphere, 100) })}
      </p>
    </figure>
  );
}

function Edge(props: {
  readonly rungs: readonly Rung[];
  readonly x: number;
  readonly to: 1 | -1;
  readonly format: (value: number) => string;
}) {
  return (
    <g>
      {props.rungs.map(({ at, label }) => {
        const y = TOP + HEIGHT * (1 - at);
        const length = label === null ? 5 : 11;
        return (
          <g key={at}>
            <line x1={props.x} x2={props.x + props.to * length} y1={y} y2={y} class="strip-rung" />
            {label !== null && (
              <text x={props.x + props.to * 16} y={y + 5} text-anchor={props.to < 0 ? 'end' : 'start'}>
                {props.format(label)}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}

/** Number for a text field, as the person would type it. */
export function asTyped(kelvin: number, system: Parameters<typeof toShown>[2]): number {
  return Math.round(10 * toShown('temperature', kelvin, system)) / 10;
}
