import { conductanceFor, LIQUID_BORE, limited } from '../parts/line';
import type { Fault } from './types';

/**
 * Lines laid far longer than planned, in the same width. Severity: metres more than planned. Both pipes drop that much more
 * pressure and the suction gas warms on as many more metres; what the further liquid line holds was weighed in, so neither
 * its volume nor its charge are carried. Seen: suction low at the service valve though the coil boils no colder, more
 * superheat there than at the coil, less cooling and less current; pressures at rest and the charge label as they should be.
 * Told with a tape measure. Remedy: lay the pipes as planned (or wider ones).
 * Not where the line to the room carries expanded refrigerant.
 */
export const LINES_TOO_LONG: Fault = {
  id: 'lines-too-long',
  plants: ['orifice-split'],
  slight: 12,
  clear: 25,
  severe: 40,
  max: 60,
  unit: 'm',
  apply(machine, severity, { massFlow }, { liquid, lines }) {
    const more = severity / plannedMetres(lines.liquidLineVolume ?? 0);
    machine.linesLonger += more;
    machine.line += more * liquid.line;
    machine.suctionLine += more * (lines.suctionDrop ?? 0);
    const bare = limited(lines.suctionUa ?? 0, massFlow);
    machine.suctionUa = conductanceFor(limited(machine.suctionUa, massFlow) + more * bare, massFlow);
  },
};

/** m of a line that holds this much, m3. */
function plannedMetres(volume: number): number {
  return volume / LIQUID_BORE;
}
