/** How healthy machines answer to weather, air and charge. */
import { type Finding, finding } from './finding';
import {
  type Case,
  INVERTER_FIXED,
  ORIFICE_R410A,
  ORIFICES,
  type Reading,
  steadyReadings,
  type Variant,
} from './machines';
import { SOURCES } from './sources';

interface Slope {
  readonly name: string;
  readonly machines: readonly Variant[];
  readonly reading: Reading;
  readonly from: Case;
  readonly to: Case;
  /** the change is divided by this */
  readonly per: number;
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly source: string;
}

const FIXED_SPEED: readonly Variant[] = [...ORIFICES, INVERTER_FIXED];

const SLOPES: readonly Slope[] = [
  {
    name: 'superheat, 10 % less charge',
    machines: ORIFICES,
    reading: 'SH',
    from: {},
    to: { nuisance: { charge: 0.9 } },
    per: 1,
    low: 4,
    high: 8,
    unit: 'K',
    source: SOURCES.review,
  },
  {
    name: 'subcooling, 10 % less charge',
    machines: ORIFICES,
    reading: 'SC',
    from: {},
    to: { nuisance: { charge: 0.9 } },
    per: 1,
    low: -4,
    high: -2,
    unit: 'K',
    source: SOURCES.review,
  },
  {
    name: 'subcooling, 10 % less charge (regulating valve)',
    machines: [INVERTER_FIXED],
    reading: 'SC',
    from: {},
    to: { nuisance: { charge: 0.9 } },
    per: 1,
    low: -5,
    high: -2,
    unit: 'K',
    source: SOURCES.review,
  },
  {
    name: 'subcooling, 20 % more charge (regulating valve)',
    machines: [INVERTER_FIXED],
    reading: 'SC',
    from: {},
    to: { nuisance: { charge: 1.2 } },
    per: 1,
    low: 3,
    high: 6,
    unit: 'K',
    source: SOURCES.review,
  },
  {
    name: 'condensing temperature a kelvin outdoors, 30…40 °C',
    machines: FIXED_SPEED,
    reading: 'Tc',
    from: { outdoor: 30 },
    to: { outdoor: 40 },
    per: 10,
    low: 0.95,
    high: 1.05,
    unit: 'K/K',
    source: SOURCES.review,
  },
  {
    // two sources: −2…−3 K (review) and −1…−4 K (envelope); their union
    name: 'evaporating temperature, 25 % less air',
    machines: FIXED_SPEED,
    reading: 'Te',
    from: {},
    to: { nuisance: { evaporatorAir: 0.75 } },
    per: 1,
    low: -4,
    high: -1,
    unit: 'K',
    source: `${SOURCES.review}; ${SOURCES.envelope}`,
  },
  {
    // Not asked of the machine whose valve holds its superheat: there the evaporating temperature itself follows the wet
    // bulb by 0.9 K/K (enthalpy balance of the coil against flow proportional to suction density), 31 kPa/K for R-32.
    // The figure is for R-410A; R-22 has six tenths of its pressure.
    name: 'suction pressure a kelvin of indoor wet bulb, 15…23 °C',
    machines: [ORIFICE_R410A],
    reading: 'ps',
    from: { wetBulb: 15 },
    to: { wetBulb: 23 },
    per: 8,
    low: 10,
    high: 18,
    unit: 'kPa/K',
    source: SOURCES.review,
  },
];

export function slopes(): Finding[] {
  return SLOPES.flatMap((slope) =>
    slope.machines.map((variant) => {
      const before = steadyReadings(variant, slope.from)[slope.reading];
      const after = steadyReadings(variant, slope.to)[slope.reading];
      return finding(
        `slopes/${variant.id}/${slope.name}`,
        slope.source,
        slope.name,
        slope.unit,
        (after - before) / slope.per,
        slope.low,
        slope.high,
      );
    }),
  );
}
