/** Places of many indoor units, and what the data link of their machine tells. */
import type { Drawn } from './rooms';
import type { Place } from './types';

/** The rooms' places, unit after unit whatever storey they lie on. */
export function unitPlaces(storeys: readonly Drawn[], units: readonly string[]): Omit<Place, 'order'>[] {
  const all = storeys.flatMap(({ places }) => places);
  return units.flatMap((unit) => all.filter(({ id }) => id.endsWith(`@${unit}`)));
}

/** Outdoor sensors first, then what each unit's own controller knows: valve, both pipes, room, supply air. */
export function linkOf(units: readonly string[]): NonNullable<Place['reads']['link']> {
  return [
    'compressorSpeed',
    'compressorCurrent',
    'sensor:dischargeLine',
    'sensor:outdoorAir',
    'sensor:suctionLine',
    'sensor:dischargePressure',
    'sensor:suctionPressure',
    ...units.flatMap(
      (unit) =>
        [
          `valveOpening@${unit}`,
          `sensor:evaporatorCoil@${unit}`,
          `sensor:suctionLine@${unit}`,
          `sensor:returnAir@${unit}`,
          `supplyAirTemp@${unit}`,
        ] as const,
    ),
  ];
}
