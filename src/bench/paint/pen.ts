/** A 2D context that draws in metres, with line weights in CSS px so that they stay the same at every zoom. */
import type { DrawnPath } from '../../../physics/types';
import type { Layout } from '../geometry/layout';
import type { Route, Spot } from '../geometry/route';
import type { Palette } from './palette';

type Context = CanvasRenderingContext2D;

export interface Pen {
  readonly ctx: Context;
  readonly ink: Palette;
  /** one CSS px in metres */
  readonly px: number;
  /** the part of the drawing's plane that the element shows, m */
  readonly seen: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };
}

export function penFor(ctx: Context, palette: Palette, layout: Layout, density: number): Pen {
  const k = layout.scale * density;
  ctx.setTransform(k, 0, 0, k, layout.left * density, layout.top * density);
  ctx.lineCap = 'round';
  ctx.lineJoin = 'round';
  return {
    ctx,
    ink: palette,
    px: 1 / layout.scale,
    seen: {
      left: -layout.left / layout.scale,
      top: -layout.top / layout.scale,
      right: (layout.width - layout.left) / layout.scale,
      bottom: (layout.height - layout.top) / layout.scale,
    },
  };
}

export interface Stroke {
  readonly fill?: string | CanvasGradient;
  readonly line?: string;
  /** CSS px */
  readonly weight?: number;
}

export function ink(pen: Pen, path: Path2D, { fill, line, weight = 1 }: Stroke): void {
  if (fill) {
    pen.ctx.fillStyle = fill;
    pen.ctx.fill(path);
  }
  if (line) {
    pen.ctx.strokeStyle = line;
    pen.ctx.lineWidth = weight * pen.px;
    pen.ctx.stroke(path);
  }
}

export function box(x: number, y: number, w: number, h: number, radius = 0): Path2D {
  const path = new Path2D();
  if (radius > 0) path.roundRect(x, y, w, h, Math.min(radius, w / 2, h / 2));
  else path.rect(x, y, w, h);
  return path;
}

export function polygon(points: DrawnPath): Path2D {
  const path = open(points);
  path.closePath();
  return path;
}

export function open(points: DrawnPath): Path2D {
  const path = new Path2D();
  points.forEach(([x, y], i) => {
    if (i === 0) path.moveTo(x, y);
    else path.lineTo(x, y);
  });
  return path;
}

export function disc(x: number, y: number, radius: number): Path2D {
  const path = new Path2D();
  path.arc(x, y, radius, 0, 2 * Math.PI);
  return path;
}

/** Colours from one point to another, as `[share of the way, colour]`. */
export function blend(
  pen: Pen,
  from: readonly [number, number],
  to: readonly [number, number],
  stops: readonly (readonly [number, string])[],
): CanvasGradient {
  const gradient = pen.ctx.createLinearGradient(from[0], from[1], to[0], to[1]);
  for (const [at, colour] of stops) gradient.addColorStop(at, colour);
  return gradient;
}

/** A thing in the round: lit from the upper left, its far side in shade. Laid over its own colour. */
export function model(pen: Pen, path: Path2D, { x, y, w, h }: { x: number; y: number; w: number; h: number }): void {
  const none = 'rgb(128 128 128 / 0)';
  const across: [number, number] = w < h ? [x + w, y] : [x, y + h];
  const { shine, shade } = pen.ink;
  ink(pen, path, {
    fill: blend(pen, [x, y], across, [
      [0, shade],
      [0.12, none],
      [0.3, shine],
      [0.5, none],
      [1, shade],
    ]),
  });
}

/** What a thing throws on the wall behind it. */
export function shadow(pen: Pen, { x, y, w, h }: { x: number; y: number; w: number; h: number }, radius = 0): void {
  for (const off of [0.03, 0.06, 0.09]) {
    pen.ctx.globalAlpha = 0.4;
    ink(pen, box(x + off, y + off, w, h, radius + off / 2), { fill: pen.ink.shade });
  }
  pen.ctx.globalAlpha = 1;
}

/** Strokes at 45° inside a shape: what the section cuts through. */
export function hatch(
  pen: Pen,
  shape: Path2D,
  area: { x: number; y: number; w: number; h: number },
  gap: number,
): void {
  const { ctx } = pen;
  ctx.save();
  ctx.clip(shape);
  const strokes = new Path2D();
  for (let c = area.x - area.h; c < area.x + area.w; c += gap) {
    strokes.moveTo(c, area.y + area.h);
    strokes.lineTo(c + area.h, area.y);
  }
  ctx.lineCap = 'butt';
  ink(pen, strokes, { line: pen.ink.cutHatch, weight: 0.9 });
  ctx.restore();
}

/** A stretch of a route as a path; `from`, `to` are shares of its length. */
export function stretch(route: Route, from = 0, to = 1): Path2D {
  const path = new Path2D();
  const spot: Spot = { x: 0, y: 0, angle: 0 };
  const last = route.samples - 1;
  const first = Math.floor(from * last);
  const end = Math.max(first + 1, Math.ceil(to * last));
  for (let i = first; i <= end; i++) {
    route.sample(Math.min(last, i), spot);
    if (i === first) path.moveTo(spot.x, spot.y);
    else path.lineTo(spot.x, spot.y);
  }
  return path;
}
