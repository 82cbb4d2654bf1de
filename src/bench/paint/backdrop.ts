/** What lies behind the site: sky, clouds, roofs and trees far off. It tells of out of doors and keeps out of the way. */
import { grain } from './grain';
import { blend, box, ink, type Pen } from './pen';

/** Width of one house or tree of the skyline, m. */
const PLOT = 0.95;

export function paintBackdrop(pen: Pen, ground: number): void {
  const { left, top, right } = pen.seen;
  ink(pen, box(left, top, right - left, ground - top), {
    fill: blend(
      pen,
      [0, top],
      [0, ground],
      [
        [0, pen.ink.zenith],
        [0.75, pen.ink.sky],
        [1, pen.ink.sky],
      ],
    ),
  });
  paintClouds(pen, ground);
  paintSkyline(pen, ground, 1.9, 71, pen.ink.farther);
  paintSkyline(pen, ground, 1.15, 72, pen.ink.far);
}

function paintClouds(pen: Pen, ground: number): void {
  const { left, top, right } = pen.seen;
  const room = ground - 3.4 - top;
  if (room < 0.6) return;
  const count = Math.max(1, Math.floor((right - left) / 3.6));
  pen.ctx.globalAlpha = 0.7;
  for (let i = 0; i < count; i++) {
    const x = left + ((i + 0.35 + 0.3 * grain(i, 61)) * (right - left)) / count;
    const y = top + 0.45 + Math.min(room, 2.6) * grain(i, 62);
    ink(pen, cloud(x, y, 0.55 + 0.5 * grain(i, 63)), { fill: pen.ink.cloud });
  }
  pen.ctx.globalAlpha = 1;
}

/** A flat foot and three swellings. */
function cloud(x: number, y: number, size: number): Path2D {
  const path = new Path2D();
  path.moveTo(x - size, y);
  path.bezierCurveTo(x - size * 1.1, y - size * 0.3, x - size * 0.62, y - size * 0.36, x - size * 0.5, y - size * 0.26);
  path.bezierCurveTo(
    x - size * 0.4,
    y - size * 0.62,
    x + size * 0.16,
    y - size * 0.62,
    x + size * 0.24,
    y - size * 0.3,
  );
  path.bezierCurveTo(x + size * 0.5, y - size * 0.46, x + size * 1.05, y - size * 0.3, x + size, y);
  path.closePath();
  return path;
}

/** Houses with either roof, and trees between them; the same ones at every repaint and width. */
function paintSkyline(pen: Pen, ground: number, tall: number, salt: number, colour: string): void {
  const { left, right } = pen.seen;
  const shape = new Path2D();
  for (let i = Math.floor(left / PLOT) - 1; i * PLOT < right + PLOT; i++) {
    const seed = i + 1000;
    const x = i * PLOT;
    const h = tall * (0.45 + 0.55 * grain(seed, salt));
    const kind = grain(seed, salt + 10);
    if (kind < 0.3) addTree(shape, x + PLOT / 2, ground, h * 0.85);
    else addHouse(shape, x, ground, PLOT * (0.8 + 0.5 * grain(seed, salt + 20)), h, kind > 0.62);
  }
  ink(pen, shape, { fill: colour });
}

function addHouse(path: Path2D, x: number, ground: number, w: number, h: number, gabled: boolean): void {
  const eaves = ground - h * (gabled ? 0.68 : 1);
  path.moveTo(x, ground);
  path.lineTo(x, eaves);
  if (gabled) path.lineTo(x + w / 2, ground - h);
  path.lineTo(x + w, eaves);
  path.lineTo(x + w, ground);
  path.closePath();
}

function addTree(path: Path2D, x: number, ground: number, h: number): void {
  path.rect(x - 0.04, ground - h * 0.4, 0.08, h * 0.4);
  for (const [dx, up, r] of [
    [-0.16, 0.5, 0.2],
    [0.16, 0.54, 0.2],
    [0, 0.74, 0.24],
  ] as const) {
    path.moveTo(x + dx + r, ground - h * up);
    path.arc(x + dx, ground - h * up, r, 0, 2 * Math.PI);
  }
}
