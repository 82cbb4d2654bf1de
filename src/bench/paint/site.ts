/** The building in section and the ground it stands on. */
import type { DrawnBlock, PlantDrawing } from '../../../physics/types';
import { box, hatch, ink, open, type Pen, polygon } from './pen';

const GRID = 0.5;
const ROOF_THICKNESS = 0.16;
const EARTH_ROWS = 6;

export function paintSite(pen: Pen, drawing: PlantDrawing): void {
  paintSheet(pen);
  const backToFront = Object.keys(PAINTERS) as DrawnBlock['kind'][];
  for (const kind of backToFront) {
    for (const block of drawing.blocks) if (block.kind === kind) PAINTERS[kind](pen, block, drawing);
  }
}

/** Drawing paper with a faint grid of half metres. */
function paintSheet(pen: Pen): void {
  const { left, top, right, bottom } = pen.seen;
  ink(pen, box(left, top, right - left, bottom - top), { fill: pen.ink.sky });
  const lines = new Path2D();
  for (let x = Math.floor(left / GRID) * GRID; x < right; x += GRID) {
    lines.moveTo(x, top);
    lines.lineTo(x, bottom);
  }
  for (let y = Math.floor(top / GRID) * GRID; y < bottom; y += GRID) {
    lines.moveTo(left, y);
    lines.lineTo(right, y);
  }
  ink(pen, lines, { line: pen.ink.grid, weight: 0.7 });
}

type Painter = (pen: Pen, block: DrawnBlock, drawing: PlantDrawing) => void;

/** In the order in which they lie on each other. */
const PAINTERS: Record<DrawnBlock['kind'], Painter> = {
  ground: paintGround,
  loft: (pen, block) => ink(pen, shapeOf(block), { fill: pen.ink.loft }),
  plantroom: (pen, block) => ink(pen, shapeOf(block), { fill: pen.ink.room }),
  room: (pen, block) => ink(pen, shapeOf(block), { fill: pen.ink.room }),
  wall: paintCut,
  roof: (pen, block) => (block.shape === 'gable' ? paintGable(pen, block) : paintCut(pen, block)),
};

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
  for (let row = 0; row < EARTH_ROWS; row++) paintEarth(pen, top + 0.16 + 0.2 * row, row);
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
