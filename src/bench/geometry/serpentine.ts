/** The tube of a coil: rows to and fro from the edge where refrigerant comes in to the opposite edge. */
import type { DrawnPart, DrawnPath } from '../../../physics/types';

/** Distance between rows that the drawing aims at, m. */
const PITCH = 0.165;
/** How far the rows end before the coil's own edge, so that the bends stand free of the fins, m. */
export const BEND = 0.06;
/** First and last row from the edges when the pipe does not say where, m. */
const MARGIN = 0.08;

type Point = readonly [number, number];

export interface Serpentine {
  readonly points: DrawnPath;
  /** distance between two rows, m */
  readonly pitch: number;
}

/**
 * `start` and `end` are where the pipes meet the coil. Works along `u` (from inlet edge to outlet edge) and across `v`;
 * the number of rows has the parity that brings the last one out on the side where the outlet pipe waits.
 */
export function serpentine(coil: DrawnPart, start: Point, end: Point): Serpentine {
  const inlet = coil.inlet ?? 'top';
  const vertical = inlet === 'top' || inlet === 'bottom';
  const flipped = inlet === 'bottom' || inlet === 'right';
  const depth = vertical ? coil.h : coil.w;
  const breadth = vertical ? coil.w : coil.h;
  const toLocal = ([x, y]: Point): Point => {
    const u = vertical ? y - coil.y : x - coil.x;
    return [flipped ? depth - u : u, vertical ? x - coil.x : y - coil.y];
  };
  const toWorld = ([u, v]: Point): Point => {
    const along = flipped ? depth - u : u;
    return vertical ? [coil.x + v, coil.y + along] : [coil.x + along, coil.y + v];
  };
  const s = toLocal(start);
  const e = toLocal(end);
  const first = s[0] < 0.02 ? MARGIN : s[0];
  const last = e[0] > depth - 0.02 ? depth - MARGIN : e[0];
  const low = BEND;
  const high = breadth - BEND;
  const startsHigh = s[1] > breadth / 2;
  const endsHigh = e[1] > breadth / 2;
  const onSide = (v: number) => v < 0.02 || v > breadth - 0.02;
  const free = !onSide(s[1]) || !onSide(e[1]);
  let rows = Math.max(2, Math.round((last - first) / PITCH) + 1);
  const even = startsHigh === endsHigh;
  if (!free && (rows % 2 === 0) !== even) rows += 1;
  const pitch = (last - first) / (rows - 1);
  const points: Point[] = [s];
  let isHigh = startsHigh;
  for (let row = 0; row < rows; row++) {
    const u = first + pitch * row;
    points.push([u, isHigh ? high : low], [u, isHigh ? low : high]);
    isHigh = !isHigh;
  }
  points.push(e);
  return { points: points.map(toWorld), pitch };
}
