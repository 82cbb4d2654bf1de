/** Parts of machines with many indoor units. */
import type { DrawnPart } from '../../../physics/types';
import { box, disc, ink, model, open, type Pen } from './pen';

/** A lying body with one stub above and three below; a slide in its window. */
export function paintReversingValve(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const body = box(x, y, w, h, h / 2);
  ink(pen, body, { fill: pen.ink.plain });
  model(pen, body, { x, y, w, h });
  ink(pen, body, { line: pen.ink.ink, weight: 1.6 });
  ink(pen, box(x + w * 0.2, y + h * 0.36, w * 0.6, h * 0.34, h * 0.16), { fill: pen.ink.metalDark });
  for (const f of [0.2, 0.5, 0.8]) {
    ink(pen, box(x + w * f - 0.05, y + h - 0.03, 0.1, 0.07), { fill: pen.ink.metal, line: pen.ink.ink, weight: 1 });
  }
  ink(pen, box(x + w / 2 - 0.05, y - 0.04, 0.1, 0.07), { fill: pen.ink.metal, line: pen.ink.ink, weight: 1 });
}

/** A tin box with two small valves, through which a unit's gas pipe meets one main or the other. */
export function paintChangeoverBox(pen: Pen, { x, y, w, h }: DrawnPart): void {
  pen.ctx.globalAlpha = 0.55;
  ink(pen, box(x, y, w, h, 0.03), { fill: pen.ink.casing });
  pen.ctx.globalAlpha = 1;
  ink(pen, box(x, y, w, h, 0.03), { line: pen.ink.ink, weight: 1.4 });
  for (const f of [0.27, 0.73]) {
    const cx = x + w * f;
    const cy = y + h * 0.36;
    ink(pen, disc(cx, cy, h * 0.17), { fill: pen.ink.metal, line: pen.ink.ink, weight: 1.2 });
    const slot = open([
      [cx - h * 0.1, cy],
      [cx + h * 0.1, cy],
    ]);
    ink(pen, slot, { line: pen.ink.ink, weight: 1.2 });
  }
}

/** A stack of plates, seen on edge. */
export function paintExchanger(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const body = box(x, y, w, h, 0.02);
  ink(pen, body, { fill: pen.ink.metal });
  model(pen, body, { x, y, w, h });
  const plates = new Path2D();
  for (let at = x + 0.06; at < x + w - 0.02; at += 0.06) {
    plates.moveTo(at, y + 0.02);
    plates.lineTo(at, y + h - 0.02);
  }
  ink(pen, plates, { line: pen.ink.inkSoft, weight: 0.9 });
  ink(pen, body, { line: pen.ink.ink, weight: 1.5 });
}
