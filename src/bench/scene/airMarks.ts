/** Wings that fly with the air: as fast as it flows and, for whoever sees inside, in the warmth it has. */
import type { GameObjects } from 'phaser';
import type { DrawnAir, ProbeName, Snapshot } from '../../../physics/types';
import { Route, type Spot } from '../geometry/route';
import { lookAt, probeAt } from '../model/stations';
import { mixColours, type Palette, warmthColour } from '../paint/palette';
import type { Picture } from './spriteSheet';
import { DEPTH, type Mover, type Stage } from './stage';

const SPACING = 0.3;
const SIZE = 0.17;
/** Metres on the drawing a second at this flow, m3/s: an indoor unit of 10 kW at its rated flow goes half as fast. */
const SPEED_PER_FLOW = 1.1;
const FASTEST = 1.3;
const SLOWEST_SEEN = 0.06;
/** Air is shown in steps of this many K, each with a picture of its own: the canvas renderer knows no tint. */
const WARMTH_STEP = 2;

/** Which air temperature a flight carries. */
const CARRIED: Readonly<Record<`${DrawnAir['role']}-${DrawnAir['stage']}`, ProbeName>> = {
  'condenser-entering': 'condenserEnteringAirTemp',
  'condenser-leaving': 'condenserLeavingAirTemp',
  'evaporator-entering': 'returnAirTemp',
  'evaporator-leaving': 'supplyAirTemp',
};
/** The same of a machine with one outdoor coil, which condenses or evaporates. */
const CARRIED_BY_ONE: typeof CARRIED = {
  ...CARRIED,
  'condenser-entering': 'outdoorEnteringAirTemp',
  'condenser-leaving': 'outdoorLeavingAirTemp',
};

interface Flight {
  readonly air: DrawnAir;
  readonly route: Route;
  readonly wings: readonly GameObjects.Image[];
  phase: number;
}

export class AirMarks implements Mover {
  private readonly flights: Flight[];
  private readonly spot: Spot = { x: 0, y: 0, angle: 0 };

  constructor(private readonly stage: Stage) {
    this.flights = stage.drawing.air.map((air) => {
      const route = new Route(air.points, 0.25);
      const count = Math.max(2, Math.round(route.length / (SPACING * (stage.drawing.sparse ?? 1))));
      const wings = Array.from({ length: count }, () => stage.image('wing', SIZE, DEPTH.air));
      return { air, route, wings, phase: 0 };
    });
  }

  update(snapshot: Snapshot, seconds: number): void {
    for (const flight of this.flights) {
      const { air, route, wings } = flight;
      const isOutdoor = air.role === 'condenser';
      const fan = lookAt(snapshot, isOutdoor ? 'condenserFanSpeed' : 'evaporatorFanSpeed', air.of);
      const outdoorFlow = air.of === undefined ? 'outdoorAirFlow' : 'condenserAirFlow';
      // The draught through a standing fan is too little to see.
      const flow = fan > 0 ? probeAt(snapshot, isOutdoor ? outdoorFlow : 'supplyAirFlow', air.of) : 0;
      const speed = flow <= 0 ? 0 : Math.min(FASTEST, Math.max(SLOWEST_SEEN, flow * SPEED_PER_FLOW));
      const spacing = route.length / wings.length;
      flight.phase = (flight.phase + (speed * seconds) / spacing) % wings.length;
      const carried = air.of === undefined ? CARRIED_BY_ONE : CARRIED;
      const picture = this.picture(probeAt(snapshot, carried[`${air.role}-${air.stage}`], air.of));
      for (let i = 0; i < wings.length; i++) {
        const distance = ((i + flight.phase) % wings.length) * spacing;
        const share = distance / route.length;
        route.at(distance, this.spot);
        wings[i]
          .setPosition(this.stage.x(this.spot.x), this.stage.y(this.spot.y))
          .setRotation(this.spot.angle)
          .setTexture(picture.key, picture.frame)
          .setAlpha(flow > 0 ? Math.min(1, 5 * share, 5 * (1 - share)) : 0);
      }
    }
  }

  private picture(kelvin: number): Picture {
    if (!this.stage.inside) return this.stage.picture('wing', SIZE, this.stage.palette.air);
    const step = Math.round(kelvin / WARMTH_STEP) * WARMTH_STEP;
    return this.stage.picture('wing', SIZE, towardInk(this.stage.palette, step));
  }

  destroy(): void {
    for (const flight of this.flights) for (const wing of flight.wings) wing.destroy();
  }
}

/** A pale wing would be lost on paper, a dark one at night: warmth with a third of ink in it. */
function towardInk(palette: Palette, kelvin: number): string {
  return mixColours(warmthColour(palette, kelvin), palette.ink, 0.38);
}
