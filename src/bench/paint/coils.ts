/** Coils: fins in the warmth of their metal, the tube through them, and what has settled on them. */
import type { CoilSegment, DrawnPart, PlantDrawing, Snapshot } from '../../../physics/types';
import { BEND } from '../geometry/serpentine';
import { type Reach, segmentsOf, sideOf } from '../model/reaches';
import { lookAt } from '../model/stations';
import { grain } from './grain';
import { warmthColour } from './palette';
import { box, disc, ink, open, type Pen, stretch } from './pen';
import { paintContents, roundTube, strokeWide } from './tubes';

/** Ice on one segment at which its frost looks thick, kg. */
const THICK_FROST = 0.025;
/** Grains on a fully covered square metre of drawing. */
const GRAINS = 330;

export function paintCoil(
  pen: Pen,
  coil: DrawnPart,
  reach: Reach,
  drawing: PlantDrawing,
  snapshot: Snapshot | null,
  inside: boolean,
): void {
  const segments = snapshot ? segmentsOf(coil, snapshot) : [];
  const fins = finBox(coil);
  ink(pen, box(fins.x, fins.y, fins.w, fins.h), { fill: pen.ink.fins });
  if (inside) {
    for (const [i, segment] of segments.entries()) paintWall(pen, coil, segment, i, segments.length);
  }
  paintFins(pen, coil);
  ink(pen, box(fins.x, fins.y, fins.w, fins.h), { line: pen.ink.ink, weight: 1.3 });
  paintEndPlates(pen, coil);
  pen.ctx.lineCap = 'butt';
  strokeWide(pen, stretch(reach.route), pen.ink.ink, reach.width + 2 * pen.px);
  if (snapshot && inside) paintContents(pen, reach, snapshot);
  else strokeWide(pen, stretch(reach.route), pen.ink.plain, reach.width);
  roundTube(pen, reach, stretch(reach.route));
  pen.ctx.lineCap = 'round';
  if (!snapshot) return;
  for (const [i, segment] of segments.entries()) paintFrost(pen, coil, segment, i, segments.length);
  if (sideOf(coil) === 'outdoor') paintDirt(pen, coil, drawing, lookAt(snapshot, 'condenserDirt', coil.of));
}

function isUpright(coil: DrawnPart): boolean {
  return coil.inlet !== 'left' && coil.inlet !== 'right';
}

function finBox(coil: DrawnPart): { x: number; y: number; w: number; h: number } {
  return isUpright(coil)
    ? { x: coil.x + BEND, y: coil.y, w: coil.w - 2 * BEND, h: coil.h }
    : { x: coil.x, y: coil.y + BEND, w: coil.w, h: coil.h - 2 * BEND };
}

/** The box of one of `count` segments, counted from the edge where refrigerant comes in. */
function segmentBox(coil: DrawnPart, i: number, count: number): { x: number; y: number; w: number; h: number } {
  const fins = finBox(coil);
  const from = coil.inlet === 'bottom' || coil.inlet === 'right' ? count - 1 - i : i;
  return isUpright(coil)
    ? { x: fins.x, y: fins.y + (fins.h * from) / count, w: fins.w, h: fins.h / count }
    : { x: fins.x + (fins.w * from) / count, y: fins.y, w: fins.w / count, h: fins.h };
}

/** The sheets of metal that hold the tubes at either end of the fins. */
function paintEndPlates(pen: Pen, coil: DrawnPart): void {
  const { x, y, w, h } = finBox(coil);
  const thick = 0.028;
  const plates = isUpright(coil)
    ? [box(x, y, thick, h), box(x + w - thick, y, thick, h)]
    : [box(x, y, w, thick), box(x, y + h - thick, w, thick)];
  for (const plate of plates) ink(pen, plate, { fill: pen.ink.metalDark, line: pen.ink.ink, weight: 0.8 });
}

function paintWall(pen: Pen, coil: DrawnPart, segment: CoilSegment, i: number, count: number): void {
  const area = segmentBox(coil, i, count);
  ink(pen, box(area.x, area.y, area.w, area.h + pen.px), { fill: warmthColour(pen.ink, segment.wall) });
}

function paintFins(pen: Pen, coil: DrawnPart): void {
  const fins = finBox(coil);
  const lines = new Path2D();
  if (isUpright(coil)) {
    for (let x = fins.x + 0.05; x < fins.x + fins.w - 0.01; x += 0.05) {
      lines.moveTo(x, fins.y);
      lines.lineTo(x, fins.y + fins.h);
    }
  } else {
    for (let y = fins.y + 0.05; y < fins.y + fins.h - 0.01; y += 0.05) {
      lines.moveTo(fins.x, y);
      lines.lineTo(fins.x + fins.w, y);
    }
  }
  pen.ctx.globalAlpha = 0.4;
  ink(pen, lines, { line: pen.ink.inkSoft, weight: 0.8 });
  pen.ctx.globalAlpha = 1;
}

