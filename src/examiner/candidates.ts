/** What can be read on a plant with the toolbag of a callout: one entry a channel and judged state, used wisely. */
import type { Place, PlantDescription } from '../../physics/types';
import { CATALOGUE, OWN_SENSES } from '../instruments/catalogue';
import { channelsAt, firstReadingCost } from '../instruments/places';
import type { InstrumentId, PhysicalQuantity } from '../instruments/types';
import type { Candidate, Channel, JudgedState } from './types';

/**
 * What a hose on the circuit costs beside its time, in minutes: each connection risks air and a leak. Judgement.
 */
export const hoseMinutes = 4;
/** Minutes for each hundredth of the nameplate charge that leaves through it. Judgement. */
const PER_PERCENT_SPILT = 3;

/** The one instrument that a careful person takes for a quantity at a kind of place. */
const WISE: Readonly<Partial<Record<Place['kind'], Readonly<Partial<Record<PhysicalQuantity, InstrumentId>>>>>> = {
  pipe: { temperature: 'pipe-clamp' },
  air: { temperature: 'air-probe', wetBulb: 'air-probe' },
  wire: { current: 'clamp-ammeter' },
  terminals: { voltage: 'multimeter', capacitance: 'multimeter', resistance: 'multimeter' },
  duct: { differentialPressure: 'manometer' },
  look: { look: 'eyes' },
  panel: {
    temperature: 'data-link',
    pressure: 'data-link',
    current: 'data-link',
    speed: 'data-link',
    opening: 'data-link',
  },
};

export interface Bench {
  readonly plant: PlantDescription;
  readonly toolbag: readonly InstrumentId[];
  /** nameplate charge, kg */
  readonly charge: number;
  readonly states: readonly JudgedState[];
}

export function candidatesOf(bench: Bench): Candidate[] {
  const bag = [...bench.toolbag, ...OWN_SENSES];
  return bench.plant.places.flatMap((place) =>
    usesOf(place)
      .filter(({ instrument }) => bag.includes(instrument) && sound(bench.plant, place, instrument))
      .flatMap(({ instrument, quantity }) =>
        channelsAt(instrument, place, quantity).flatMap((channel) =>
          statesFor(channel, place, bench.states).map((state) => ({
            id: `${instrument}/${place.id}/${channel}/${state}`,
            instrument,
            place: place.id,
            quantity,
            channel,
            state,
            minutes: minutesOf(instrument, place, bench.charge),
          })),
        ),
      ),
  );
}

function usesOf(place: Place): { instrument: InstrumentId; quantity: PhysicalQuantity }[] {
  if (place.kind === 'port') {
    return [{ instrument: place.pressureSide === 'low' ? 'low-gauge' : 'high-gauge', quantity: 'pressure' }];
  }
  return Object.entries(WISE[place.kind] ?? {}).map(([quantity, instrument]) => ({
    instrument,
    quantity: quantity as PhysicalQuantity,
  }));
}

/** An ammeter for sine waves misreads the pulsed lead between an inverter and its compressor. */
function sound(plant: PlantDescription, place: Place, instrument: InstrumentId): boolean {
  return !(plant.variableSpeed && instrument === 'clamp-ammeter' && place.id === 'compressor-lead');
}

/** Measured only with the machine off and proved dead. */
export const DEAD_CHANNELS: readonly Channel[] = [
  'compressorCapacitance',
  'fanCapacitance',
  'defrostHeaterResistance',
  'suctionSensorResistance',
  'coilSensorResistance',
  'valveCoilResistance',
];

/** Standing, only the pressures and what hangs on no circuit say more than the weather. */
function statesFor(channel: Channel, place: Place, states: readonly JudgedState[]): JudgedState[] {
  if (DEAD_CHANNELS.includes(channel)) return ['standing'];
  return states.filter((state) => state !== 'standing' || place.kind === 'port');
}

/** What refrigerant that leaves the circuit costs, in minutes. */
export function spillMinutes(spilt: number, charge: number): number {
  return (PER_PERCENT_SPILT * 100 * spilt) / charge;
}

function minutesOf(instrument: InstrumentId, place: Place, charge: number): number {
  const { invasive, spill } = CATALOGUE[instrument];
  return firstReadingCost(instrument, place) / 60 + (invasive ? hoseMinutes : 0) + spillMinutes(spill, charge);
}
