/**
 * What a zone of coil wall gives its heat to: entering air through fins, dry or wet. Linear in wall temperature:
 * heat from the air = k·(t − wall). A wall below the dew point is wet: enthalpy potential, linearised at the wall
 * temperature that balances the zone in the steady state.
 */
import type { AirStream } from './airStream';

export class Sink {
  /** W/K and K */
  k = 0.5;
  t = 300.5;
  wet = false;
  /** refrigerant temperature at which the wall of a wet single-phase zone reaches the dew point */
  tDry = 1e9;
  private transfer = 0.5;

  /**
   * @param conductance air side of the zone at full segment length, W/K
   * @param inner refrigerant side, W/K; `t` refrigerant temperature at the zone's start
   * @param warming single-phase refrigerant that warms along the zone
   * @param dried the zone lies behind the point where the wall came out of the dew
   */
  prepare(air: AirStream, conductance: number, inner: number, t: number, warming: boolean, dried: boolean): void {
    this.k = conductance;
    this.t = air.temperature;
    this.wet = false;
    this.tDry = 1e9;
    let wall = (inner * t + conductance * air.temperature) / (inner + conductance);
    if (dried || wall >= air.dewPoint) return;
    this.wet = true;
    const transfer = conductance / air.cp;
    this.transfer = transfer;
    const saturated = air.saturated;
    let slope = 0;
    for (let k = 0; k < 4; k++) {
      slope = saturated.slope(wall);
      const step =
        (inner * (wall - t) - transfer * (air.enthalpy - saturated.enthalpy(wall))) / (inner + transfer * slope);
      wall -= step;
      if (wall > air.dewPoint) wall = air.dewPoint;
      if (step < 1e-7 && step > -1e-7) break;
    }
    const h = saturated.enthalpy(wall);
    // Single phase warms along the zone: linearise by the chord up to the dew point, so that the wet zone meets the dry
    // one without a jump. Two-phase stays where it is: tangent.
    if (warming && air.dewPoint - wall > 1e-3) slope = (saturated.enthalpy(air.dewPoint) - h) / (air.dewPoint - wall);
    this.k = transfer * slope;
    this.t = wall + (air.enthalpy - h) / slope;
    if (warming) this.tDry = air.dewPoint + (this.k * (air.dewPoint - this.t)) / inner;
  }

  /** Water that a wall takes out of the air, kg/s at full segment length. */
  water(air: AirStream, wall: number): number {
    if (!this.wet) return 0;
    const flow = this.transfer * (air.humidity - air.saturated.humidity(wall));
    return flow > 0 ? flow : 0;
  }
}
