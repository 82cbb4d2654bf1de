import { conductanceFor } from '../parts/line';
import { HOT_BESIDE } from '../solve/circuit';
import { carriedBy } from '../solve/effective';
import type { Fault } from './types';

/**
 * Liquid line that gains heat on its way (strapped to a heating pipe, bare under sunlit sheet metal). Severity: K by which the
 * liquid is warmer at the metering device than behind the drier, at the healthy design flow.
 * Seen: subcooling at the port as ever or more, yet the coil starves: the liquid flashes before the metering device; the pipe
 * is warmer indoors than behind the drier. Remedy: lay it away from the heat and insulate it.
 * In heating the liquid warms on its way to the outdoor unit, before its port: little subcooling there.
 * Not where the metering device sits in the outdoor unit.
 */
export const LIQUID_LINE_HEATED: Fault = {
  id: 'liquid-line-heated',
  plants: ['orifice-split', 'cold-room', 'thermostatic-heat-pump'],
  // a sealed unit comes with its lines: nobody lays them
  lacking: { 'cold-room': ['R-290'] },
  slight: 2.5,
  clear: 5,
  severe: 7,
  max: 8,
  unit: 'K',
  apply(machine, severity, design) {
    const point = design.cooling ?? design;
    const { massFlow } = point;
    const { cpLiquid, tLiquid } = carriedBy(point);
    const exchange = (severity * massFlow * cpLiquid) / (HOT_BESIDE - tLiquid);
    machine.liquidLineUa += conductanceFor(exchange, massFlow);
  },
};
