/** The drawn machine and what lies on it: the instrument in the hand, the last readings, the sheet of a place. */
import { effect } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { type BenchHandle, benchWords, mountBench } from '../../bench';
import type { Text } from '../../i18n';
import { instrumentName, optionName } from '../../panels/kit/say';
import { useText } from '../../panels/kit/text';
import { type ReadingOption, sameOption } from '../../panels/place/options';
import { PlaceSheet } from '../../panels/place/PlaceSheet';
import { type Session, useSession } from '../../panels/session';
import { reducedMotion, shownTheme, text as words } from '../preferences';
import { PassingTime } from './Passing';
import { tagsOf } from './tags';

/** Round the sheet of a place, and between it and its place, CSS px. */
const SHEET_GAP = 12;
const PLACE_ROOM = 26;

/** How much livelier what moves is while minutes are played. */
const LAPSE_PACE = 2;

interface Props {
  readonly onBench: (bench: BenchHandle | null) => void;
  /** lies over the top of the drawing */
  readonly children?: ComponentChildren;
}

export function Stage({ onBench, children }: Props) {
  const text = useText();
  const session = useSession();
  const host = useRef<HTMLDivElement>(null);
  const handle = useRef<BenchHandle | null>(null);
  useEffect(() => {
    if (!host.current) return;
    const bench = mountBench(host.current, session.plant.drawing, session.plant.places, {
      words: benchWords(words.peek()),
      light: shownTheme.peek(),
      motion: reducedMotion.peek() ? 'reduced' : 'full',
      inside: session.seesInside.peek(),
    });
    bench.onPlace((place) => touch(session, place));
    const stops = [
      effect(() => bench.update(session.snapshot.value)),
      effect(() => bench.select(session.place.value)),
      effect(() => bench.setInside(session.seesInside.value)),
      effect(() => bench.setPace(session.passing.value ? LAPSE_PACE : 1)),
      effect(() => bench.setTheme(shownTheme.value)),
      effect(() => bench.setMotion(reducedMotion.value ? 'reduced' : 'full')),
      effect(() => bench.setWords(benchWords(words.value))),
      effect(() => bench.setTags(tagsOf(words.value, session.state.value, session.clock.value))),
    ];
    onBench(bench);
    handle.current = bench;
    return () => {
      handle.current = null;
      for (const stop of stops) stop();
      onBench(null);
      bench.destroy();
    };
  }, [session, onBench]);
  const held = session.held.value;
  useLayoutEffect(() => {
    if (host.current && handle.current) keepPlaceInSight(host.current, handle.current, session.place.peek());
  });
  return (
    <section class="stage" aria-label={text.t('bench.name')}>
      <div class="stage-host" id="machine" tabIndex={-1} ref={host} />
      <div class="stage-over">
        {children}
        <div class="stage-hand" data-over-bench>
          {held && (
            <button
              type="button"
              class="stage-held"
              aria-label={text.t('panels.place.putDownWhat', { instrument: optionName(text, held) })}
              onClick={() => {
                session.held.value = null;
              }}
            >
              <span class="first">{heldName(text, held)}</span> <span aria-hidden="true">✕</span>
            </button>
          )}
          {session.state.value.undo.length > 0 && (
            <button type="button" onClick={() => session.dispatch({ kind: 'undo' })}>
              <span aria-hidden="true">↶</span> <span class="undo-word">{text.t('panels.tray.undo')}</span>
            </button>
          )}
        </div>
      </div>
      <PassingTime />
      {session.placeOpen.value && <PlaceSheet />}
    </section>
  );
}

/** The sheet of a place lies over the foot of the drawing, or over the sky if it would hide its own place there. */
function keepPlaceInSight(host: HTMLElement, bench: BenchHandle, place: string | null): void {
  const sheet = host.parentElement?.querySelector<HTMLElement>('.place-sheet');
  const spot = bench.placePositions().find(({ id }) => id === place);
  if (!sheet || !spot) return;
  const guide = host.parentElement?.querySelector<HTMLElement>('.guide');
  const from = SHEET_GAP + (guide ? guide.offsetTop + guide.offsetHeight : 0);
  const hidden = spot.y + PLACE_ROOM > host.clientHeight - sheet.offsetHeight - SHEET_GAP;
  const fits = from + sheet.offsetHeight + PLACE_ROOM < spot.y;
  sheet.dataset.at = hidden && fits ? 'top' : 'foot';
  sheet.style.setProperty('--from', `${from}px`);
}

/** Short: the place names the rest when it is read. */
function heldName(text: Text, held: ReadingOption): string {
  return held.channel ? optionName(text, held) : instrumentName(text, held.instrument);
}

/**
 * A place was tapped. With an instrument in the hand that fits, it is read; a second tap on the place just read opens
 * the sheet, for another instrument.
 */
export function touch(session: Session, place: string): void {
  const held = session.held.value;
  const last = session.state.value.notes.at(-1);
  const again = session.place.value === place && last?.place === place;
  session.place.value = place;
  if (held && !again && session.optionsAt(place).some((option) => sameOption(option, held))) session.take(held);
  else session.placeOpen.value = true;
}
