/** Parts that do not move and do not change: boxes, ducts, valves, brackets. One painter a kind. */
import type { DrawnPart } from '../../../physics/types';
import { paintCounter, paintDoor, paintWindow } from './furniture';
import { blend, box, disc, ink, model, open, type Pen, polygon, shadow } from './pen';
import {
  paintAccumulator,
  paintBulb,
  paintHeater,
  paintReceiver,
  paintSolenoidValve,
  paintThermostaticValve,
} from './refrigeration';
import { paintChangeoverBox, paintExchanger, paintReversingValve } from './variableFlow';

type Painter = (pen: Pen, part: DrawnPart) => void;

/** Below the refrigerant: what it runs inside of. */
export const BACKGROUND: Partial<Record<DrawnPart['kind'], Painter>> = {
  slab: (pen, { x, y, w, h }) => {
    ink(pen, box(x, y, w, h), { fill: pen.ink.cut, line: pen.ink.ink, weight: 1.4 });
  },
  bracket: paintBracket,
  casing: paintCasing,
  duct: (pen, { x, y, w, h }) => {
    ink(pen, box(x, y, w, h), { fill: pen.ink.inside, line: pen.ink.ink, weight: 1.4 });
  },
  'control-box': paintControlBox,
  compressor: paintCompressor,
  fan: paintFanHousing,
  capacitor: paintCapacitor,
  terminals: paintTerminals,
  thermostat: paintThermostat,
  grille: paintGrille,
  window: paintWindow,
  door: paintDoor,
  counter: paintCounter,
};

/** Above the refrigerant: what it runs through. */
export const FOREGROUND: Partial<Record<DrawnPart['kind'], Painter>> = {
  drier: paintDrier,
  'service-valve': paintServiceValve,
  orifice: paintOrifice,
  'electronic-valve': paintElectronicValve,
  'thermostatic-valve': paintThermostaticValve,
  'solenoid-valve': paintSolenoidValve,
  'defrost-heater': paintHeater,
  receiver: paintReceiver,
  'reversing-valve': paintReversingValve,
  'changeover-box': paintChangeoverBox,
  exchanger: paintExchanger,
  bulb: paintBulb,
  accumulator: paintAccumulator,
  'sight-glass': paintSightGlass,
};

/** Sheet metal, cut open: thick skin, light inside. */
function paintCasing(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const skin = 0.05;
  shadow(pen, { x, y, w, h }, 0.09);
  const shell = box(x, y, w, h, 0.09);
  ink(pen, shell, { fill: pen.ink.casing });
  model(pen, shell, { x, y, w, h });
  ink(pen, shell, { line: pen.ink.ink, weight: 1.8 });
  const hollow = box(x + skin, y + skin, w - 2 * skin, h - 2 * skin, 0.05);
  ink(pen, hollow, { fill: pen.ink.inside });
  // The upper and left skin throw their shade into the hollow.
  const inner = [
    [0, pen.ink.shade],
    [1, 'rgb(128 128 128 / 0)'],
  ] as const;
  ink(pen, hollow, { fill: blend(pen, [0, y + skin], [0, y + skin + 0.3], inner) });
  ink(pen, hollow, { fill: blend(pen, [x + skin, 0], [x + skin + 0.2, 0], inner) });
  ink(pen, hollow, { line: pen.ink.inkFaint, weight: 0.8 });
  for (const [cx, cy] of [
    [x + skin / 2, y + h * 0.5],
    [x + w - skin / 2, y + h * 0.5],
  ]) {
    ink(pen, disc(cx, cy, 0.016), { fill: pen.ink.metalDark });
  }
}

function paintBracket(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const arm = 0.09;
  const strut = polygon([
    [x, y + h],
    [x, y + h - 0.12],
    [x + w * 0.82, y + arm],
    [x + w * 0.9, y + arm],
  ]);
  ink(pen, strut, { fill: pen.ink.metal, line: pen.ink.ink, weight: 1.1 });
  ink(pen, box(x, y, w, arm), { fill: pen.ink.metal, line: pen.ink.ink, weight: 1.4 });
  ink(pen, box(x, y - 0.08, 0.07, h + 0.12), { fill: pen.ink.metalDark, line: pen.ink.ink, weight: 1.1 });
}

