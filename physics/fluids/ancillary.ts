import { PhysicsError } from '../errors';
import { exp, ln, pow } from '../math/elementary';
import type { Ancillary } from './refrigerantData';

const MAX_ITERATIONS = 60;

/** Value of an ancillary line, in its own unit. */
export function ancillary(line: Ancillary, temperature: number): number {
  const theta = 1 - temperature / line.tReducing;
  let sum = 0;
  for (const [n, t] of line.terms) sum += n * pow(theta, t);
  return line.form === 'exp' ? line.scale * exp((line.tReducing / temperature) * sum) : line.scale * (1 + sum);
}

/** d ln y / dT of an exponential ancillary line. */
export function lnSlope(line: Ancillary, temperature: number): number {
  const theta = 1 - temperature / line.tReducing;
  let sum = 0;
  let slope = 0;
  for (const [n, t] of line.terms) {
    const power = n * pow(theta, t);
    sum += power;
    slope += (power * t) / theta;
  }
  const x = line.tReducing / temperature;
  return -(x * sum) / temperature - slope / temperature;
}

/** Temperature at which an ancillary pressure line passes p. Throws `no-convergence`. */
export function invertAncillary(fluid: string, line: Ancillary, p: number, start?: number): number {
  const lnP = ln(p);
  // Straight line of ln p over 1/T through the critical point, with the slope of a typical refrigerant.
  let t = start ?? line.tReducing / (1 - (lnP - ln(line.scale)) / 7);
  for (let i = 0; i < MAX_ITERATIONS; i++) {
    t = Math.min(t, line.tReducing * (1 - 1e-9));
    const step = (lnP - ln(ancillary(line, t))) / lnSlope(line, t);
    const longest = 0.1 * t;
    t += step < -longest ? -longest : Math.min(step, longest);
    if (Math.abs(step) <= 1e-13 * t) return t;
  }
  throw new PhysicsError(
    'no-convergence',
    `${fluid}: temperature of an ancillary line did not converge at pressure ${p}`,
    { fluid, pressure: p },
  );
}
