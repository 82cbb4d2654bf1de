/** The building in section and the ground it stands on. */
import type { DrawnBlock, PlantDrawing } from '../../../physics/types';
import { paintBackdrop } from './backdrop';
import { blend, box, hatch, ink, open, type Pen, polygon } from './pen';

const GRID = 0.5;
const ROOF_THICKNESS = 0.16;
const EARTH_ROWS = 6;

export function paintSite(pen: Pen, drawing: PlantDrawing): void {
  paintBackdrop(pen, drawing.ground);
  paintGrid(pen);
  const backToFront = Object.keys(PAINTERS) as DrawnBlock['kind'][];
  for (const kind of backToFront) {
    for (const block of drawing.blocks) if (block.kind === kind) PAINTERS[kind](pen, block, drawing);
  }
}

/** The faint grid of half metres of drawing paper. */
function paintGrid(pen: Pen): void {
  const { left, top, right, bottom } = pen.seen;
  const lines = new Path2D();
  for (let x = Math.floor(left / GRID) * GRID; x < right; x += GRID) {
    lines.moveTo(x, top);
    lines.lineTo(x, bottom);
  }
  for (let y = Math.floor(top / GRID) * GRID; y < bottom; y += GRID) {
    lines.moveTo(left, y);
    lines.lineTo(right, y);
  }
  pen.ctx.globalAlpha = 0.55;
  ink(pen, lines, { line: pen.ink.grid, weight: 0.7 });
  pen.ctx.globalAlpha = 1;
}

type Painter = (pen: Pen, block: DrawnBlock, drawing: PlantDrawing) => void;

/** In the order in which they lie on each other. */
const PAINTERS: Record<DrawnBlock['kind'], Painter> = {
  ground: paintGround,
  loft: paintLoft,
  plantroom: paintRoom,
  room: paintRoom,
  wall: paintCut,
  roof: (pen, block) => (block.shape === 'gable' ? paintGable(pen, block) : paintCut(pen, block)),
};

/** Light from the ceiling, and a skirting board on the floor. */
function paintRoom(pen: Pen, block: DrawnBlock): void {
  const { x, y, w, h } = block;
  ink(pen, shapeOf(block), { fill: pen.ink.room });
  const fade = blend(
    pen,
    [0, y],
    [0, y + h],
    [
      [0, 'rgb(128 128 128 / 0)'],
      [1, pen.ink.shade],
    ],
  );
  pen.ctx.globalAlpha = 0.5;
  ink(pen, shapeOf(block), { fill: fade });
  pen.ctx.globalAlpha = 1;
  ink(pen, box(x, y + h - 0.09, w, 0.09), { fill: pen.ink.loft, line: pen.ink.inkFaint, weight: 0.8 });
}

/** Rafters seen from inside, and darkness towards the ridge. */
function paintLoft(pen: Pen, block: DrawnBlock): void {
  const { x, y, w, h } = block;
  const shape = shapeOf(block);
  ink(pen, shape, { fill: pen.ink.loft });
  pen.ctx.save();
  pen.ctx.clip(shape);
  const boards = new Path2D();
  for (let at = y + 0.26; at < y + h; at += 0.26) {
    boards.moveTo(x, at);
    boards.lineTo(x + w, at);
  }
  ink(pen, boards, { line: pen.ink.shade, weight: 1 });
  const dusk = blend(
    pen,
    [0, y],
    [0, y + h],
    [
      [0, pen.ink.shade],
      [1, 'rgb(128 128 128 / 0)'],
    ],
  );
  ink(pen, shape, { fill: dusk });
  pen.ctx.restore();
}

function shapeOf(block: DrawnBlock): Path2D {
  if (block.shape !== 'gable') return box(block.x, block.y, block.w, block.h);
  return polygon([
    [block.x, block.y + block.h],
    [block.x + block.w / 2, block.y],
    [block.x + block.w, block.y + block.h],
  ]);
}

function paintCut(pen: Pen, block: DrawnBlock): void {
  const shape = shapeOf(block);
  ink(pen, shape, { fill: pen.ink.cut });
  hatch(pen, shape, block, 0.11);
  ink(pen, shape, { line: pen.ink.ink, weight: 1.6 });
}

function paintGable(pen: Pen, block: DrawnBlock): void {
  const middle = block.x + block.w / 2;
  const slope = block.h / (block.w / 2);
  const lift = ROOF_THICKNESS * Math.sqrt(1 + slope * slope);
  const foot = block.y + block.h;
  const overhang = 0.18;
  const eaves = foot + overhang * slope;
  const shape = polygon([
    [block.x - overhang, eaves],
    [middle, block.y],
    [block.x + block.w + overhang, eaves],
    [block.x + block.w + overhang, eaves - lift],
    [middle, block.y - lift],
    [block.x - overhang, eaves - lift],
  ]);
  ink(pen, shape, { fill: pen.ink.cut });
  hatch(pen, shape, { x: block.x - 1, y: block.y - 1, w: block.w + 2, h: block.h + 2 }, 0.11);
  ink(pen, shape, { line: pen.ink.ink, weight: 1.6 });
}

/** Runs on to the edges of the sheet, so that the machine never floats. */
function paintGround(pen: Pen, block: DrawnBlock, drawing: PlantDrawing): void {
  const { left, right, bottom } = pen.seen;
  const top = block.y;
  const depth = Math.max(block.h, bottom - top);
  ink(pen, box(left, top, right - left, depth), { fill: pen.ink.ground });
  const deep = blend(
    pen,
    [0, top],
    [0, top + depth],
    [
      [0, 'rgb(128 128 128 / 0)'],
      [1, pen.ink.shade],
    ],
  );
  ink(pen, box(left, top, right - left, depth), { fill: deep });
  paintPaving(pen, top);
  for (let row = 0; row < EARTH_ROWS; row++) paintEarth(pen, top + 0.24 + 0.2 * row, row);
  pen.ctx.globalAlpha = 1;
  ink(
    pen,
    open([
      [left, drawing.ground],
      [right, drawing.ground],
    ]),
    { line: pen.ink.ink, weight: 2.2 },
  );
}

/** Slabs laid on the earth. */
function paintPaving(pen: Pen, top: number): void {
  const { left, right } = pen.seen;
  const depth = 0.11;
  ink(pen, box(left, top, right - left, depth), { fill: pen.ink.cut });
  const joints = new Path2D();
  for (let x = Math.floor(left / 0.6) * 0.6; x < right; x += 0.6) {
    joints.moveTo(x, top);
    joints.lineTo(x, top + depth);
  }
  joints.moveTo(left, top + depth);
  joints.lineTo(right, top + depth);
  ink(pen, joints, { line: pen.ink.cutHatch, weight: 1 });
}

/** One row of strokes under the surface; the deeper, the fainter. */
function paintEarth(pen: Pen, y: number, row: number): void {
  const { left, right } = pen.seen;
  const strokes = new Path2D();
  for (let x = Math.floor(left) + (row % 2) * 0.17; x < right + 1; x += 0.34) {
    const length = 0.1 + 0.06 * Math.abs(Math.sin(x * 7));
    strokes.moveTo(x, y);
    strokes.lineTo(x - length, y + length);
  }
  pen.ctx.globalAlpha = 1 - row / EARTH_ROWS;
  ink(pen, strokes, { line: pen.ink.cutHatch, weight: 1 });
}
