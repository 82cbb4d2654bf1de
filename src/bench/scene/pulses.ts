/** Dashes that run along the live leads, faster and closer to solid with more current. */
import type { GameObjects } from 'phaser';
import type { DrawnPath, Snapshot } from '../../../physics/types';
import { Route, type Spot } from '../geometry/route';
import { DEPTH, type Mover, type Stage } from './stage';

const SPACING = 0.2;
/** Metres on the drawing a second for each ampere. */
const SPEED_PER_AMPERE = 0.03;
const FASTEST = 0.6;

export class Pulses implements Mover {
  private readonly route: Route;
  private readonly dashes: GameObjects.Image[];
  private readonly spot: Spot = { x: 0, y: 0, angle: 0 };
  private phase = 0;

  constructor(
    private readonly stage: Stage,
    path: DrawnPath,
  ) {
    this.route = new Route(path, 0.03);
    const count = Math.max(1, Math.round(this.route.length / SPACING));
    this.dashes = Array.from({ length: count }, () => stage.image('dash', 0.085, DEPTH.marks));
  }

  update(snapshot: Snapshot, seconds: number): void {
    const current = Math.max(0, snapshot.probes.compressorCurrent.value);
    const spacing = this.route.length / this.dashes.length;
    const speed = Math.min(FASTEST, current * SPEED_PER_AMPERE);
    this.phase = (this.phase + (speed * seconds) / spacing) % this.dashes.length;
    this.dashes.forEach((dash, i) => {
      this.route.at(((i + 0.5 + this.phase) % this.dashes.length) * spacing, this.spot);
      dash
        .setPosition(this.stage.x(this.spot.x), this.stage.y(this.spot.y))
        .setRotation(this.spot.angle)
        .setVisible(current > 0.05);
    });
  }

  destroy(): void {
    for (const dash of this.dashes) dash.destroy();
  }
}
