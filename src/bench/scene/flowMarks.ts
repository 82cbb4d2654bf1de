/**
 * Marks that ride in the refrigerant: dots for liquid, rings for gas, or mere strokes for whoever may not see inside.
 * Their speed is mass flow over density and bore, all pipes slowed by the same factor; a mark keeps its own threshold,
 * so that in a coil one sees liquid turn to gas.
 */
import type { GameObjects } from 'phaser';
import type { Snapshot } from '../../../physics/types';
import type { Spot } from '../geometry/route';
import { type Content, contentAt, type Reach, speedsOf } from '../model/reaches';
import { grain } from '../paint/grain';
import { DEPTH, type Mover, type Stage } from './stage';

/** Metres on the drawing a second for each m/s in the pipe: the eye cannot follow more than about 1 m/s. */
const SLOWING = 0.1;
const FASTEST = 1.4;
const SPACING = 0.17;
/** Size of a mark as a share of its channel. */
const MARK = 0.8;
/** Where nothing may move, each of these marks is an arrow. */
const ARROW_EVERY = 4;
/** Two-phase flow always shows some of either mark, however little of one there is by volume. */
const LEAST_SHARE = 0.15;

interface Train {
  readonly reach: Reach;
  readonly marks: readonly GameObjects.Image[];
  readonly isRing: boolean[];
  readonly spacing: number;
  phase: number;
}

export class FlowMarks implements Mover {
  private readonly trains: Train[];
  private readonly spot: Spot = { x: 0, y: 0, angle: 0 };
  private readonly content: Content = { temperature: 0, gas: 0 };

  constructor(private readonly stage: Stage) {
    this.trains = stage.reaches.map((reach) => this.trainFor(reach));
  }

  private trainFor(reach: Reach): Train {
    const spacing = SPACING * (this.stage.drawing.sparse ?? 1);
    const count = Math.max(1, Math.round(reach.route.length / spacing));
    const size = reach.width * MARK;
    const marks: GameObjects.Image[] = [];
    for (let i = 0; i < count; i++) {
      const plain = this.stage.inside ? 'dot' : 'stream';
      marks.push(this.stage.image(this.isArrow(i) ? 'arrow' : plain, size, DEPTH.marks));
    }
    return { reach, marks, isRing: marks.map(() => false), spacing: reach.route.length / count, phase: 0.5 };
  }

  private isArrow(i: number): boolean {
    return this.stage.motion === 'reduced' && i % ARROW_EVERY === 2;
  }

  update(snapshot: Snapshot, seconds: number): void {
    const speeds = speedsOf(this.stage.reaches, snapshot);
    this.trains.forEach((train, k) => {
      const speed = Math.min(FASTEST, Math.max(-FASTEST, speeds[k] * SLOWING));
      const count = train.marks.length;
      train.phase = (((train.phase + (speed * seconds) / train.spacing) % count) + count) % count;
      this.place(train, k, snapshot, speed);
    });
  }

  private place(train: Train, k: number, snapshot: Snapshot, speed: number): void {
    const { stage, spot, content } = this;
    const { reach, marks, isRing } = train;
    const dot = stage.picture('dot', reach.width * MARK);
    const ring = stage.picture('ring', reach.width * MARK);
    for (let i = 0; i < marks.length; i++) {
      const distance = ((i + train.phase) % marks.length) * train.spacing;
      reach.route.at(distance, spot);
      const mark = marks[i];
      mark.setPosition(stage.x(spot.x), stage.y(spot.y));
      if (this.isArrow(i)) {
        mark.setRotation(speed < 0 ? spot.angle + Math.PI : spot.angle).setVisible(speed !== 0);
        continue;
      }
      if (!stage.inside) {
        mark.setRotation(spot.angle);
        continue;
      }
      contentAt(reach, snapshot, distance / reach.route.length, content);
      const rings = ringShare(content.gas) > grain(i, 100 + k);
      if (rings === isRing[i]) continue;
      isRing[i] = rings;
      const { key, frame } = rings ? ring : dot;
      mark.setTexture(key, frame);
    }
  }

  destroy(): void {
    for (const train of this.trains) for (const mark of train.marks) mark.destroy();
  }
}

function ringShare(gas: number): number {
  if (gas <= 0 || gas >= 1) return gas;
  return Math.min(1 - LEAST_SHARE, Math.max(LEAST_SHARE, gas));
}
