/** Healthy machines at the design point: bands, and the charge that the nameplate's target asks for. */
import { plantDescription } from '../index';
import { type Finding, finding } from './finding';
import {
  type Case,
  ORIFICE_R22,
  ORIFICE_R410A,
  type Reading,
  steadyReadings,
  VARIANTS,
  type Variant,
} from './machines';
import { SOURCES } from './sources';

type Bands = Readonly<Partial<Record<Reading, readonly [number, number]>>>;

/** Union of two sets of ranges (reviewed bands and common practice), each from memory. */
const ORIFICE: Bands = {
  SHout: [4, 8],
  SHcomp: [4, 12],
  SC: [4, 9],
  drop: [9, 12],
  rise: [8, 13],
  current: [11, 15],
  totalPower: [2400, 3300],
};
const R410A: Bands = {
  ...ORIFICE,
  ps: [930, 1060],
  pd: [2730, 3200],
  Te: [5, 9],
  Tc: [45, 52],
  Td: [70, 92],
  DSH: [28, 40],
  flow: [55, 68],
  charge: [2.2, 3.4],
};
const R22: Bands = { ...ORIFICE, ps: [565, 640], pd: [1730, 2080], Te: [4, 8], Tc: [45, 53], Td: [75, 100] };
const R32: Bands = {
  ps: [1015, 1180],
  pd: [2600, 3150],
  Te: [7, 12],
  Tc: [42, 50],
  SHout: [2, 6],
  SHcomp: [2, 7],
  SC: [3, 8],
  Td: [68, 92],
  DSH: [28, 45],
  drop: [10, 14],
  rise: [6, 10],
  flow: [12, 21],
  current: [3.6, 4.8],
  opening: [0.25, 0.6],
  charge: [0.7, 1.3],
};

function bandsOf(variant: Variant): Bands {
  if (variant === ORIFICE_R410A) return R410A;
  return variant === ORIFICE_R22 ? R22 : R32;
}

export function healthyBands(): Finding[] {
  return VARIANTS.flatMap((variant) => {
    const ours = steadyReadings(variant);
    return Object.entries(bandsOf(variant)).map(([name, [low, high]]) =>
      finding(
        `healthy/${variant.id}/${name}`,
        `${SOURCES.review}; ${SOURCES.field}`,
        `${name} at 35 °C outdoors, 27/19 °C indoors`,
        '',
        ours[name as Reading],
        low,
        high,
      ),
    );
  });
}

/** Share of the nameplate charge at which the printed superheat or subcooling is read exactly, less 1. */
function chargeForTarget(variant: Variant): number {
  const plate = plantDescription(variant.plant).nameplate(variant.refrigerant);
  const bySuperheat = plate.targetSubcooling === null;
  const miss = (share: number): number => {
    const change: Case = { nuisance: { charge: share } };
    const { SH, SC } = steadyReadings(variant, change);
    return bySuperheat ? (plate.targetSuperheat ?? 0) - SH : SC - (plate.targetSubcooling ?? 0);
  };
  let low = 0.85;
  let high = 1.15;
  for (let k = 0; k < 30; k++) {
    const middle = 0.5 * (low + high);
    if (miss(middle) < 0) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high) - 1;
}

export function nameplateCharge(): Finding[] {
  return VARIANTS.map((variant) =>
    finding(
      `nameplate/${variant.id}/charge`,
      SOURCES.review,
      'charge that gives the printed target, over the printed charge, less 1',
      '-',
      chargeForTarget(variant),
      -0.03,
      0.03,
    ),
  );
}
