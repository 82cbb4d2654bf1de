/**
 * Real buttons over the drawing, one a place, in the order of the refrigerant path. The drawing itself is hidden from
 * assistive technology; this list is its other face. One stop for the Tab key, arrows walk the list.
 */
import type { Place, PlantDrawing } from '../../physics/types';
import './bench.css';
import { contains, type Layout, TARGET, type ViewId, viewOf } from './geometry/layout';
import { placeTags } from './geometry/tagPlacement';
import { placeIcon } from './icons';
import type { BenchWords, PlacePosition, PlaceTag } from './types';

export interface Overlay {
  setWords(words: BenchWords): void;
  setLayout(layout: Layout): void;
  select(placeId: string | null): void;
  focus(placeId?: string): void;
  setTags(tags: Readonly<Record<string, PlaceTag>>): void;
  positions(): PlacePosition[];
  destroy(): void;
}

export interface OverlayEvents {
  onPlace(placeId: string): void;
  /** a part of the site was chosen, or focus walked into it */
  onView(view: ViewId): void;
}

interface Spot {
  readonly place: Place;
  view: ViewId;
  readonly item: HTMLLIElement;
  readonly button: HTMLButtonElement;
  readonly name: HTMLSpanElement;
  readonly tag: HTMLSpanElement;
  /** the reading that hangs there; the tag may show what the instrument has come to since */
  noted: string | null;
}

/** Keys that walk the list, and by how many places. */
const STEPS: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };
/** More parts of the site than this are a list to choose from. */
const MOST_BUTTONS = 4;
/** Width from which a part of the map bears its whole name, CSS px. */
const FULL_NAME = 76;
/** Room that a name needs beside its place before it would be cut off by the edge, CSS px. */
const NAME_ROOM = 120;

