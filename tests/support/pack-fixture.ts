import { FAMILIES, type FaultFamily, type PlantId } from '../../physics/types';
import type { MachineFacts } from '../../src/attempt/pack/rules';
import type { Pack } from '../../src/attempt/pack/types';

const both: readonly PlantId[] = ['orifice-split', 'inverter-split'];
const onlyOrifice = new Set<string>(['orifice-oversize', 'orifice-undersize', 'capacitor-weak']);
const onlyInverter = new Set<string>([
  'metering-valve-stuck-closing',
  'metering-valve-stuck-opening',
  'thermistor-drift',
]);

/** Facts about machines, made for tests of the pack rules alone; the machines' own are tested where they are. */
export const sampleFacts: MachineFacts = {
  families: FAMILIES.map((id): FaultFamily => {
    const drifts = id === 'thermistor-drift';
    return {
      id,
      plants: onlyOrifice.has(id) ? ['orifice-split'] : onlyInverter.has(id) ? ['inverter-split'] : both,
      slight: drifts ? 2 : 0.1,
      clear: drifts ? 4 : 0.2,
      severe: drifts ? 8 : 0.4,
      max: drifts ? 10 : 0.6,
      unit: drifts ? 'K' : 'share',
      ...(drifts && { targets: ['suctionLine', 'evaporatorCoil'], signed: true }),
    };
  }),
  units: () => [],
  modes: () => ['cooling'],
  refrigerants: (plant) => (plant === 'orifice-split' ? ['R-410A', 'R-22'] : ['R-32']),
};

const said = (en: string, es: string) => ({ en, es });
const text = {
  title: said('Back office', 'Oficina trasera'),
  complaint: said('It runs all day.', 'Funciona todo el día.'),
  site: said('First floor, shaded.', 'Primer piso, a la sombra.'),
  history: said('No records.', 'Sin registros.'),
};

/** A new pack without fault at each call, so that a test may spoil it. */
export function samplePack(): Pack {
  return {
    format: 1,
    id: 'sample-street',
    version: 1,
    title: said('Sample street', 'Calle de muestra'),
    about: said('For tests.', 'Para pruebas.'),
    weights: { cause: 20, belief: 15, evidence: 20, working: 15, repair: 20, economy: 10 },
    callouts: [
      {
        id: 'back-office',
        plant: 'orifice-split',
        refrigerant: 'R-410A',
        conditions: { outdoor: 308.15, indoor: 300.15, wetBulb: 292.55, mode: 'cooling', altitude: 0 },
        text: structuredClone(text),
        faults: { undercharge: 0.2 },
        rootCause: 'leak-at-joint',
        tally: { undercharge: 60, 'drier-restriction': 30, 'no-fault': 10 },
        toolbag: ['eyes', 'low-gauge', 'high-gauge', 'pipe-clamp'],
        budget: 90,
        mode: 'solo',
        lookAlike: 'front-shop',
        machineSeed: 'm-1',
      },
      {
        id: 'front-shop',
        plant: 'inverter-split',
        refrigerant: 'R-32',
        conditions: { outdoor: 303.15, indoor: 298.15, wetBulb: 291.15, mode: 'cooling', altitude: 650 },
        text: structuredClone(text),
        faults: { 'thermistor-drift:suctionLine': -3 },
        rootCause: 'aged-part',
        tally: { 'thermistor-drift': 40, undercharge: 50, 'no-fault': 10 },
        toolbag: ['eyes', 'data-link'],
        budget: 60,
        mode: 'exam',
        machineSeed: 'm-2',
      },
    ],
  };
}
