/**
 * The scene: a still layer painted by `paint/`, repainted only when what it shows has changed, the movers on it, and
 * the parts that lie over them. It holds no state of the machine; it is told a snapshot and shows it.
 */
import { type GameObjects, Scene, type Textures } from 'phaser';
import type { DrawnPart, PlantDrawing, Snapshot } from '../../../physics/types';
import type { Layout } from '../geometry/layout';
import type { Reach } from '../model/reaches';
import { type Light, paletteOf } from '../paint/palette';
import { FOREGROUND } from '../paint/parts';
import { penFor } from '../paint/pen';
import { paintGroundwork, paintWorks, worksKey } from '../paint/sheet';
import { AirMarks } from './airMarks';
import { Compressor } from './compressor';
import { Drips } from './drips';
import { fanMover } from './fans';
import { FlowMarks } from './flowMarks';
import { Pulses } from './pulses';
import { SightGlass } from './sightGlass';
import { DEPTH, type Motion, type Mover, Stage } from './stage';

export interface Look {
  readonly layout: Layout;
  readonly density: number;
  readonly light: Light;
  readonly motion: Motion;
  readonly inside: boolean;
}

/** Room for what sticks out of a part's own box, m. */
const MARGIN = 0.2;

interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A repaint of the works costs a few ms: no more often than this, s. */
const REPAINT_EVERY = 0.25;
/** A tab that comes back from sleep must not make everything leap, s. */
const LONGEST_FRAME = 0.1;

export class BenchScene extends Scene {
  private look: Look;
  private snapshot: Snapshot | null = null;
  private stage: Stage | null = null;
  private movers: Mover[] = [];
  private layers: GameObjects.Image[] = [];
  private keys: string[] = [];
  private groundwork: HTMLCanvasElement | null = null;
  private painted = '';
  private sincePaint = Number.POSITIVE_INFINITY;
  private generation = 0;
  private created = false;
  private pace = 1;
  /** frames still to be drawn before a picture without motion may rest */
  private restless = 3;

  constructor(
    private readonly drawing: PlantDrawing,
    private readonly reaches: readonly Reach[],
    look: Look,
    private readonly onCreated: () => void,
  ) {
    super({ key: 'bench' });
    this.look = look;
  }

  create(): void {
    this.created = true;
    this.rebuild();
    this.onCreated();
  }

  setLook(look: Look): void {
    this.look = look;
    if (this.created) this.rebuild();
  }

  setPace(factor: number): void {
    this.pace = factor;
  }

  setSnapshot(snapshot: Snapshot): void {
    // The first one is shown at once: marks of its contents in pipes of bare copper would be neither view.
    if (!this.snapshot) this.sincePaint = Number.POSITIVE_INFINITY;
    this.snapshot = snapshot;
    this.wake();
  }

  private wake(): void {
    this.restless = 3;
    if (this.created && !this.game.loop.running) this.game.loop.wake();
  }

  private rebuild(): void {
    this.clear();
    const { layout, density, light, motion, inside } = this.look;
    const palette = paletteOf(light);
    this.generation += 1;
    const stage = new Stage(
      this,
      this.drawing,
      this.reaches,
      layout,
      density,
      palette,
      motion,
      inside,
      `g${this.generation}:`,
    );
    this.stage = stage;
    this.groundwork = document.createElement('canvas');
    this.groundwork.width = Math.ceil(layout.width * density);
    this.groundwork.height = Math.ceil(layout.height * density);
    const ground = this.groundwork.getContext('2d');
    if (!ground) throw new Error('this browser gives no 2D canvas');
    paintGroundwork(penFor(ground, palette, layout, density), this.drawing);
    this.addLayer('works', DEPTH.works, { x: 0, y: 0, width: this.groundwork.width, height: this.groundwork.height });
    for (const part of this.drawing.parts) this.addForeground(part);
    this.movers = this.makeMovers(stage);
    stage.flush();
    this.painted = '';
    this.sincePaint = Number.POSITIVE_INFINITY;
    this.paintWorks();
    this.wake();
  }

  private makeMovers(stage: Stage): Mover[] {
    const movers: Mover[] = [new FlowMarks(stage), new AirMarks(stage), new Drips(stage, this.drawing.drain)];
    for (const part of this.drawing.parts) {
      if (part.kind === 'fan') movers.push(fanMover(stage, part));
      if (part.kind === 'compressor') movers.push(new Compressor(stage, part));
      if (part.kind === 'sight-glass') movers.push(new SightGlass(stage, part));
    }
    for (const wire of this.drawing.wires) if (wire.live) movers.push(new Pulses(stage, wire.points));
    return movers;
  }

  private addLayer(name: string, depth: number, area: Area): Textures.CanvasTexture {
    const key = this.textureKey(name);
    const texture = this.textures.createCanvas(key, area.width, area.height);
    if (!texture) throw new Error(`the layer "${name}" exists already`);
    this.keys.push(key);
    this.layers.push(this.add.image(area.x, area.y, key).setOrigin(0).setDepth(depth));
    return texture;
  }

  /** A part that lies over the refrigerant, in a picture just as large as itself. */
  private addForeground(part: DrawnPart): void {
    const paint = FOREGROUND[part.kind];
    const { stage } = this;
    if (!paint || !stage) return;
    const { layout, density, light } = this.look;
    const x = Math.floor(stage.x(part.x - MARGIN));
    const y = Math.floor(stage.y(part.y - MARGIN));
    const width = Math.ceil(stage.size(part.w + 2 * MARGIN)) + 1;
    const height = Math.ceil(stage.size(part.h + 2 * MARGIN)) + 1;
    const texture = this.addLayer(`part:${part.id}`, DEPTH.overlay, { x, y, width, height });
    const shifted = { ...layout, left: layout.left - x / density, top: layout.top - y / density };
    paint(penFor(texture.context, paletteOf(light), shifted, density), part);
    texture.refresh();
  }

  private textureKey(name: string): string {
    return `g${this.generation}:${name}`;
  }

  private paintWorks(): void {
    const { layout, density, light, inside } = this.look;
    const key = worksKey(this.snapshot, inside);
    if (key === this.painted || !this.groundwork) return;
    const texture = this.textures.get(this.textureKey('works')) as Textures.CanvasTexture;
    const { context } = texture;
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.drawImage(this.groundwork, 0, 0);
    const pen = penFor(context, paletteOf(light), layout, density);
    paintWorks(pen, this.drawing, this.reaches, this.snapshot, inside);
    texture.refresh();
    this.painted = key;
    this.sincePaint = 0;
  }

  override update(_time: number, delta: number): void {
    const elapsed = Math.min(LONGEST_FRAME, delta / 1000);
    this.sincePaint += elapsed;
    if (this.sincePaint >= REPAINT_EVERY) this.paintWorks();
    if (!this.snapshot) return;
    const seconds = this.look.motion === 'reduced' ? 0 : elapsed * this.pace;
    for (const mover of this.movers) mover.update(this.snapshot, seconds);
    this.stage?.flush();
    this.rest();
  }

  /** Without motion there is nothing to draw until the next change. */
  private rest(): void {
    if (this.look.motion !== 'reduced') return;
    this.restless -= 1;
    const stale = worksKey(this.snapshot, this.look.inside) !== this.painted;
    if (this.restless <= 0 && !stale) this.game.loop.sleep();
  }

  private clear(): void {
    for (const mover of this.movers) mover.destroy();
    this.movers = [];
    for (const layer of this.layers) layer.destroy();
    this.layers = [];
    for (const key of this.keys) this.textures.remove(key);
    this.keys = [];
    this.stage?.destroy();
    this.stage = null;
  }
}
