/** What stands in the room, in thin lines: it tells the size of things and keeps out of the way. */
import type { DrawnPart } from '../../../physics/types';
import { box, disc, ink, open, type Pen } from './pen';

export function paintWindow(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const line = pen.ink.inkFaint;
  ink(pen, box(x, y, w, h), { fill: pen.ink.sky, line, weight: 1.2 });
  const bars = new Path2D();
  bars.moveTo(x + w / 2, y);
  bars.lineTo(x + w / 2, y + h);
  bars.moveTo(x, y + h * 0.42);
  bars.lineTo(x + w, y + h * 0.42);
  ink(pen, bars, { line, weight: 1 });
  ink(pen, box(x - 0.06, y + h, w + 0.12, 0.07), { fill: pen.ink.room, line, weight: 1.1 });
}

export function paintDoor(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const line = pen.ink.inkFaint;
  const frame = 0.06;
  ink(pen, box(x, y, w, h), { fill: pen.ink.room, line, weight: 1.1 });
  ink(pen, box(x + frame, y + frame, w - 2 * frame, h - frame), { fill: pen.ink.loft, line, weight: 1.1 });
  ink(pen, box(x + w * 0.24, y + h * 0.12, w * 0.52, h * 0.38), { fill: pen.ink.sky, line, weight: 1 });
  ink(pen, disc(x + w * 0.82, y + h * 0.56, 0.035), { fill: line });
}

export function paintCounter(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const line = pen.ink.inkFaint;
  const top = 0.07;
  ink(pen, box(x + 0.05, y + top, w - 0.1, h - top), { fill: pen.ink.room, line, weight: 1.1 });
  ink(pen, box(x, y, w, top), { fill: pen.ink.loft, line, weight: 1.2 });
  const doors = Math.max(2, Math.round(w / 0.7));
  for (let i = 1; i < doors; i++) {
    const at = x + 0.05 + ((w - 0.1) * i) / doors;
    ink(
      pen,
      open([
        [at, y + top],
        [at, y + h],
      ]),
      { line, weight: 1 },
    );
  }
}