/** Ice as small six-armed crystals: more of them, and larger, with its mass. */
function paintFrost(pen: Pen, coil: DrawnPart, segment: CoilSegment, i: number, count: number): void {
  if (segment.frost <= 0) return;
  const thickness = 1 - Math.exp(-segment.frost / THICK_FROST);
  const area = segmentBox(coil, i, count);
  const crystals = Math.ceil(GRAINS * area.w * area.h * thickness);
  const veil = box(area.x, area.y, area.w, area.h);
  pen.ctx.globalAlpha = 0.55 * thickness;
  ink(pen, veil, { fill: pen.ink.frost });
  pen.ctx.globalAlpha = 1;
  const arms = new Path2D();
  for (let k = 0; k < crystals; k++) {
    const x = area.x + area.w * (-0.04 + 1.08 * grain(k, i * 3));
    const y = area.y + area.h * grain(k, i * 3 + 1);
    const r = (0.016 + 0.026 * grain(k, i * 3 + 2)) * (0.5 + 0.5 * thickness);
    for (let arm = 0; arm < 3; arm++) {
      const a = (arm * Math.PI) / 3 + grain(k, 99);
      arms.moveTo(x - r * Math.cos(a), y - r * Math.sin(a));
      arms.lineTo(x + r * Math.cos(a), y + r * Math.sin(a));
    }
  }
  ink(pen, arms, { line: pen.ink.frostEdge, weight: 2.2 });
  ink(pen, arms, { line: pen.ink.frost, weight: 1.1 });
}

/** Fluff on the face where the air comes in. */
function paintDirt(pen: Pen, coil: DrawnPart, drawing: PlantDrawing, dirt: number): void {
  if (dirt <= 0.01) return;
  const fins = finBox(coil);
  const face = enteringFace(coil, drawing);
  const upright = face === 'left' || face === 'right';
  const depth = 0.06 + 0.16 * dirt;
  const length = upright ? fins.h : fins.w;
  const count = Math.round(260 * length * dirt);
  const fluff = new Path2D();
  for (let k = 0; k < count; k++) {
    const along = length * grain(k, 11);
    const into = depth * grain(k, 12) ** 2 - 0.03;
    const across = face === 'left' || face === 'top' ? into : (upright ? fins.w : fins.h) - into;
    const x = fins.x + (upright ? across : along);
    const y = fins.y + (upright ? along : across);
    const r = 0.015 + 0.025 * grain(k, 13);
    const turn = grain(k, 14) * 2 * Math.PI;
    fluff.moveTo(x + r * Math.cos(turn), y + r * Math.sin(turn));
    fluff.arc(x, y, r, turn, turn + 3.4);
  }
  ink(pen, fluff, { line: pen.ink.dust, weight: 1.2 });
}

type Face = 'left' | 'right' | 'top' | 'bottom';

function enteringFace(coil: DrawnPart, drawing: PlantDrawing): Face {
  const isOutdoor = sideOf(coil) === 'outdoor';
  const path = drawing.air.find(
    (air) => (air.role === 'condenser') === isOutdoor && air.of === coil.of && air.stage === 'entering',
  );
  if (!path) return 'left';
  const [x, y] = path.points[path.points.length - 1];
  const gaps: [Face, number][] = [
    ['left', Math.abs(x - coil.x)],
    ['right', Math.abs(x - coil.x - coil.w)],
    ['top', Math.abs(y - coil.y)],
    ['bottom', Math.abs(y - coil.y - coil.h)],
  ];
  return gaps.reduce((best, next) => (next[1] < best[1] ? next : best))[0];
}

/** A pleated filter in its frame, and the dust in it. */
export function paintFilter(pen: Pen, part: DrawnPart, dust: number): void {
  const { x, y, w, h } = part;
  const upright = h > w;
  ink(pen, box(x, y, w, h), { fill: pen.ink.inside, line: pen.ink.ink, weight: 1.2 });
  const length = upright ? h : w;
  const pleats: [number, number][] = [];
  const count = Math.round(length / 0.07);
  for (let i = 0; i <= count; i++) {
    const along = (length * i) / count;
    const across = (upright ? w : h) * (i % 2 === 0 ? 0.16 : 0.84);
    pleats.push(upright ? [x + across, y + along] : [x + along, y + across]);
  }
  ink(pen, open(pleats), { line: pen.ink.inkSoft, weight: 1.1 });
  const grains = new Path2D();
  const total = Math.round(260 * length * dust);
  for (let k = 0; k < total; k++) {
    const along = length * grain(k, 21);
    const depth = upright ? w : h;
    const across = depth * (0.9 * grain(k, 22) ** 1.6) - 0.03 * dust;
    grains.addPath(
      upright
        ? disc(x + across, y + along, 0.008 + 0.014 * grain(k, 23))
        : disc(x + along, y + across, 0.008 + 0.014 * grain(k, 23)),
    );
  }
  ink(pen, grains, { fill: pen.ink.dust });
}
