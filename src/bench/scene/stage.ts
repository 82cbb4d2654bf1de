/** What every moving thing needs: where the drawing lies, how to get a picture, and whether it may move at all. */
import type { GameObjects, Scene } from 'phaser';
import type { PlantDrawing, Snapshot } from '../../../physics/types';
import type { Layout } from '../geometry/layout';
import type { Reach } from '../model/reaches';
import type { Palette } from '../paint/palette';
import { SPRITES, type SpriteName } from '../paint/sprites';

export type Motion = 'full' | 'reduced';

/** Order in which the layers lie on each other. */
export const DEPTH = { works: 0, air: 1, marks: 2, fans: 3, overlay: 4, glass: 5 } as const;

export interface Mover {
  /** `seconds` since the last frame; 0 when nothing may move. */
  update(snapshot: Snapshot, seconds: number): void;
  destroy(): void;
}

export class Stage {
  private readonly keys = new Set<string>();

  constructor(
    readonly scene: Scene,
    readonly drawing: PlantDrawing,
    readonly reaches: readonly Reach[],
    readonly layout: Layout,
    /** device px a CSS px */
    readonly density: number,
    readonly palette: Palette,
    readonly motion: Motion,
    /** whether one sees what is inside the pipes */
    readonly inside: boolean,
    private readonly prefix: string,
  ) {}

  /** Device px of a length in metres. */
  size(metres: number): number {
    return metres * this.layout.scale * this.density;
  }

  x(metres: number): number {
    return (this.layout.left + metres * this.layout.scale) * this.density;
  }

  y(metres: number): number {
    return (this.layout.top + metres * this.layout.scale) * this.density;
  }

  /** Texture of a small picture, painted once a stage. The canvas renderer knows no tint: a colour is a texture. */
  sprite(name: SpriteName, pixels: number, colour = this.palette.ink): string {
    const side = Math.max(4, Math.ceil(pixels));
    const key = `${this.prefix}${name}:${side}:${colour}`;
    if (!this.keys.has(key)) {
      const texture = this.scene.textures.createCanvas(key, side, side);
      if (!texture) throw new Error(`the texture "${key}" exists already`);
      SPRITES[name](texture.context, side, this.palette, colour);
      texture.refresh();
      this.keys.add(key);
    }
    return key;
  }

  image(name: SpriteName, metres: number, depth: number): GameObjects.Image {
    return this.scene.add.image(0, 0, this.sprite(name, this.size(metres))).setDepth(depth);
  }

  destroy(): void {
    for (const key of this.keys) this.scene.textures.remove(key);
    this.keys.clear();
  }
}