export function createOverlay(
  host: HTMLElement,
  drawing: PlantDrawing,
  places: readonly Place[],
  words: BenchWords,
  events: OverlayEvents,
): Overlay {
  const list = document.createElement('ul');
  list.className = 'bench-places';
  const views = document.createElement('div');
  views.className = 'bench-views';
  views.setAttribute('role', 'group');
  const regions = document.createElement('div');
  regions.className = 'bench-regions';
  regions.setAttribute('role', 'group');
  const ordered = [...places].sort((a, b) => a.order - b.order);
  const spots = ordered.map((place) => makeSpot(place, viewOf(drawing, place)));
  list.append(...spots.map((spot) => spot.item));
  host.append(list, regions, views);

  let said = words;
  let layout: Layout | null = null;
  let current = 0;
  let selected: string | null = null;
  /** places with tags, oldest reading first */
  let order: readonly string[] = [];

  function makeSpot(place: Place, view: ViewId): Spot {
    const item = document.createElement('li');
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'bench-place';
    button.dataset.place = place.id;
    button.dataset.kind = place.kind;
    const mark = document.createElement('span');
    mark.className = 'bench-mark';
    mark.append(placeIcon(place.kind));
    const name = document.createElement('span');
    name.className = 'bench-name';
    const tag = document.createElement('span');
    tag.className = 'bench-tag';
    tag.hidden = true;
    button.append(mark, name, ' ', tag);
    item.append(button);
    button.addEventListener('click', () => events.onPlace(place.id));
    return { place, view, item, button, name, tag, noted: null };
  }

  function moveTo(index: number, takeFocus: boolean): void {
    current = Math.min(spots.length - 1, Math.max(0, index));
    spots.forEach((spot, i) => {
      spot.button.tabIndex = i === current ? 0 : -1;
    });
    if (!takeFocus) return;
    const spot = spots[current];
    bringIntoView(spot);
    spot.button.focus();
  }

  function bringIntoView(spot: Spot): void {
    if (layout && !isShown(spot)) events.onView(spot.view);
  }

  /**
   * A place of the other half that happens to lie well inside the picture is as good as one of this half; where there are
   * many alike, only those of the part that was chosen, so that nobody takes one room's for another's.
   */
  function isShown(spot: Spot): boolean {
    if (!layout || layout.view === spot.view) return true;
    if (layout.view === 'whole') return !layout.overview;
    if (layout.choices[0] === 'whole') return false;
    const { left, top, scale, width, height } = layout;
    const x = left + spot.place.x * scale;
    const y = top + spot.place.y * scale;
    return contains({ x: TARGET / 2, y: TARGET / 2, w: width - TARGET, h: height - TARGET }, { x, y });
  }

  function onKey(event: KeyboardEvent): void {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const step = STEPS[event.key];
    if (step !== undefined) moveTo(current + step, true);
    else if (event.key === 'Home') moveTo(0, true);
    else if (event.key === 'End') moveTo(spots.length - 1, true);
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  function onFocus(event: FocusEvent): void {
    const index = spots.findIndex((spot) => spot.button === event.target);
    if (index < 0) return;
    moveTo(index, false);
    bringIntoView(spots[index]);
  }

  function place(spot: Spot, at: Layout): void {
    if (at.choices.length > 1) spot.view = viewOf(drawing, spot.place, at.choices);
    const x = at.left + spot.place.x * at.scale;
    const y = at.top + spot.place.y * at.scale;
    spot.item.style.setProperty('--x', `${x.toFixed(1)}px`);
    spot.item.style.setProperty('--y', `${y.toFixed(1)}px`);
    spot.item.classList.toggle('away', !isShown(spot));
    spot.button.dataset.side = x < NAME_ROOM ? 'right' : x > at.width - NAME_ROOM ? 'left' : 'middle';
    spot.button.dataset.below = String(y < TARGET * 1.5);
  }

  /** Hangs the tags anew, so that none covers another. */
  function hangTags(): void {
    if (!layout) return;
    const at = layout;
    const middle = ({ place: { x, y } }: Spot) => ({ x: at.left + x * at.scale, y: at.top + y * at.scale });
    const hung = [...order]
      .reverse()
      .flatMap((id) => spots.find((spot) => spot.place.id === id && isShown(spot)) ?? []);
    // The name of the place under the hand is shown as long as no reading hangs there.
    const named = spots.find((spot) => spot.place.id === selected && spot.tag.hidden);
    const offsets = placeTags(
      hung.map((spot) => ({ ...middle(spot), w: spot.tag.offsetWidth, h: spot.tag.offsetHeight })),
      {
        width: at.width,
        height: at.height,
        marks: spots.filter(isShown).map(middle),
        blocked: [views, ...laidOver(), ...(named && isShown(named) ? [named.name] : [])].map(boxInHost),
      },
    );
    hung.forEach(({ button }, i) => {
      const { dx, dy } = offsets[i];
      button.style.setProperty('--dx', `${dx.toFixed(1)}px`);
      button.style.setProperty('--dy', `${dy.toFixed(1)}px`);
      button.style.setProperty('--reach', `${Math.hypot(dx, dy).toFixed(1)}px`);
      button.style.setProperty('--turn', `${Math.atan2(dy, dx).toFixed(3)}rad`);
    });
  }

  /** What the page lays over the picture and marks as such: a tag under it could not be read. */
  const laidOver = () => [...(host.parentElement?.querySelectorAll<HTMLElement>('[data-over-bench]') ?? [])];

  function boxInHost(element: HTMLElement): { x: number; y: number; w: number; h: number } {
    const box = element.getBoundingClientRect();
    const frame = host.getBoundingClientRect();
    return { x: box.x - frame.x, y: box.y - frame.y, w: box.width, h: box.height };
  }

  function sayWords(): void {
    list.setAttribute('aria-label', said.machine);
    list.setAttribute('aria-description', said.help);
    views.setAttribute('aria-label', said.chooseView);
    regions.setAttribute('aria-label', said.chooseView);
    for (const spot of spots) {
      spot.name.textContent = said.shortPlace(spot.place);
      const name = said.shortPlace(spot.place);
      const full = said.place(spot.place);
      // As it stands there for the eye: name, reading, then what the name alone does not say.
      const tag = spot.noted === null ? '' : `, ${spot.noted}`;
      const rest = full.startsWith(name) ? full.slice(name.length) : `, ${full}`;
      spot.button.setAttribute('aria-label', name + tag + rest);
    }
    showViews();
    showRegions();
  }

  function showViews(): void {
    const choices = layout && layout.choices.length > 1 ? layout.choices : [];
    views.hidden = choices.length === 0;
    views.replaceChildren(...(choices.length > MOST_BUTTONS ? viewList(choices) : choices.map(viewButton)));
  }

  function viewButton(view: ViewId): HTMLButtonElement {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = said.view(view);
    button.dataset.view = view;
    button.setAttribute('aria-pressed', String(layout?.view === view));
    button.addEventListener('click', () => {
      events.onView(view);
      // The buttons were made afresh by the new layout; keep the focus where the finger or key was.
      views.querySelector<HTMLButtonElement>(`[data-view="${view}"]`)?.focus();
    });
    return button;
  }

  /** Many parts: a button for the map, a list for the rest. */
  function viewList(choices: readonly ViewId[]): HTMLElement[] {
    const [whole, ...found] = choices;
    // Rooms by their number, whatever floor they are on.
    const named = new Intl.Collator(undefined, { numeric: true });
    const parts = found.sort((a, b) => named.compare(said.view(a), said.view(b)));
    const pick = document.createElement('select');
    pick.setAttribute('aria-label', said.chooseView);
    const none = new Option(said.chooseView, '', true, layout?.overview ?? false);
    none.disabled = true;
    pick.append(none, ...parts.map((view) => new Option(said.view(view), view, false, layout?.view === view)));
    pick.addEventListener('change', () => {
      events.onView(pick.value);
      views.querySelector('select')?.focus();
    });
    return [viewButton(whole), pick];
  }

  /** On the map each part of the site is a button that goes there. */
  function showRegions(): void {
    const at = layout;
    regions.hidden = !at?.overview;
    if (!at?.overview) {
      regions.replaceChildren();
      return;
    }
    regions.replaceChildren(
      ...drawing.views
        .filter(({ id }) => at.choices.includes(id))
        .map(({ id, x, y, w, h }) => {
          const button = document.createElement('button');
          button.type = 'button';
          button.dataset.region = id;
          const name = document.createElement('span');
          const full = said.view(id);
          // A room that is a thumb wide bears its number alone; what has none, the sign of lines.
          name.textContent = w * at.scale < FULL_NAME ? (/\d+$/.exec(id)?.[0] ?? '≡') : full;
          button.setAttribute('aria-label', full);
          button.title = full;
          button.append(name);
          button.style.left = `${(at.left + x * at.scale).toFixed(1)}px`;
          button.style.top = `${(at.top + y * at.scale).toFixed(1)}px`;
          button.style.width = `${(w * at.scale).toFixed(1)}px`;
          button.style.height = `${(h * at.scale).toFixed(1)}px`;
          button.addEventListener('click', () => {
            events.onView(id);
            list.querySelector<HTMLButtonElement>('li:not(.away) .bench-place')?.focus();
          });
          return button;
        }),
    );
  }

  list.addEventListener('keydown', onKey);
  list.addEventListener('focusin', onFocus);
  moveTo(0, false);
  sayWords();

  return {
    setWords(next) {
      said = next;
      sayWords();
      hangTags();
    },
    setLayout(next) {
      layout = next;
      for (const spot of spots) place(spot, next);
      showViews();
      showRegions();
      hangTags();
    },
    select(placeId) {
      selected = placeId;
      spots.forEach((spot, i) => {
        const isChosen = spot.place.id === selected;
        if (isChosen) spot.button.setAttribute('aria-current', 'true');
        else spot.button.removeAttribute('aria-current');
        if (!isChosen) return;
        moveTo(i, false);
        bringIntoView(spot);
      });
      hangTags();
    },
    focus(placeId) {
      const index = placeId === undefined ? current : spots.findIndex((spot) => spot.place.id === placeId);
      moveTo(index < 0 ? current : index, true);
    },
    setTags(tags) {
      let renamed = false;
      // A number that runs keeps its width; only another set of tags, or another length, wants other spots.
      let moved = order.join() !== Object.keys(tags).join();
      order = Object.keys(tags);
      for (const spot of spots) {
        const tag = tags[spot.place.id];
        spot.tag.hidden = tag === undefined;
        const shown = tag?.shown ?? '';
        moved ||= spot.tag.textContent?.length !== shown.length;
        if (spot.tag.textContent !== shown) spot.tag.textContent = shown;
        spot.tag.dataset.live = String(tag?.live ?? false);
        renamed ||= spot.noted !== (tag?.noted ?? null);
        spot.noted = tag?.noted ?? null;
      }
      // A tag that runs with the machine leaves the names alone: a screen reader would say each of its steps.
      if (renamed) sayWords();
      if (moved) hangTags();
    },
    positions() {
      if (!layout) return [];
      const at = layout;
      return spots.map((spot) => ({
        id: spot.place.id,
        x: at.left + spot.place.x * at.scale,
        y: at.top + spot.place.y * at.scale,
        visible: isShown(spot),
      }));
    },
    destroy() {
      list.remove();
      views.remove();
      regions.remove();
    },
  };
}