/** A welded shell on rubber feet, with a window cut in it; the scroll that turns there is drawn by the scene. */
function paintCompressor(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const foot = h * 0.09;
  for (const f of [0.06, 0.68]) {
    ink(pen, box(x + w * f, y + h - foot, w * 0.26, foot, 0.02), { fill: pen.ink.inkSoft });
  }
  const shell = box(x, y, w, h - foot * 0.7, w * 0.36);
  shadow(pen, { x, y, w: w * 0.98, h: h * 0.95 }, w * 0.36);
  ink(pen, shell, { fill: pen.ink.metal });
  model(pen, shell, { x, y, w, h });
  ink(pen, shell, { line: pen.ink.ink, weight: 1.8 });
  for (const f of [0.24, 0.72]) {
    const seam = box(x - 0.012, y + h * f, w + 0.024, h * 0.045, 0.015);
    ink(pen, seam, { fill: pen.ink.metalDark, line: pen.ink.ink, weight: 0.9 });
  }
  const { cx, cy, r } = scrollWindow({ x, y, w, h });
  ink(pen, disc(cx, cy, r), { fill: pen.ink.inside, line: pen.ink.ink, weight: 1.4 });
}

/** Where the shell is cut open. */
export function scrollWindow({ x, y, w, h }: { x: number; y: number; w: number; h: number }): {
  cx: number;
  cy: number;
  r: number;
} {
  return { cx: x + w / 2, cy: y + h * 0.48, r: Math.min(w, h) * 0.3 };
}

/** Round fans seen along their axis sit in a scroll; flat ones are seen from the side, with guard and motor. */
function paintFanHousing(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const middleX = x + w / 2;
  const middleY = y + h / 2;
  if (isRound({ w, h })) {
    const r = Math.min(w, h) / 2;
    ink(pen, disc(middleX, middleY, r + 0.03), { fill: pen.ink.casing, line: pen.ink.ink, weight: 1.4 });
    ink(pen, disc(middleX, middleY, r - 0.02), { fill: pen.ink.inside, line: pen.ink.inkFaint, weight: 0.8 });
    return;
  }
  const bars = new Path2D();
  const flat = w > h;
  const length = flat ? w : h;
  for (let s = 0; s <= length + 0.001; s += length / 12) {
    if (flat) {
      bars.moveTo(x + s, y - 0.05);
      bars.lineTo(x + s, y + 0.02);
    } else {
      bars.moveTo(x + w - 0.02, y + s);
      bars.lineTo(x + w + 0.05, y + s);
    }
  }
  ink(pen, bars, { line: pen.ink.inkSoft, weight: 1.1 });
  const motor = flat ? box(middleX - 0.11, middleY, 0.22, 0.26, 0.04) : box(x - 0.22, middleY - 0.11, 0.3, 0.22, 0.04);
  ink(pen, motor, { fill: pen.ink.metalDark, line: pen.ink.ink, weight: 1.3 });
}

export function isRound({ w, h }: { w: number; h: number }): boolean {
  return w / h > 0.6 && w / h < 1.7;
}

function paintControlBox(pen: Pen, { x, y, w, h }: DrawnPart): void {
  ink(pen, box(x, y, w, h, 0.03), { fill: pen.ink.casing, line: pen.ink.ink, weight: 1.3 });
  ink(pen, box(x + 0.03, y + 0.03, w - 0.06, h - 0.06, 0.02), { line: pen.ink.inkFaint, weight: 0.8 });
}

