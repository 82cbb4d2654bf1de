/**
 * Solenoid valve in the liquid line, in series with the metering device: two areas of which the smaller decides.
 * Fully open it counts as part of the line; what a valve that hangs halfway adds is a resistance of 1/s² − 1.
 */

/** Area of the open valve over that of the wide-open metering device (typical for a valve of the line's size, ours). */
const AREA = 3;

/** Pressure drop over the valve relative to that over the metering device, for a share `passing` of its area. */
export function solenoidShare(opening: number, passing: number): number {
  const relative = opening / AREA;
  return relative * relative * (1 / (passing * passing) - 1);
}

/** Opening of the metering device that would pass what both together pass; exactly `opening` with the valve fully open. */
export function throughSolenoid(opening: number, passing: number): number {
  if (passing >= 1) return opening;
  if (passing <= 0) return 0;
  return opening / Math.sqrt(1 + solenoidShare(opening, passing));
}
