/** Pipes with what runs in them shown by colour and by hatch. */
import type { Snapshot } from '../../../physics/types';
import type { Spot } from '../geometry/route';
import { type Content, contentAt, type Reach } from '../model/reaches';
import { hatchOf, warmthColour } from './palette';
import { ink, type Pen, stretch } from './pen';

const SLEEVE = 0.055;
/** Length of tube that is painted in one colour, m. */
const PIECE = 0.18;
const LIP = 1.3;

export function paintPipe(pen: Pen, reach: Reach, snapshot: Snapshot | null, inside: boolean): void {
  const whole = stretch(reach.route);
  const { ctx, px } = pen;
  ctx.lineCap = 'butt';
  if (reach.insulated) {
    strokeWide(pen, whole, pen.ink.ink, reach.width + 2 * SLEEVE + 2 * LIP * px);
    strokeWide(pen, whole, pen.ink.sleeve, reach.width + 2 * SLEEVE);
    strokeWide(pen, whole, pen.ink.shine, reach.width + SLEEVE);
  }
  if (!snapshot || !inside) {
    paintClosed(pen, reach, whole);
    ctx.lineCap = 'round';
    return;
  }
  strokeWide(pen, whole, pen.ink.ink, reach.width + 2 * LIP * px);
  paintContents(pen, reach, snapshot);
  roundTube(pen, reach, whole);
  paintHatch(pen, reach, snapshot);
  ctx.lineCap = 'round';
}

/** A pipe as it looks from outside: bare copper, or the sleeve with its seam. */
function paintClosed(pen: Pen, reach: Reach, whole: Path2D): void {
  if (reach.insulated) {
    pen.ctx.setLineDash([0.5, 0.04]);
    ink(pen, whole, { line: pen.ink.inkSoft, weight: 0.8 });
    pen.ctx.setLineDash([]);
    return;
  }
  strokeWide(pen, whole, pen.ink.ink, reach.width + 2 * LIP * pen.px);
  strokeWide(pen, whole, pen.ink.plain, reach.width);
  roundTube(pen, reach, whole);
}

/** A tube is round: its edges lie in shade, its middle catches the light. */
export function roundTube(pen: Pen, reach: Reach, whole: Path2D): void {
  strokeWide(pen, whole, pen.ink.shine, reach.width * 0.42);
}

export function strokeWide(pen: Pen, path: Path2D, colour: string, width: number): void {
  ink(pen, path, { line: colour, weight: width / pen.px });
}

/** The channel in pieces, each in the warmth of what runs there. */
export function paintContents(pen: Pen, reach: Reach, snapshot: Snapshot): void {
  const pieces = Math.max(1, Math.round(reach.route.length / PIECE));
  const content: Content = { temperature: 0, gas: 0 };
  for (let i = 0; i < pieces; i++) {
    contentAt(reach, snapshot, (i + 0.5) / pieces, content);
    // A hair of overlap: two butt ends that only touch leave a seam.
    const to = Math.min(1, (i + 1.06) / pieces);
    strokeWide(pen, stretch(reach.route, i / pieces, to), warmthColour(pen.ink, content.temperature), reach.width);
  }
}

/** Strokes beside the channel: slanting ones for cold, straight ones for hot. */
function paintHatch(pen: Pen, reach: Reach, snapshot: Snapshot): void {
  const content: Content = { temperature: 0, gas: 0 };
  const spot: Spot = { x: 0, y: 0, angle: 0 };
  const strokes = new Path2D();
  const edge = reach.width / 2 + pen.px;
  const out = edge + (reach.insulated ? SLEEVE * 0.75 : 0.04);
  let s = 0.06;
  while (s < reach.route.length - 0.04) {
    contentAt(reach, snapshot, s / reach.route.length, content);
    const { kind, gap } = hatchOf(content.temperature);
    if (kind === 'none') {
      s += 0.1;
      continue;
    }
    reach.route.at(s, spot);
    const lean = kind === 'slant' ? 0.03 : 0;
    for (const side of [-1, 1]) {
      const nx = -Math.sin(spot.angle) * side;
      const ny = Math.cos(spot.angle) * side;
      const tx = Math.cos(spot.angle) * lean;
      const ty = Math.sin(spot.angle) * lean;
      strokes.moveTo(spot.x + nx * edge - tx, spot.y + ny * edge - ty);
      strokes.lineTo(spot.x + nx * out + tx, spot.y + ny * out + ty);
    }
    s += gap;
  }
  ink(pen, strokes, { line: reach.insulated ? pen.ink.ink : pen.ink.inkSoft, weight: 1 });
}