function paintTerminals(pen: Pen, { x, y, w, h }: DrawnPart): void {
  ink(pen, box(x, y, w, h, 0.02), { fill: pen.ink.inside, line: pen.ink.ink, weight: 1 });
  const count = 3;
  for (let i = 0; i < count; i++) {
    const cx = x + (w * (i + 0.5)) / count;
    const cy = y + h / 2;
    const r = Math.min(w / count, h) * 0.3;
    ink(pen, disc(cx, cy, r), { fill: pen.ink.metal, line: pen.ink.ink, weight: 0.9 });
    ink(
      pen,
      open([
        [cx - r * 0.7, cy + r * 0.7],
        [cx + r * 0.7, cy - r * 0.7],
      ]),
      { line: pen.ink.ink, weight: 0.9 },
    );
  }
}

function paintCapacitor(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const can = box(x, y + h * 0.16, w, h * 0.84, 0.05);
  ink(pen, can, { fill: pen.ink.metal });
  model(pen, can, { x, y, w: Math.min(w, h * 0.99), h });
  ink(pen, can, { line: pen.ink.ink, weight: 1.2 });
  ink(
    pen,
    open([
      [x + 0.02, y + h * 0.3],
      [x + w - 0.02, y + h * 0.3],
    ]),
    { line: pen.ink.inkSoft, weight: 0.9 },
  );
  for (const f of [0.3, 0.7]) ink(pen, box(x + w * f - 0.015, y, 0.03, h * 0.18), { fill: pen.ink.ink });
}

function paintThermostat(pen: Pen, { x, y, w, h }: DrawnPart): void {
  ink(pen, box(x, y, w, h, 0.03), { fill: pen.ink.casing, line: pen.ink.ink, weight: 1.3 });
  ink(pen, box(x + w * 0.2, y + h * 0.18, w * 0.6, h * 0.34, 0.02), { fill: pen.ink.glass, line: pen.ink.inkSoft });
  ink(pen, disc(x + w / 2, y + h * 0.74, Math.min(w, h) * 0.1), { fill: pen.ink.inkSoft });
}

function paintGrille(pen: Pen, { x, y, w, h }: DrawnPart): void {
  ink(pen, box(x, y, w, h), { fill: pen.ink.inside, line: pen.ink.ink, weight: 1.2 });
  const blades = new Path2D();
  const flat = w > h;
  const length = flat ? w : h;
  for (let s = 0.08; s < length - 0.02; s += 0.1) {
    if (flat) {
      blades.moveTo(x + s, y + h * 0.15);
      blades.lineTo(x + s - 0.04, y + h * 0.85);
    } else {
      blades.moveTo(x + w * 0.15, y + s);
      blades.lineTo(x + w * 0.85, y + s - 0.04);
    }
  }
  ink(pen, blades, { line: pen.ink.inkSoft, weight: 1.1 });
}

/** Swaged ends, an arrow for the direction of flow: it must not sit the wrong way round. */
function paintDrier(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const neck = h * 0.16;
  const middle = x + w / 2;
  const pipe = w * 0.36;
  const body = new Path2D();
  body.moveTo(middle - pipe / 2, y);
  body.lineTo(middle + pipe / 2, y);
  body.bezierCurveTo(x + w, y + neck * 0.4, x + w, y + neck, x + w, y + neck * 1.5);
  body.lineTo(x + w, y + h - neck * 1.5);
  body.bezierCurveTo(x + w, y + h - neck, x + w, y + h - neck * 0.4, middle + pipe / 2, y + h);
  body.lineTo(middle - pipe / 2, y + h);
  body.bezierCurveTo(x, y + h - neck * 0.4, x, y + h - neck, x, y + h - neck * 1.5);
  body.lineTo(x, y + neck * 1.5);
  body.bezierCurveTo(x, y + neck, x, y + neck * 0.4, middle - pipe / 2, y);
  body.closePath();
  ink(pen, body, { fill: pen.ink.metal });
  model(pen, body, { x, y, w, h });
  ink(pen, body, { line: pen.ink.ink, weight: 1.5 });
  const band = box(x, y + h * 0.34, w, h * 0.34);
  ink(pen, band, { fill: pen.ink.inside, line: pen.ink.inkSoft, weight: 0.8 });
  const arrow = new Path2D();
  arrow.moveTo(middle, y + h * 0.62);
  arrow.lineTo(middle, y + h * 0.4);
  arrow.moveTo(middle - w * 0.18, y + h * 0.48);
  arrow.lineTo(middle, y + h * 0.39);
  arrow.lineTo(middle + w * 0.18, y + h * 0.48);
  ink(pen, arrow, { line: pen.ink.ink, weight: 1.3 });
}

