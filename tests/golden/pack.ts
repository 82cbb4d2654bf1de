/** Four callouts for the golden replays: both plants, each refrigerant, sea level and height. Not for trainees. */
import type { Callout, Pack } from '../../src/attempt/pack/types';
import { INSTRUMENTS } from '../../src/instruments';

const said = (text: string) => ({ en: text, es: text });

function callout(
  given: Pick<Callout, 'id' | 'plant' | 'refrigerant' | 'faults' | 'rootCause' | 'tally'> & {
    altitude: number;
    outdoor: number;
  },
): Callout {
  const { altitude, outdoor, ...rest } = given;
  return {
    ...rest,
    conditions: { outdoor, indoor: 300.15, wetBulb: 292.15, mode: 'cooling', altitude },
    text: { title: said(given.id), complaint: said('-'), site: said('-'), history: said('-') },
    toolbag: INSTRUMENTS,
    budget: 120,
    mode: 'solo',
    machineSeed: `golden-${given.id}`,
  };
}

export const GOLDEN_PACK: Pack = {
  format: 1,
  id: 'golden',
  version: 1,
  title: said('Golden'),
  about: said('-'),
  weights: { cause: 20, belief: 15, evidence: 20, working: 15, repair: 20, economy: 10 },
  callouts: [
    callout({
      id: 'low-charge',
      plant: 'orifice-split',
      refrigerant: 'R-410A',
      outdoor: 308.15,
      altitude: 0,
      faults: { undercharge: 0.18 },
      rootCause: 'leak-at-joint',
      tally: { undercharge: 50, 'drier-restriction': 30, 'no-fault': 20 },
    }),
    callout({
      id: 'old-drier',
      plant: 'orifice-split',
      refrigerant: 'R-22',
      outdoor: 303.15,
      altitude: 650,
      faults: { 'drier-restriction': 0.3, 'filter-dirty': 0.1 },
      rootCause: 'wet-or-dirty-circuit',
      tally: { undercharge: 30, 'drier-restriction': 40, 'filter-dirty': 30 },
    }),
    callout({
      id: 'drifting-sensor',
      plant: 'inverter-split',
      refrigerant: 'R-32',
      outdoor: 305.15,
      altitude: 1200,
      faults: { 'thermistor-drift:suctionLine': 4 },
      rootCause: 'aged-part',
      tally: { 'thermistor-drift': 40, undercharge: 40, 'no-fault': 20 },
    }),
    callout({
      id: 'dusty-yard',
      plant: 'inverter-split',
      refrigerant: 'R-32',
      outdoor: 310.15,
      altitude: 0,
      faults: { 'condenser-dirty': 0.3 },
      rootCause: 'no-cleaning',
      tally: { 'condenser-dirty': 50, overcharge: 30, 'non-condensable': 20 },
    }),
  ],
};
