/** Bubbles behind the sight glass: as many as its share of gas, moving with the liquid. */
import type { GameObjects } from 'phaser';
import type { DrawnPart, Snapshot } from '../../../physics/types';
import { grain } from '../paint/grain';
import { DEPTH, type Mover, type Stage } from './stage';

const MOST = 26;
/** Windows crossed a second when the liquid line flows at its usual pace. */
const CROSSINGS = 0.9;
/** Mass flow over which the bubbles go no faster, kg/s. */
const USUAL_FLOW = 0.03;

export class SightGlass implements Mover {
  private readonly bubbles: GameObjects.Image[] = [];
  private readonly radius: number;
  private phase = 0;

  constructor(
    private readonly stage: Stage,
    private readonly part: DrawnPart,
  ) {
    this.radius = Math.min(part.w, part.h) * 0.5 * 0.72;
    for (let i = 0; i < MOST; i++) {
      const size = this.radius * (0.3 + 0.4 * grain(i, 41));
      this.bubbles.push(stage.image('bubble', size, DEPTH.glass));
    }
  }

  update(snapshot: Snapshot, seconds: number): void {
    const share = snapshot.looks.sightGlass;
    const flow = Math.max(0, snapshot.probes.refrigerantMassFlow.value);
    this.phase += CROSSINGS * Math.min(1, flow / USUAL_FLOW) * seconds;
    const cx = this.part.x + this.part.w / 2;
    const cy = this.part.y + this.part.h / 2;
    this.bubbles.forEach((bubble, i) => {
      const shown = share > grain(i, 42) * 0.98 + 0.005;
      bubble.setVisible(shown);
      if (!shown) return;
      const way = 1 - 2 * ((grain(i, 43) + this.phase * (0.7 + 0.6 * grain(i, 44))) % 1);
      const across = (2 * grain(i, 45) - 1) * 0.72 * Math.sqrt(Math.max(0, 1 - way * way));
      bubble.setPosition(this.stage.x(cx + this.radius * 0.82 * across), this.stage.y(cy + this.radius * 0.82 * way));
      bubble.setAlpha(Math.min(1, 4 * (1 - Math.abs(way))));
    });
  }

  destroy(): void {
    for (const bubble of this.bubbles) bubble.destroy();
  }
}
