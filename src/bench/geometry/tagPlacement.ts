/** Where tags hang, so that none covers another, a place, or a button: each takes the best of a few spots round its place. */

export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

export interface TagToPlace {
  /** middle of its place, CSS px */
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** Middle of a tag from the middle of its place, CSS px. */
export interface TagOffset {
  readonly dx: number;
  readonly dy: number;
}

export interface Surroundings {
  readonly width: number;
  readonly height: number;
  /** middles of the places' marks that are shown */
  readonly marks: readonly { readonly x: number; readonly y: number }[];
  /** what must not be covered at all */
  readonly blocked: readonly Rect[];
}

/** Half the side of a mark, and the clear space between it and its tag, CSS px. */
const MARK = 12;
const CLEAR = 4;
/** How bad a square pixel of overlap is: over the edge of the picture, with a button, another tag, a mark. */
const COST = { outside: 40, blocked: 20, tag: 10, mark: 4 } as const;
/** Any overlap but with a mark is worse than the furthest spot. */
const FORBIDDEN = 1e4;
/** A px further from its place weighs this much. */
const FAR = 0.5;

/** Rings round the place: as near as can be, and one and two tags further out. */
const RINGS = [0, 1, 2] as const;
const SIDES: readonly (readonly [number, number])[] = [
  [0, 1],
  [0, -1],
  [1, 0],
  [-1, 0],
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
];

/** One offset a tag, in their order. Every order of choosing is tried: the tags are few. */
export function placeTags(tags: readonly TagToPlace[], around: Surroundings): TagOffset[] {
  let best: Hung = { offsets: [], cost: Number.POSITIVE_INFINITY };
  for (const order of ordersOf(tags.map((_tag, i) => i))) {
    const hung = hangInOrder(tags, order, around);
    if (hung.cost < best.cost) best = hung;
  }
  return [...best.offsets];
}

interface Hung {
  readonly offsets: readonly TagOffset[];
  readonly cost: number;
}

/** Each tag in this order takes the best spot that those before it left. */
function hangInOrder(tags: readonly TagToPlace[], order: readonly number[], around: Surroundings): Hung {
  const offsets: TagOffset[] = [];
  const taken: Rect[] = [];
  let total = 0;
  for (const i of order) {
    const tag = tags[i];
    let least = Number.POSITIVE_INFINITY;
    for (const wish of offsetsOf(tag)) {
      const offset = keptInside(tag, wish, around);
      const cost = costOf(rectOf(tag, offset), offset, taken, around);
      if (cost >= least) continue;
      least = cost;
      offsets[i] = offset;
    }
    total += least;
    taken.push(rectOf(tag, offsets[i]));
  }
  return { offsets, cost: total };
}

function ordersOf(items: readonly number[]): number[][] {
  if (items.length === 0) return [[]];
  return items.flatMap((item) => ordersOf(items.filter((other) => other !== item)).map((rest) => [item, ...rest]));
}

/** Moved sideways, so far that it does not reach over the edge. */
function keptInside(tag: TagToPlace, { dx, dy }: TagOffset, { width }: Surroundings): TagOffset {
  const half = tag.w / 2;
  return { dx: Math.min(width - half - tag.x, Math.max(half - tag.x, dx)), dy };
}

function offsetsOf({ w, h }: TagToPlace): TagOffset[] {
  return RINGS.flatMap((ring) =>
    SIDES.map(([sx, sy]) => ({
      dx: sx * (MARK + CLEAR + w / 2 + ring * 0.5 * w),
      dy: sy * (MARK + CLEAR + h / 2 + ring * (h + CLEAR)),
    })),
  );
}

const rectOf = ({ x, y, w, h }: TagToPlace, { dx, dy }: TagOffset): Rect => ({
  x: x + dx - w / 2,
  y: y + dy - h / 2,
  w,
  h,
});

function costOf(
  rect: Rect,
  { dx, dy }: TagOffset,
  taken: readonly Rect[],
  { width, height, marks, blocked }: Surroundings,
): number {
  const bad = (area: number, weight: number) => (area > 0 ? FORBIDDEN + weight * area : 0);
  const outside = rect.w * rect.h - overlap(rect, { x: 0, y: 0, w: width, h: height });
  // What is left of a difference of two equal areas is no overlap.
  let cost = bad(outside > 0.5 ? outside : 0, COST.outside) + FAR * Math.hypot(dx, dy);
  for (const other of blocked) cost += bad(overlap(rect, other), COST.blocked);
  for (const other of taken) cost += bad(overlap(rect, grown(other, CLEAR / 2)), COST.tag);
  for (const mark of marks) {
    cost += COST.mark * overlap(rect, { x: mark.x - MARK, y: mark.y - MARK, w: 2 * MARK, h: 2 * MARK });
  }
  return cost;
}

function grown({ x, y, w, h }: Rect, by: number): Rect {
  return { x: x - by, y: y - by, w: w + 2 * by, h: h + 2 * by };
}

/** Area that two boxes share, px2. */
export function overlap(a: Rect, b: Rect): number {
  const w = Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x);
  const h = Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y);
  return w > 0 && h > 0 ? w * h : 0;
}
