/** What surrounds and drives the circuit in one evaluation. */
export class Surroundings {
  outdoor = 308.5;
  /** kg/kg */
  outdoorHumidity = 0.0105;
  opening = 0.99;
  /** relative to rated */
  speed = 1.01;
  condenserWall: readonly number[] | Float64Array | null = null;
  evaporatorWall: readonly number[] | Float64Array | null = null;
  shell = Number.NaN;
  dt = 0.5;
  /** high-side mass a step ago, kg */
  massHigh = 0.5;
  /** kg of liquid that lies on the low side outside the march (after a start), at saturation */
  pool = 0;
  /** share of its area that a solenoid valve in the liquid line passes; 1 = open, or none there */
  passing = 1;
}
