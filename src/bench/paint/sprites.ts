/** Small pictures of what moves, each painted about the middle of its own square. */
import type { Palette } from './palette';

type Context = CanvasRenderingContext2D;
/** Paints into a square of `size` device px. */
export type Sprite = (ctx: Context, size: number, palette: Palette, colour: string) => void;

function pen(ctx: Context, size: number, weight: number, colour: string): void {
  ctx.lineWidth = size * weight;
  ctx.strokeStyle = colour;
  ctx.fillStyle = colour;
  ctx.lineCap = 'round';
  ctx.lineJoin = 'round';
}

function circle(ctx: Context, x: number, y: number, r: number): void {
  ctx.beginPath();
  ctx.arc(x, y, r, 0, 2 * Math.PI);
}

/** Liquid. */
const dot: Sprite = (ctx, size, palette) => {
  pen(ctx, size, 0.1, palette.mark);
  circle(ctx, size / 2, size / 2, size * 0.4);
  ctx.fill();
};

/** Gas. */
const ring: Sprite = (ctx, size, palette) => {
  pen(ctx, size, 0.15, palette.mark);
  circle(ctx, size / 2, size / 2, size * 0.38);
  ctx.stroke();
};

/** Something moves in there, and no more than that: for whoever stands before a closed pipe. */
const stream: Sprite = (ctx, size, palette) => {
  pen(ctx, size, 0.16, palette.mark);
  ctx.globalAlpha = 0.5;
  ctx.beginPath();
  ctx.moveTo(size * 0.16, size / 2);
  ctx.lineTo(size * 0.84, size / 2);
  ctx.stroke();
};

/** Direction of flow where nothing may move. */
const arrow: Sprite = (ctx, size, palette) => {
  pen(ctx, size, 0.13, palette.mark);
  ctx.beginPath();
  ctx.moveTo(size * 0.3, size * 0.14);
  ctx.lineTo(size * 0.8, size * 0.5);
  ctx.lineTo(size * 0.3, size * 0.86);
  ctx.stroke();
};

/** Air on its way: an open wing. */
const wing: Sprite = (ctx, size, _palette, colour) => {
  pen(ctx, size, 0.12, colour);
  ctx.beginPath();
  ctx.moveTo(size * 0.34, size * 0.16);
  ctx.quadraticCurveTo(size * 0.5, size * 0.4, size * 0.68, size * 0.5);
  ctx.quadraticCurveTo(size * 0.5, size * 0.6, size * 0.34, size * 0.84);
  ctx.stroke();
};

/** The wheel of a blower or cross-flow fan, seen along its axis: many short curved blades. */
const drum: Sprite = (ctx, size, palette) => {
  const c = size / 2;
  const blades = 22;
  pen(ctx, size, 0.018, palette.ink);
  for (let i = 0; i < blades; i++) {
    const a = (i / blades) * 2 * Math.PI;
    ctx.beginPath();
    ctx.moveTo(c + c * 0.66 * Math.cos(a), c + c * 0.66 * Math.sin(a));
    ctx.quadraticCurveTo(
      c + c * 0.8 * Math.cos(a + 0.02),
      c + c * 0.8 * Math.sin(a + 0.02),
      c + c * 0.9 * Math.cos(a + 0.2),
      c + c * 0.9 * Math.sin(a + 0.2),
    );
    ctx.stroke();
  }
  pen(ctx, size, 0.012, palette.inkSoft);
  circle(ctx, c, c, c * 0.64);
  ctx.stroke();
  circle(ctx, c, c, c * 0.92);
  ctx.stroke();
  pen(ctx, size, 0.02, palette.ink);
  for (let i = 0; i < 3; i++) {
    const a = (i / 3) * 2 * Math.PI;
    ctx.beginPath();
    ctx.moveTo(c + c * 0.14 * Math.cos(a), c + c * 0.14 * Math.sin(a));
    ctx.lineTo(c + c * 0.64 * Math.cos(a), c + c * 0.64 * Math.sin(a));
    ctx.stroke();
  }
  ctx.fillStyle = palette.metal;
  circle(ctx, c, c, c * 0.14);
  ctx.fill();
  ctx.stroke();
};

/** An axial fan seen along its axis. */
const propeller: Sprite = (ctx, size, palette) => {
  const c = size / 2;
  for (let i = 0; i < 4; i++) {
    ctx.save();
    ctx.translate(c, c);
    ctx.rotate((i * Math.PI) / 2);
    pen(ctx, size, 0.016, palette.ink);
    ctx.beginPath();
    ctx.moveTo(c * 0.12, -c * 0.06);
    ctx.bezierCurveTo(c * 0.4, -c * 0.42, c * 0.85, -c * 0.36, c * 0.9, -c * 0.05);
    ctx.bezierCurveTo(c * 0.7, c * 0.12, c * 0.4, c * 0.14, c * 0.12, c * 0.06);
    ctx.closePath();
    ctx.fillStyle = palette.metal;
    ctx.fill();
    ctx.stroke();
    ctx.restore();
  }
  ctx.fillStyle = palette.metalDark;
  circle(ctx, c, c, c * 0.17);
  ctx.fill();
  ctx.stroke();
};