function paintServiceValve(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const cy = y + h / 2;
  const block = box(x, cy - h * 0.3, w, h * 0.6, 0.03);
  ink(pen, block, { fill: pen.ink.metal });
  model(pen, block, { x, y: cy - h * 0.3, w, h: h * 0.6 });
  ink(pen, block, { line: pen.ink.ink, weight: 1.4 });
  const stem = x + w * 0.38;
  ink(pen, box(stem - w * 0.1, y - h * 0.12, w * 0.2, h * 0.34), {
    fill: pen.ink.metalDark,
    line: pen.ink.ink,
    weight: 1.1,
  });
  ink(pen, box(stem - w * 0.18, y - h * 0.28, w * 0.36, h * 0.2, 0.02), {
    fill: pen.ink.metal,
    line: pen.ink.ink,
    weight: 1.1,
  });
}

/** A piston in its body, with the small hole to be seen. */
function paintOrifice(pen: Pen, { x, y, w, h }: DrawnPart): void {
  ink(pen, box(x, y, w, h, 0.03), { fill: pen.ink.metal, line: pen.ink.ink, weight: 1.4 });
  const middle = x + w / 2;
  const cy = y + h / 2;
  for (const side of [-1, 1]) {
    ink(
      pen,
      polygon([
        [middle + side * w * 0.5, y + h * 0.06],
        [middle + side * w * 0.08, cy],
        [middle + side * w * 0.5, y + h * 0.94],
      ]),
      { fill: pen.ink.metalDark },
    );
  }
  ink(pen, box(x, y, w, h, 0.03), { line: pen.ink.ink, weight: 1.4 });
}

function paintElectronicValve(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const motor = h * 0.5;
  ink(pen, box(x + w * 0.08, y - motor * 0.55, w * 0.84, motor, 0.05), {
    fill: pen.ink.casing,
    line: pen.ink.ink,
    weight: 1.4,
  });
  ink(pen, box(x + w * 0.22, y + motor * 0.4, w * 0.56, h - motor * 0.4, 0.03), {
    fill: pen.ink.metal,
    line: pen.ink.ink,
    weight: 1.4,
  });
  const needle = polygon([
    [x + w * 0.4, y + motor * 0.5],
    [x + w * 0.6, y + motor * 0.5],
    [x + w * 0.5, y + h * 0.9],
  ]);
  ink(pen, needle, { fill: pen.ink.metalDark });
}

/** A brass body with a window; the bubbles in it are drawn by the scene. */
function paintSightGlass(pen: Pen, { x, y, w, h }: DrawnPart): void {
  const cx = x + w / 2;
  const cy = y + h / 2;
  const r = Math.min(w, h) / 2;
  const body = disc(cx, cy, r);
  ink(pen, body, { fill: pen.ink.plain });
  model(pen, body, { x: cx - r, y: cy - r, w: 2 * r, h: 2.01 * r });
  ink(pen, body, { line: pen.ink.ink, weight: 1.6 });
  ink(pen, disc(cx, cy, r * 0.72), { fill: pen.ink.glass, line: pen.ink.ink, weight: 1.1 });
  const glint = new Path2D();
  glint.arc(cx, cy, r * 0.56, Math.PI * 1.08, Math.PI * 1.42);
  ink(pen, glint, { line: pen.ink.frost, weight: 2 });
}
