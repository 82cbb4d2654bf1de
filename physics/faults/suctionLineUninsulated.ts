import { conductanceFor, limited } from '../parts/line';
import { carriedBy } from '../solve/effective';
import type { Fault } from './types';

/**
 * Suction line that has lost its insulation. Severity: K by which its gas warms more between coil and service valve than with
 * insulation, at the healthy design flow and outdoor air.
 * Of a heat pump the vapour line: in heating it loses the discharge gas's heat outdoors instead.
 * Seen: ordinary superheat at the coil and much of it at the compressor, hot discharge, a little less cooling.
 * Remedy: insulate the pipe.
 */
export const SUCTION_LINE_UNINSULATED: Fault = {
  id: 'suction-line-uninsulated',
  plants: ['orifice-split', 'cold-room', 'thermostatic-heat-pump'],
  slight: 2.5,
  clear: 5,
  severe: 7,
  max: 9,
  unit: 'K',
  apply(machine, severity, design, { lines }) {
    const point = design.cooling ?? design;
    const { massFlow } = point;
    const { cpVapour, outdoor, tEvaporatorOut } = carriedBy(point);
    if (design.cooling) {
      // a heating machine's hot gas runs through the same bare pipe, all of it before the room
      const bare = (severity * massFlow * cpVapour) / (outdoor - tEvaporatorOut);
      machine.dischargeUa = conductanceFor(limited(machine.dischargeUa, massFlow) + bare, massFlow);
      return;
    }
    const more = (severity * massFlow * cpVapour) / ((lines.suctionShare ?? 1) * (outdoor - tEvaporatorOut));
    machine.suctionUa = conductanceFor(limited(machine.suctionUa, massFlow) + more, massFlow);
  },
};
