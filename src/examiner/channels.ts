/** Channels of a plant: everything that some place of it lets a person read, and the two sums that need saturation. */
import type { PlantDescription, ProbeName, Snapshot } from '../../physics/types';
import type { Channel } from './types';

/** Expected for the debrief; no instrument reads them. */
const WORKED_OUT: readonly ProbeName[] = ['superheat', 'subcooling'];

export function channelsOf(plant: PlantDescription): Channel[] {
  const read = plant.places.flatMap(({ reads }): Channel[] => {
    const { look, link, ...probes } = reads;
    return [...Object.values(probes), ...(look ? [`look:${look}` as const] : []), ...(link ?? [])];
  });
  return [...new Set([...read, ...WORKED_OUT])].sort();
}

/** Share of gas by volume at the glass from which a person calls it bubbles, and superheat below which it is wet. */
const FLASH = 0.02;
const FLOODED = 0.5;
const STOP = 0.02;

/** A word for the regime of a settled machine: draws that differ in it are not averaged. */
export function regimeOf(snapshot: Snapshot): string {
  const opening = snapshot.probes.valveOpening.value;
  return [
    snapshot.regime,
    snapshot.controller,
    snapshot.looks.sightGlass > FLASH ? 'flash' : 'liquid',
    snapshot.probes.superheat.value < FLOODED ? 'flooded' : 'dry',
    opening < STOP ? 'shut' : opening > 1 - STOP ? 'open' : 'regulating',
  ].join(' ');
}
