/**
 * All small pictures on one texture, painted as they are first asked for. One texture, because Phaser's WebGL batches
 * many by a sampler index that software rasterisers get wrong within a block of pixels, and because it is faster.
 */
import type { Scene, Textures } from 'phaser';
import type { Palette } from '../paint/palette';
import { SPRITES, type SpriteName } from '../paint/sprites';

/** Side of a sheet in px for each device px a CSS px. */
const SIDE = 640;
/** Between pictures, so that smoothing never fetches a neighbour's edge, px. */
const GAP = 2;

export interface Picture {
  readonly key: string;
  readonly frame: string;
}

export class SpriteSheet {
  private readonly pictures = new Map<string, Picture>();
  private readonly sheets: Textures.CanvasTexture[] = [];
  private readonly stale = new Set<Textures.CanvasTexture>();
  private readonly side: number;
  private x = 0;
  private y = 0;
  private shelf = 0;

  constructor(
    private readonly scene: Scene,
    private readonly palette: Palette,
    density: number,
    private readonly prefix: string,
  ) {
    this.side = Math.ceil(SIDE * density);
  }

  picture(name: SpriteName, pixels: number, colour: string): Picture {
    const size = Math.max(4, Math.ceil(pixels));
    const frame = `${name}:${size}:${colour}`;
    let found = this.pictures.get(frame);
    if (!found) {
      found = this.paint(name, size, colour, frame);
      this.pictures.set(frame, found);
    }
    return found;
  }

  private paint(name: SpriteName, size: number, colour: string, frame: string): Picture {
    const sheet = this.roomFor(size);
    const { context } = sheet;
    context.save();
    context.translate(this.x, this.y);
    SPRITES[name](context, size, this.palette, colour);
    context.restore();
    sheet.add(frame, 0, this.x, this.y, size, size);
    this.x += size + GAP;
    this.shelf = Math.max(this.shelf, size + GAP);
    this.stale.add(sheet);
    return { key: sheet.key, frame };
  }

  /** Moves the pen to a free square: along the shelf, to a new shelf, or to a new sheet. */
  private roomFor(size: number): Textures.CanvasTexture {
    if (this.x + size > this.side) {
      this.x = 0;
      this.y += this.shelf;
      this.shelf = 0;
    }
    const current = this.sheets.at(-1);
    if (current && this.y + size <= this.side) return current;
    const side = Math.max(this.side, size);
    const key = `${this.prefix}sheet${this.sheets.length}`;
    const sheet = this.scene.textures.createCanvas(key, side, side);
    if (!sheet) throw new Error(`the sheet "${key}" exists already`);
    this.sheets.push(sheet);
    this.x = 0;
    this.y = 0;
    this.shelf = 0;
    return sheet;
  }

  /** Hands what was painted since the last time to the renderer. */
  flush(): void {
    for (const sheet of this.stale) sheet.refresh();
    this.stale.clear();
  }

  destroy(): void {
    for (const sheet of this.sheets) this.scene.textures.remove(sheet.key);
    this.sheets.length = 0;
    this.pictures.clear();
    this.stale.clear();
  }
}
