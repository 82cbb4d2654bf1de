/** How the drawing lies in the element that shows it: whole if every place can be hit by a finger, else a part of it. */
import type { Place, PlantDrawing } from '../../../physics/types';

/** Smallest target and smallest distance between two, CSS px (WCAG 2.2, 2.5.5). */
export const TARGET = 44;

/** The list of parts with its margin, CSS px. */
const LIST_HEIGHT = 60;

/** Share of the spare height that goes to the sky rather than to the ground. */
const SKY = 0.7;

/** 'whole', or one of the drawing's views. */
export type ViewId = string;

export interface Layout {
  readonly view: ViewId;
  /** what one may choose from; only 'whole' when everything fits */
  readonly choices: readonly ViewId[];
  /** the whole as a map of the views: places are too close there to be hit */
  readonly overview: boolean;
  /** CSS px a metre */
  readonly scale: number;
  /** CSS px of the drawing's origin in the element */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** Distance in which two square targets do not touch, m, over the places inside a box. */
export function closestPair(places: readonly Place[], box: Box): number {
  const inside = places.filter((place) => contains(box, place));
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < inside.length; i++) {
    for (let j = i + 1; j < inside.length; j++) {
      const apart = Math.max(Math.abs(inside[i].x - inside[j].x), Math.abs(inside[i].y - inside[j].y));
      if (apart < least) least = apart;
    }
  }
  return least;
}

export function contains(box: Box, spot: { readonly x: number; readonly y: number }): boolean {
  return spot.x >= box.x && spot.x <= box.x + box.w && spot.y >= box.y && spot.y <= box.y + box.h;
}

/** The view among these in which a place is shown. @throws Error if the drawing shows it nowhere. */
export function viewOf(drawing: PlantDrawing, place: Place, among: readonly ViewId[] = viewIds(drawing)): ViewId {
  const side = place.side === 'line' ? 'outdoor' : place.side;
  const holds = drawing.views.filter((view) => among.includes(view.id) && contains(view, place));
  const view = holds.find((candidate) => candidate.id === side) ?? holds[0];
  if (!view) throw new Error(`place "${place.id}" at ${place.x}, ${place.y} m lies in no view of the drawing`);
  return view.id;
}

const viewIds = (drawing: PlantDrawing): ViewId[] => drawing.views.map(({ id }) => id);

export function layOut(
  drawing: PlantDrawing,
  places: readonly Place[],
  width: number,
  height: number,
  wanted: ViewId,
): Layout {
  const whole: Box = { x: 0, y: 0, w: drawing.width, h: drawing.height };
  // A list of many parts stands at the foot of the picture, and nothing that can be hit stands behind it.
  const room = drawing.views.some(({ grain }) => grain !== undefined) ? Math.max(1, height - LIST_HEIGHT) : height;
  const canHit = (box: Box, high: number) => closestPair(places, box) * scaleToFit(box, width, high) >= TARGET;
  const choices = choicesFor(drawing, canHit(whole, height), (box) => canHit(box, room));
  const view = choices.includes(wanted) ? wanted : choices[0];
  const box: Box = drawing.views.find((candidate) => candidate.id === view) ?? whole;
  const shown = choices.length > 1 ? room : height;
  const scale = scaleToFit(box, width, shown);
  return {
    view,
    choices,
    overview: view === 'whole' && choices.length > 1,
    scale,
    left: width / 2 - (box.x + box.w / 2) * scale,
    top: (shown - box.h * scale) * SKY - box.y * scale,
    width,
    height,
  };
}

/** The whole if every place can be hit there; else its parts, as coarse as can be, and the whole as a map of them. */
function choicesFor({ views }: PlantDrawing, wholeFits: boolean, canHit: (box: Box) => boolean): ViewId[] {
  if (wholeFits) return ['whole'];
  const grained = views.some(({ grain }) => grain !== undefined);
  if (!grained) return views.map(({ id }) => id);
  const coarse = views.filter(({ grain }) => grain !== 'fine');
  const shown = coarse.every(canHit) ? coarse : views.filter(({ grain }) => grain !== 'coarse');
  return ['whole', ...shown.map(({ id }) => id)];
}

function scaleToFit(box: Box, width: number, height: number): number {
  return Math.min(width / box.w, height / box.h);
}
