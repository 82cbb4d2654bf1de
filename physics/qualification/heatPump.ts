/**
 * The heat pump at its two rating points (35 °C outdoors and 27/19 °C indoors; 7 °C outdoors and 20 °C indoors): bands, what
 * the charge rule gives, slopes, what public ratings of such machines span.
 */
import { plantDescription } from '../index';
import { type Finding, finding } from './finding';
import {
  type Case,
  HEAT_PUMP_R410A,
  HEAT_PUMPS,
  type Reading,
  type Readings,
  steadyReadings,
  type Variant,
} from './machines';
import { SOURCES } from './sources';

type Bands = Readonly<Partial<Record<Reading, readonly [number, number]>>>;

/** Bands of the review for R-410A; the other variant is asked for the same temperatures and for pressures of its own. */
const COOLING: Bands = {
  Te: [6, 9],
  Tc: [44, 48],
  SHout: [5, 8],
  SHcomp: [7, 12],
  SC: [5, 9],
  drop: [9.5, 12],
  rise: [8, 12],
  current: [10, 13],
};
const HEATING: Bands = {
  Te: [-3, 1],
  Tc: [40, 46],
  SHout: [0, 8],
  SH: [0, 8],
  SC: [5, 14],
  rise: [14, 19],
  outdoorFall: [3.5, 6],
  current: [10, 12.5],
};
const R410A: readonly [Bands, Bands] = [
  { ...COOLING, charge: [3, 4.2], ps: [960, 1050], pd: [2670, 2930], Td: [74, 86], DSH: [28, 40], flow: [56, 62] },
  { ...HEATING, ps: [720, 825], pd: [2420, 2800], Td: [68, 84], flow: [44, 50] },
];
/** Pressures about those computed for 7 and 45 °C dew (910 and 2,520 kPa); discharge 5…9 K over R-410A's band. */
const R454B: readonly [Bands, Bands] = [
  { ...COOLING, ps: [870, 970], pd: [2450, 2720], Td: [79, 95] },
  { ...HEATING, Td: [73, 93] },
];

const MODES = ['cooling', 'heating'] as const;

function bands(variant: Variant): Finding[] {
  const [cooling, heating] = variant === HEAT_PUMP_R410A ? R410A : R454B;
  return MODES.flatMap((mode) => {
    const ours = steadyReadings(variant, { mode });
    return Object.entries(mode === 'cooling' ? cooling : heating).map(([name, [low, high]]) =>
      finding(
        `heatPump/${variant.id}/${mode}/${name}`,
        SOURCES.review,
        `${name} at the rating point, ${mode}`,
        '',
        ours[name as Reading],
        low,
        high,
      ),
    );
  });
}

/** Share of the printed charge at which the printed subcooling is read exactly, less 1. */
function chargeForTarget(variant: Variant, target: number): number {
  let low = 0.8;
  let high = 1.2;
  for (let k = 0; k < 30; k++) {
    const middle = 0.5 * (low + high);
    if (steadyReadings(variant, { nuisance: { charge: middle } }).SC < target) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high) - 1;
}

function charge(variant: Variant): Finding[] {
  const plate = plantDescription(variant.plant).nameplate(variant.refrigerant);
  const { base, allowance, included, length } = plate.chargeRule ?? { base: 0, allowance: 0, included: 0, length: 0 };
  const ruled = base + allowance * (length - included);
  const target = chargeForTarget(variant, plate.targetSubcooling ?? 0);
  const within = (name: string, what: string, value: number): Finding =>
    finding(`heatPump/${variant.id}/charge/${name}`, SOURCES.review, what, '-', value, -0.03, 0.03);
  return [
    within(
      'rule',
      'charge by the rule for the line that is laid, over the printed one, less 1',
      ruled / plate.charge - 1,
    ),
    within('target', 'charge that gives the printed subcooling, over the printed one, less 1', target),
  ];
}

function slopes(variant: Variant): Finding[] {
  const read = (change: Case): Readings => steadyReadings(variant, change);
  const cool = read({});
  const heat = read({ mode: 'heating' });
  const slope = (name: string, value: number, low: number, high: number): Finding =>
    finding(`heatPump/${variant.id}/slopes/${name}`, SOURCES.review, name, 'K', value, low, high);
  return [
    slope('subcooling, 10 % less charge', read({ nuisance: { charge: 0.9 } }).SC - cool.SC, -5, -2),
    slope('subcooling, 20 % more charge', read({ nuisance: { charge: 1.2 } }).SC - cool.SC, 3, 6),
    slope('condensing a kelvin outdoors', (read({ outdoor: 40 }).Tc - read({ outdoor: 30 }).Tc) / 10, 0.95, 1.05),
    // two sources: −2…−3 K (review) and −1…−4 K (envelope); their union
    slope('evaporating, 25 % less indoor air', read({ nuisance: { evaporatorAir: 0.75 } }).Te - cool.Te, -4, -1),
    slope('superheat, 22 °C against 40 °C', read({ outdoor: 22 }).SHout - read({ outdoor: 40 }).SHout, -1.5, 1.5),
    // in heating the evaporator follows the weather, the condenser the room
    slope('evaporating a kelvin outdoors', (heat.Te - read({ mode: 'heating', outdoor: -7 }).Te) / 14, 0.7, 1.05),
    slope(
      'condensing a kelvin in the room',
      (read({ mode: 'heating', indoor: 24 }).Tc - read({ mode: 'heating', indoor: 18 }).Tc) / 6,
      0.8,
      1.1,
    ),
  ];
}

/** Ranges of public ratings of split heat pumps at one speed, as a technician knows them: from memory, no source. */
function ratings(variant: Variant): Finding[] {
  const rating = (name: string, value: number, low: number, high: number): Finding =>
    finding(`heatPump/${variant.id}/ratings/${name}`, SOURCES.field, name, '', value, low, high);
  const cool = steadyReadings(variant, {});
  const heat = steadyReadings(variant, { mode: 'heating' });
  const cold = steadyReadings(variant, { mode: 'heating', outdoor: -8 });
  return [
    rating('cooling at 35 °C, W', cool.capacity, 9000, 11500),
    rating('EER at 35 °C', cool.cop, 2.7, 3.9),
    rating('heating at 7 °C, W', heat.capacity, 9000, 11500),
    rating('COP at 7 °C', heat.cop, 2.9, 4.2),
    rating('heating at −8 °C over that at 7 °C', cold.capacity / heat.capacity, 0.52, 0.74),
    rating('COP at −8 °C', cold.cop, 1.9, 3),
    rating('heating at 7 °C over cooling at 35 °C', heat.capacity / cool.capacity, 0.88, 1.15),
  ];
}

export function heatPump(): readonly Finding[] {
  return HEAT_PUMPS.flatMap((variant) => [
    ...bands(variant),
    ...charge(variant),
    ...slopes(variant),
    ...ratings(variant),
  ]);
}
