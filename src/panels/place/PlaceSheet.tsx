/** What fits the place under the hand. One tap takes it; the reading is noted by itself. */

import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Text } from '../../i18n';
import { firstReadingCost } from '../../instruments/places';
import { ChalkQuestion, ChalkToggle } from '../chalk/Chalk';
import { optionName, placeName, quantityName, sentence, valueText } from '../kit/say';
import { useText } from '../kit/text';
import { useSession } from '../session';
import type { ReadingOption } from './options';

export function PlaceSheet() {
  const text = useText();
  const session = useSession();
  const place = session.plant.places.find(({ id }) => id === session.place.value);
  const title = useRef<HTMLHeadingElement>(null);
  useLayoutEffect(() => title.current?.focus(), [place]);
  if (!place) return null;
  const options = session.optionsAt(place.id);
  const last = session.state.value.notes.findLast((note) => note.place === place.id && !note.struck);
  return (
    <section class="place-sheet" aria-labelledby="place-title">
      <header>
        <h2 id="place-title" ref={title} tabIndex={-1}>
          {sentence(placeName(text, place.id))}
        </h2>
        <button
          type="button"
          class="quiet"
          onClick={() => {
            session.placeOpen.value = false;
          }}
        >
          {text.t('panels.place.close')}
        </button>
      </header>
      {session.chalking.value && <ChalkQuestion option={session.chalking.value} />}
      {place.needs?.map((need) => (
        <p key={need} class="soft">
          {text.t(`panels.place.needs.${need}`)}
        </p>
      ))}
      {last && <p class="soft">{text.t('panels.place.previous', { value: valueText(text, last) })}</p>}
      {options.length === 0 && <p>{text.t('panels.place.nothing')}</p>}
      {!session.chalking.value && (
        <ol class="options" aria-label={text.t('panels.place.pick')}>
          {options.map((option, index) => (
            <li key={optionKey(option)}>
              <button type="button" class="row" onClick={() => session.take(option)}>
                <span class="key" aria-hidden="true">
                  {index + 1}
                </span>
                <span class="first">
                  {optionName(text, option)}
                  {needsQuantity(option, options) && <span>: {quantityName(text, option.quantity)}</span>}
                </span>
                <small class="soft">{timeText(text, firstReadingCost(option.instrument, place))}</small>
              </button>
            </li>
          ))}
        </ol>
      )}
      <ChalkToggle />
    </section>
  );
}

/** Rough, as a person would say it. */
function timeText(text: Text, seconds: number): string {
  if (seconds < 55)
    return text.t('panels.place.seconds', { seconds: text.number(Math.max(5, 5 * Math.round(seconds / 5))) });
  return text.t('panels.place.minutes', { minutes: text.number(seconds / 60) });
}

const optionKey = ({ instrument, quantity, channel, insulated }: ReadingOption) =>
  `${instrument}/${quantity}/${channel}/${insulated}`;

/** An instrument that reads one thing here needs no second word. */
function needsQuantity(option: ReadingOption, options: readonly ReadingOption[]): boolean {
  return (
    option.channel === undefined &&
    options.some((other) => other.instrument === option.instrument && other.quantity !== option.quantity)
  );
}