/** One blade seen from the side; its root is at the left edge. */
const blade: Sprite = (ctx, size, palette) => {
  pen(ctx, size, 0.03, palette.ink);
  ctx.beginPath();
  ctx.moveTo(0, size * 0.36);
  ctx.bezierCurveTo(size * 0.5, size * 0.1, size * 0.92, size * 0.08, size * 0.97, size * 0.3);
  ctx.lineTo(size * 0.97, size * 0.7);
  ctx.bezierCurveTo(size * 0.92, size * 0.92, size * 0.5, size * 0.9, 0, size * 0.64);
  ctx.closePath();
  ctx.fillStyle = palette.metal;
  ctx.fill();
  ctx.stroke();
};

const hub: Sprite = (ctx, size, palette) => {
  pen(ctx, size, 0.06, palette.ink);
  ctx.beginPath();
  ctx.roundRect(size * 0.1, size * 0.1, size * 0.8, size * 0.8, size * 0.3);
  ctx.fillStyle = palette.metalDark;
  ctx.fill();
  ctx.stroke();
};

function spiral(ctx: Context, size: number, turn: number): void {
  const c = size / 2;
  ctx.beginPath();
  for (let i = 0; i <= 60; i++) {
    const f = i / 60;
    const a = turn + f * 2.15 * 2 * Math.PI;
    const r = c * (0.08 + 0.68 * f);
    const x = c + r * Math.cos(a);
    const y = c + r * Math.sin(a);
    if (i === 0) ctx.moveTo(x, y);
    else ctx.lineTo(x, y);
  }
  ctx.stroke();
}

const scrollFixed: Sprite = (ctx, size, palette) => {
  pen(ctx, size, 0.05, palette.inkSoft);
  spiral(ctx, size, 0);
};

const scrollOrbiting: Sprite = (ctx, size, palette) => {
  pen(ctx, size, 0.05, palette.ink);
  spiral(ctx, size, Math.PI);
};

/** Sound beside the compressor's shell. */
const hum: Sprite = (ctx, size, palette) => {
  pen(ctx, size, 0.05, palette.ink);
  for (const r of [0.4, 0.62, 0.84]) {
    ctx.beginPath();
    ctx.arc(0, size / 2, size * r, -0.42, 0.42);
    ctx.stroke();
  }
};

const drop: Sprite = (ctx, size, palette) => {
  pen(ctx, size, 0.08, palette.water);
  ctx.beginPath();
  ctx.moveTo(size / 2, size * 0.08);
  ctx.bezierCurveTo(size * 0.9, size * 0.55, size * 0.8, size * 0.94, size / 2, size * 0.94);
  ctx.bezierCurveTo(size * 0.2, size * 0.94, size * 0.1, size * 0.55, size / 2, size * 0.08);
  ctx.fill();
};

const bubble: Sprite = (ctx, size, palette) => {
  pen(ctx, size, 0.12, palette.ink);
  circle(ctx, size / 2, size / 2, size * 0.4);
  ctx.globalAlpha = 0.55;
  ctx.fillStyle = palette.inside;
  ctx.fill();
  ctx.globalAlpha = 1;
  ctx.stroke();
};

/** Current in a lead. */
const dash: Sprite = (ctx, size, palette) => {
  pen(ctx, size, 0.3, palette.live);
  ctx.beginPath();
  ctx.moveTo(size * 0.2, size / 2);
  ctx.lineTo(size * 0.8, size / 2);
  ctx.stroke();
};

/** Which way and how fast a wheel turns, where nothing may move. */
const turning: Sprite = (ctx, size, palette) => {
  const c = size / 2;
  pen(ctx, size, 0.04, palette.live);
  ctx.beginPath();
  ctx.arc(c, c, c * 0.8, -2.4, -0.7);
  ctx.stroke();
  const a = -0.7;
  const x = c + c * 0.8 * Math.cos(a);
  const y = c + c * 0.8 * Math.sin(a);
  ctx.beginPath();
  ctx.moveTo(x - c * 0.3, y - c * 0.02);
  ctx.lineTo(x, y);
  ctx.lineTo(x + c * 0.02, y - c * 0.3);
  ctx.stroke();
};

export const SPRITES = {
  dot,
  ring,
  stream,
  arrow,
  wing,
  drum,
  propeller,
  blade,
  hub,
  scrollFixed,
  scrollOrbiting,
  hum,
  drop,
  bubble,
  dash,
  turning,
} as const;
export type SpriteName = keyof typeof SPRITES;
