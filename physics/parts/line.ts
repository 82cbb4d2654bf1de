/** Pipes between the units: heat between a pipe and what is around it. */
import { PhysicsError } from '../errors';

/** Bore of a liquid line, m2: 9.5 mm outside, 8 mm inside. */
export const LIQUID_BORE = 5.03e-5;

/** Heat capacity of a stream, J/(kg K), nominal: it only bounds what a starved line can exchange. */
const NOMINAL_CP = 1000;

/** A line cannot exchange more than its stream can carry, W/K. */
export function limited(ua: number, massFlow: number): number {
  return ua / (1 + ua / (massFlow * NOMINAL_CP));
}

/**
 * The conductance of which `limited` leaves `exchange` (W/K) at this flow: its inverse. Throws `bad-input` where the stream
 * cannot carry that much.
 */
export function conductanceFor(exchange: number, massFlow: number): number {
  const most = massFlow * NOMINAL_CP;
  if (!(exchange < most))
    throw new PhysicsError('bad-input', 'a line cannot exchange more than its stream carries', { exchange, most });
  return exchange / (1 - exchange / (massFlow * NOMINAL_CP));
}
