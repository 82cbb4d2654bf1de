/** Fans: wheels seen along their axis rotate; propellers seen from the side show their blades come and go. */
import type { GameObjects } from 'phaser';
import type { DrawnPart, Snapshot } from '../../../physics/types';
import { lookAt } from '../model/stations';
import { isRound } from '../paint/parts';
import { DEPTH, type Mover, type Stage } from './stage';

/** Turns a second on the drawing at rated speed; a real fan's 15 or so would only flicker. */
const TURNS = 0.8;
const BLADES = 3;
const FULL_TURN = 2 * Math.PI;

export function fanMover(stage: Stage, part: DrawnPart): Mover {
  return isRound(part) ? new Wheel(stage, part) : new SideView(stage, part);
}

/** Share of rated speed. */
function speedOf(part: DrawnPart, snapshot: Snapshot): number {
  return lookAt(snapshot, part.role === 'condenser' ? 'condenserFanSpeed' : 'evaporatorFanSpeed', part.of);
}

/** The arrow that tells of turning where nothing may turn. */
class TurnSign {
  private readonly image: GameObjects.Image | null;

  constructor(stage: Stage, x: number, y: number, metres: number) {
    this.image =
      stage.motion === 'reduced'
        ? stage.image('turning', metres, DEPTH.glass).setPosition(stage.x(x), stage.y(y))
        : null;
  }

  show(speed: number): void {
    this.image?.setVisible(speed > 0).setAlpha(0.35 + 0.65 * Math.min(1, speed));
  }

  destroy(): void {
    this.image?.destroy();
  }
}

class Wheel implements Mover {
  private readonly image: GameObjects.Image;
  private readonly sign: TurnSign;
  private angle = 0;

  constructor(
    stage: Stage,
    private readonly part: DrawnPart,
  ) {
    const size = Math.min(part.w, part.h);
    const x = part.x + part.w / 2;
    const y = part.y + part.h / 2;
    this.image = stage.image(part.role === 'condenser' ? 'propeller' : 'drum', size, DEPTH.fans);
    this.image.setPosition(stage.x(x), stage.y(y));
    this.sign = new TurnSign(stage, x, y, size * 0.8);
  }

  update(snapshot: Snapshot, seconds: number): void {
    const speed = speedOf(this.part, snapshot);
    this.angle = (this.angle + FULL_TURN * TURNS * speed * seconds) % FULL_TURN;
    this.image.setRotation(this.angle);
    this.sign.show(speed);
  }

  destroy(): void {
    this.image.destroy();
    this.sign.destroy();
  }
}

class SideView implements Mover {
  private readonly blades: GameObjects.Image[] = [];
  private readonly hub: GameObjects.Image;
  private readonly sign: TurnSign;
  private readonly flat: boolean;
  private readonly radius: number;
  private readonly depth: number;
  private angle = 0.4;

  constructor(
    private readonly stage: Stage,
    private readonly part: DrawnPart,
  ) {
    this.flat = part.w > part.h;
    this.radius = Math.max(part.w, part.h) / 2;
    this.depth = Math.min(part.w, part.h);
    const x = part.x + part.w / 2;
    const y = part.y + part.h / 2;
    for (let i = 0; i < BLADES; i++) {
      const blade = stage.image('blade', this.radius, DEPTH.fans).setOrigin(0, 0.5);
      blade.setPosition(stage.x(x), stage.y(y)).setRotation(this.flat ? 0 : Math.PI / 2);
      this.blades.push(blade);
    }
    this.hub = stage.image('hub', this.depth * 1.1, DEPTH.fans).setPosition(stage.x(x), stage.y(y));
    this.sign = new TurnSign(stage, x, y, this.depth * 2.2);
  }

  update(snapshot: Snapshot, seconds: number): void {
    const speed = speedOf(this.part, snapshot);
    this.angle = (this.angle + FULL_TURN * TURNS * speed * seconds) % FULL_TURN;
    const width = this.stage.size(this.radius) / this.blades[0].width;
    const thickness = this.stage.size(this.depth) / this.blades[0].height;
    this.blades.forEach((blade, i) => {
      const a = this.angle + (i * FULL_TURN) / BLADES;
      // Seen from the side a blade is as long as its projection, and widest when it points at the eye.
      blade.setScale(width * Math.cos(a), thickness * (0.35 + 0.65 * Math.abs(Math.sin(a))));
      blade.setAlpha(Math.sin(a) > 0 ? 1 : 0.7);
    });
    this.sign.show(speed);
  }

  destroy(): void {
    for (const blade of this.blades) blade.destroy();
    this.hub.destroy();
    this.sign.destroy();
  }
}
