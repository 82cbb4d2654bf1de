import { conductanceFor, limited } from '../parts/line';
import { carriedBy } from '../solve/effective';
import type { Fault } from './types';

/**
 * Suction line that has lost its insulation. Severity: K by which its gas warms more between coil and service valve than with
 * insulation, at the healthy design flow and outdoor air.
 * Seen: ordinary superheat at the coil and much of it at the compressor, hot discharge, a little less cooling.
 * Remedy: insulate the pipe.
 */
export const SUCTION_LINE_UNINSULATED: Fault = {
  id: 'suction-line-uninsulated',
  plants: ['orifice-split', 'cold-room'],
  slight: 2.5,
  clear: 5,
  severe: 7,
  max: 9,
  unit: 'K',
  apply(machine, severity, design, { lines }) {
    const { massFlow } = design;
    const { cpVapour, outdoor, tEvaporatorOut } = carriedBy(design);
    const more = (severity * massFlow * cpVapour) / ((lines.suctionShare ?? 1) * (outdoor - tEvaporatorOut));
    machine.suctionUa = conductanceFor(limited(machine.suctionUa, massFlow) + more, massFlow);
  },
};
