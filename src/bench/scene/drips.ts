/** Water from the indoor coil: drops fall from the end of the drain as often as the coil wrings water from the air. */
import type { GameObjects } from 'phaser';
import type { DrawnPath, Snapshot } from '../../../physics/types';
import { waterOff } from '../model/water';
import { DEPTH, type Mover, type Stage } from './stage';

/** Drops drawn for each gram of water. */
const DROPS_PER_GRAM = 1.5;
const FALL = 0.34;
const FALL_SECONDS = 0.55;

export class Drips implements Mover {
  private readonly drops: GameObjects.Image[];
  private readonly x: number;
  private readonly y: number;
  private phase = 0;

  constructor(
    private readonly stage: Stage,
    drain: DrawnPath,
  ) {
    const [x, y] = drain[drain.length - 1];
    this.x = x;
    this.y = y;
    this.drops = [0, 1, 2].map(() => stage.image('drop', 0.085, DEPTH.glass));
  }

  update(snapshot: Snapshot, seconds: number): void {
    const perSecond = Math.min(this.drops.length / FALL_SECONDS, waterOff(snapshot) * 1000 * DROPS_PER_GRAM);
    this.phase = (this.phase + perSecond * seconds) % this.drops.length;
    this.drops.forEach((drop, i) => {
      // Time since this drop let go, in seconds at the present rate.
      const since = perSecond > 0 ? ((this.phase + i) % this.drops.length) / perSecond : Number.POSITIVE_INFINITY;
      const fallen = since / FALL_SECONDS;
      drop.setVisible(perSecond > 0 && (fallen < 1 || (seconds === 0 && i === 0)));
      const way = seconds === 0 ? 0.3 : fallen * fallen;
      drop.setPosition(this.stage.x(this.x), this.stage.y(this.y + 0.05 + FALL * way));
      drop.setAlpha(fallen < 1 ? 1 - 0.6 * way : 1);
    });
  }

  destroy(): void {
    for (const drop of this.drops) drop.destroy();
  }
}
