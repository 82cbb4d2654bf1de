/** What every moving thing needs: where the drawing lies, how to get a picture, and whether it may move at all. */
import type { GameObjects, Scene } from 'phaser';
import type { PlantDrawing, Snapshot } from '../../../physics/types';
import type { Layout } from '../geometry/layout';
import type { Reach } from '../model/reaches';
import type { Palette } from '../paint/palette';
import type { SpriteName } from '../paint/sprites';
import { type Picture, SpriteSheet } from './spriteSheet';

export type Motion = 'full' | 'reduced';

/** Order in which the layers lie on each other. */
export const DEPTH = { works: 0, air: 1, marks: 2, fans: 3, overlay: 4, glass: 5 } as const;

export interface Mover {
  /** `seconds` since the last frame; 0 when nothing may move. */
  update(snapshot: Snapshot, seconds: number): void;
  destroy(): void;
}

export class Stage {
  private readonly sheet: SpriteSheet;

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
    prefix: string,
  ) {
    this.sheet = new SpriteSheet(scene, palette, density, prefix);
  }

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

  picture(name: SpriteName, metres: number, colour = this.palette.ink): Picture {
    return this.sheet.picture(name, this.size(metres), colour);
  }

  image(name: SpriteName, metres: number, depth: number): GameObjects.Image {
    const { key, frame } = this.picture(name, metres);
    return this.scene.add.image(0, 0, key, frame).setDepth(depth);
  }

  flush(): void {
    this.sheet.flush();
  }

  destroy(): void {
    this.sheet.destroy();
  }
}
