/**
 * A poly-line with rounded corners, sampled once to a table, so that hundreds of marks can be placed on it each frame.
 */
import type { DrawnPath } from '../../../physics/types';

/** Distance between samples, m. */
const STEP = 0.02;
/** Points of one rounded corner. */
const CORNER_POINTS = 6;

export interface Spot {
  x: number;
  y: number;
  /** direction of travel, radians, y downwards */
  angle: number;
}

export class Route {
  readonly length: number;
  private readonly xs: Float32Array;
  private readonly ys: Float32Array;
  private readonly angles: Float32Array;

  /** @throws Error for fewer than two points or a route without length: a mistake in a plant's drawing. */
  constructor(points: DrawnPath, cornerRadius: number) {
    const rounded = roundCorners(points, cornerRadius);
    const at = cumulative(rounded);
    this.length = at[at.length - 1] ?? 0;
    if (!(this.length > 0)) throw new Error(`a drawn path needs two different points, found ${JSON.stringify(points)}`);
    const count = Math.max(2, Math.ceil(this.length / STEP) + 1);
    this.xs = new Float32Array(count);
    this.ys = new Float32Array(count);
    this.angles = new Float32Array(count);
    let segment = 0;
    for (let i = 0; i < count; i++) {
      const s = (this.length * i) / (count - 1);
      while (segment < rounded.length - 2 && at[segment + 1] < s) segment++;
      const [ax, ay] = rounded[segment];
      const [bx, by] = rounded[segment + 1];
      const span = at[segment + 1] - at[segment];
      const f = span > 0 ? (s - at[segment]) / span : 0;
      this.xs[i] = ax + (bx - ax) * f;
      this.ys[i] = ay + (by - ay) * f;
      this.angles[i] = Math.atan2(by - ay, bx - ax);
    }
  }

  /** Number of samples; `sample(i)` for i in 0 … samples−1 walks the route evenly. */
  get samples(): number {
    return this.xs.length;
  }

  sample(i: number, out: Spot): Spot {
    out.x = this.xs[i];
    out.y = this.ys[i];
    out.angle = this.angles[i];
    return out;
  }

  /** Where one is after `distance` m; clamped to the ends. */
  at(distance: number, out: Spot): Spot {
    const last = this.xs.length - 1;
    const f = Math.min(1, Math.max(0, distance / this.length)) * last;
    const i = Math.min(last - 1, Math.floor(f));
    const g = f - i;
    out.x = this.xs[i] + (this.xs[i + 1] - this.xs[i]) * g;
    out.y = this.ys[i] + (this.ys[i + 1] - this.ys[i]) * g;
    out.angle = this.angles[g < 0.5 ? i : i + 1];
    return out;
  }

  /** Share 0…1 of the way at which the route is inside this box, or null: where a part sits on a pipe. */
  within(box: { x: number; y: number; w: number; h: number }): { from: number; to: number } | null {
    let from = -1;
    let to = -1;
    const last = this.xs.length - 1;
    for (let i = 0; i <= last; i++) {
      const inside =
        this.xs[i] >= box.x && this.xs[i] <= box.x + box.w && this.ys[i] >= box.y && this.ys[i] <= box.y + box.h;
      if (!inside) continue;
      if (from < 0) from = i / last;
      to = i / last;
    }
    return from < 0 ? null : { from, to };
  }
}

type Point = readonly [number, number];

function roundCorners(points: DrawnPath, radius: number): Point[] {
  const out: Point[] = [];
  for (let i = 0; i < points.length; i++) {
    const here = points[i];
    const before = points[i - 1];
    const after = points[i + 1];
    if (!before || !after) {
      out.push(here);
      continue;
    }
    const inLength = Math.hypot(here[0] - before[0], here[1] - before[1]);
    const outLength = Math.hypot(after[0] - here[0], after[1] - here[1]);
    const cut = Math.min(radius, inLength / 2, outLength / 2);
    const a = toward(here, before, cut, inLength);
    const b = toward(here, after, cut, outLength);
    for (let k = 0; k <= CORNER_POINTS; k++) {
      const t = k / CORNER_POINTS;
      const u = 1 - t;
      out.push([u * u * a[0] + 2 * u * t * here[0] + t * t * b[0], u * u * a[1] + 2 * u * t * here[1] + t * t * b[1]]);
    }
  }
  return out;
}

function toward(from: Point, to: Point, distance: number, length: number): Point {
  const f = length > 0 ? distance / length : 0;
  return [from[0] + (to[0] - from[0]) * f, from[1] + (to[1] - from[1]) * f];
}

function cumulative(points: readonly Point[]): number[] {
  const at = [0];
  for (let i = 1; i < points.length; i++) {
    at.push(at[i - 1] + Math.hypot(points[i][0] - points[i - 1][0], points[i][1] - points[i - 1][1]));
  }
  return at;
}
