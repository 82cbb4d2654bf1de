/** The scroll that orbits in the compressor's window, and its hum beside the shell. */
import type { GameObjects } from 'phaser';
import type { DrawnPart, Snapshot } from '../../../physics/types';
import { scrollWindow } from '../paint/parts';
import { DEPTH, type Mover, type Stage } from './stage';

/** Orbits a second on the drawing for each Hz of the shaft. */
const ORBITS_PER_HERTZ = 1 / 45;
/** Electric power at which the hum is drawn half as strong as it gets, W. */
const HALF_HUM = 1500;

export class Compressor implements Mover {
  private readonly fixed: GameObjects.Image;
  private readonly orbiting: GameObjects.Image;
  private readonly hums: GameObjects.Image[];
  private readonly x: number;
  private readonly y: number;
  private readonly throwPx: number;
  private angle = 0;

  constructor(stage: Stage, part: DrawnPart) {
    const { cx, cy, r } = scrollWindow(part);
    this.x = stage.x(cx);
    this.y = stage.y(cy);
    this.throwPx = stage.size(r * 0.13);
    this.fixed = stage.image('scrollFixed', 2 * r * 0.94, DEPTH.fans).setPosition(this.x, this.y);
    this.orbiting = stage.image('scrollOrbiting', 2 * r * 0.9, DEPTH.fans);
    const reach = part.w * 0.34;
    this.hums = [-1, 1].map((side) =>
      stage
        .image('hum', reach, DEPTH.fans)
        .setOrigin(0, 0.5)
        .setPosition(stage.x(part.x + part.w / 2 + side * part.w * 0.5), stage.y(part.y + part.h * 0.34))
        .setFlipX(side < 0),
    );
    this.hums[0].setOrigin(1, 0.5);
  }

  update(snapshot: Snapshot, seconds: number): void {
    const hertz = Math.max(0, snapshot.probes.compressorSpeed.value);
    this.angle = (this.angle + 2 * Math.PI * hertz * ORBITS_PER_HERTZ * seconds) % (2 * Math.PI);
    this.orbiting.setPosition(
      this.x + this.throwPx * Math.cos(this.angle),
      this.y + this.throwPx * Math.sin(this.angle),
    );
    const power = Math.max(0, snapshot.probes.compressorPower.value);
    const strength = hertz > 0 ? power / (power + HALF_HUM) : 0;
    const beat = seconds > 0 ? 0.75 + 0.25 * Math.sin(3 * this.angle) : 1;
    for (const hum of this.hums) hum.setAlpha(strength * beat);
  }

  destroy(): void {
    this.fixed.destroy();
    this.orbiting.destroy();
    for (const hum of this.hums) hum.destroy();
  }
}
