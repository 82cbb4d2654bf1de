/**
 * Coil walls between a still refrigerant and the air, and what ice does to the evaporator's walls.
 */
import { exp } from '../math/elementary';
import type { AirStream } from '../parts/airStream';
import { type CoilData, WALL_FIELDS } from '../parts/coil';
import type { IceData } from '../parts/ice';
import type { Vessel } from './vessels';

/** Heat of fusion of ice, J/kg (ASHRAE Fundamentals). */
export const FUSION = 3.34e5;
/** Heat of sublimation-ish offset used for moisture leaving the air, J/kg. */
const WATER = 2.501e6;
/** kg of ice that one segment can carry where ice does not block air (our bound), and melting by a wall above freezing, W/K */
const FROST_LIMIT = 0.12;
const MELT = 12;

export interface WallStep {
  /** new walls in the layout of `CoilMarch.walls` */
  readonly walls: number[];
  /** W into the refrigerant */
  readonly heat: number;
  /** W out of the air, of that as water kg/s */
  readonly airHeat: number;
  readonly water: number;
  readonly waterBySegment: number[];
}

/** One implicit step of a coil whose refrigerant stands in equilibrium. */
export function stillCoil(
  coil: CoilData,
  air: AirStream,
  vessel: Vessel,
  before: readonly number[],
  dt: number,
  driven: boolean,
  mass: number,
): WallStep {
  const n = coil.segments;
  const capacity = coil.wallCapacity / n / dt;
  const rate = (air.massFlow * air.cp) / n;
  const toAir = rate * (1 - exp(-air.ua / n / rate)) + 0.4;
  const walls: number[] = [];
  const waterBySegment: number[] = [];
  const perCapacity = 1 / vessel.heatCapacity(mass);
  let heat = 0;
  let airHeat = 0;
  let water = 0;
  for (let i = 0; i < n; i++) {
    const old = before[i * WALL_FIELDS];
    const bare = (vessel.coefficient(old, driven) * coil.innerArea) / n;
    // the refrigerant follows within the step: never more heat than brings it to the wall
    const inner = bare / (1 + bare * n * dt * perCapacity);
    let wet = 0;
    if (old < air.dewPoint) {
      const flow = ((toAir - 0.4) / air.cp) * (air.humidity - air.saturated.humidity(old));
      if (flow > 0) wet = flow;
    }
    const next =
      (capacity * old + inner * vessel.temperature + toAir * air.temperature + wet * WATER) /
      (capacity + inner + toAir);
    for (let field = 0; field < WALL_FIELDS; field++) walls.push(next);
    waterBySegment.push(wet);
    heat += inner * (next - vessel.temperature);
    airHeat += toAir * (air.temperature - next) + wet * WATER;
    water += wet;
  }
  return { walls, heat, airHeat, water, waterBySegment };
}

/**
 * Ice grows on freezing walls from the water that they take, melts on warm ones; heat of fusion goes to the wall.
 * @param ice of the outdoor coil of a machine that heats; left out = a coil that is not meant to freeze
 */
export function frostStep(
  frost: readonly number[],
  walls: number[],
  water: ArrayLike<number>,
  segmentCapacity: number,
  dt: number,
  ice?: IceData,
): number[] {
  const limit = ice ? ice.full / frost.length : FROST_LIMIT;
  const melt = ice ? ice.melt : MELT;
  return frost.map((kg, i) => {
    const wall = walls[i * WALL_FIELDS];
    if (wall < 273.15) {
      const grown = Math.min(water[i] * dt, limit - kg);
      if (grown <= 0) return kg;
      warm(walls, i, (grown * FUSION) / segmentCapacity);
      return kg + grown;
    }
    if (kg <= 0) return 0;
    const melted = Math.min(kg, (melt * (wall - 273.15) * dt) / FUSION);
    warm(walls, i, (-melted * FUSION) / segmentCapacity);
    return kg - melted;
  });
}

function warm(walls: number[], segment: number, by: number): void {
  for (let field = 0; field < WALL_FIELDS; field++) walls[segment * WALL_FIELDS + field] += by;
}
