/** Parts of a condensing unit and its cooler that an air conditioner does not have. */
import type { DrawnPart } from '../../../physics/types';
import { box, disc, ink, model, open, type Pen, polygon } from './pen';

/** A lying vessel with dished ends on two feet; two small glasses in its end tell the level. */
export function paintReceiver(pen: Pen, { x, y, w, h }: DrawnPart): void {
  for (const f of [0.16, 0.72]) {
    ink(pen, box(x + w * f, y + h * 0.82, w * 0.12, h * 0.3), {
      fill: pen.ink.metalDark,
      line: pen.ink.ink,
      weight: 1,
    });
  }
  const shell = box(x, y, w, h, h * 0.46);
  ink(pen, shell, { fill: pen.ink.metal });
  model(pen, shell, { x, y, w, h });
  ink(pen, shell, { line: pen.ink.ink, weight: 1.6 });
  for (const f of [0.2, 0.8]) {
    const seam = open([
      [x + w * f, y + 0.01],
      [x + w * f, y + h - 0.01],
    ]);
    ink(pen, seam, { line: pen.ink.inkSoft, weight: 0.9 });
  }
  for (const f of [0.3, 0.68]) {
    ink(pen, disc(x + w * 0.5, y + h * f, h * 0.12), { fill: pen.ink.glass, line: pen.ink.ink, weight: 1.1 });
  }
}

/** Body in the pipe, a flat diaphragm head above it, the pin between. */
export function paintThermostaticValve(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const body = box(x + w * 0.18, y + h * 0.34, w * 0.64, h * 0.66, 0.03);
  ink(pen, body, { fill: pen.ink.plain, line: pen.ink.ink, weight: 1.4 });
  const pin = polygon([
    [x + w * 0.42, y + h * 0.3],
    [x + w * 0.58, y + h * 0.3],
    [x + w * 0.5, y + h * 0.86],
  ]);
  ink(pen, pin, { fill: pen.ink.metalDark });
  const head = box(x, y + h * 0.1, w, h * 0.24, h * 0.1);
  ink(pen, head, { fill: pen.ink.metal });
  model(pen, head, { x, y, w, h: h * 0.44 });
  ink(pen, head, { line: pen.ink.ink, weight: 1.4 });
}

/** A closed tube strapped to the pipe. */
export function paintBulb(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const tube = box(x, y, w, h * 0.7, h * 0.34);
  ink(pen, tube, { fill: pen.ink.plain });
  model(pen, tube, { x, y, w, h: h * 0.7 });
  ink(pen, tube, { line: pen.ink.ink, weight: 1.2 });
  for (const f of [0.22, 0.7]) ink(pen, box(x + w * f, y - 0.015, 0.03, h + 0.03), { fill: pen.ink.inkSoft });
}

/** A squat body in the pipe and, on its stem, the coil that lifts the plunger. */
export function paintSolenoidValve(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const body = box(x, y + h * 0.58, w, h * 0.34, 0.03);
  ink(pen, body, { fill: pen.ink.plain, line: pen.ink.ink, weight: 1.4 });
  ink(pen, box(x + w * 0.42, y + h * 0.44, w * 0.16, h * 0.16), { fill: pen.ink.metalDark });
  const coil = box(x + w * 0.12, y, w * 0.76, h * 0.46, 0.02);
  ink(pen, coil, { fill: pen.ink.metal });
  model(pen, coil, { x: x + w * 0.12, y, w: w * 0.76, h: h * 0.46 });
  ink(pen, coil, { line: pen.ink.ink, weight: 1.3 });
  for (const f of [0.3, 0.5, 0.7]) {
    const turn = open([
      [x + w * 0.16, y + h * 0.46 * f],
      [x + w * 0.84, y + h * 0.46 * f],
    ]);
    ink(pen, turn, { line: pen.ink.inkSoft, weight: 0.8 });
  }
}

/** Rods that lie in loops under the coil and end at two terminals. */
export function paintHeater(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const rods = open([
    [x + w, y + h * 0.2],
    [x + h * 0.3, y + h * 0.2],
    [x, y + h * 0.5],
    [x + h * 0.3, y + h * 0.8],
    [x + w, y + h * 0.8],
  ]);
  ink(pen, rods, { line: pen.ink.ink, weight: 3 });
  ink(pen, rods, { line: pen.ink.metalDark, weight: 1.6 });
  for (const f of [0.2, 0.8]) ink(pen, disc(x + w, y + h * f, h * 0.22), { fill: pen.ink.metal, line: pen.ink.ink });
}

/** An upright vessel with domed ends. */
export function paintAccumulator(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const shell = box(x, y, w, h, w * 0.46);
  ink(pen, shell, { fill: pen.ink.metal });
  model(pen, shell, { x, y, w, h });
  ink(pen, shell, { line: pen.ink.ink, weight: 1.6 });
  for (const f of [0.2, 0.8]) {
    const seam = open([
      [x + 0.01, y + h * f],
      [x + w - 0.01, y + h * f],
    ]);
    ink(pen, seam, { line: pen.ink.inkSoft, weight: 0.9 });
  }
}
