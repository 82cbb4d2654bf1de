/** Healthy machines with many units: bands at the rating points, charge by the installer's rule, slopes. */
import { networkData } from '../plants';
import { type Finding, finding } from './finding';
import {
  type Band,
  type Bands,
  CHARGE_RULE,
  COOLING_32,
  COOLING_410,
  HALF_AND_HALF,
  HEATING_32,
  HEATING_410,
  MULTI_SIZE,
  MULTI_SIZE_32,
  RECOVERY_SIZE,
  SLOPES,
} from './networkExpectations';
import {
  MULTI_R32,
  type NetworkCase,
  type NetworkReadings,
  type NetworkVariant,
  networkRead,
  networkReadings,
  networkShot,
  RECOVERY,
  type UnitReadings,
} from './networkMachines';
import { SOURCES } from './sources';

/** Readings of single units that a band asks for: all of them must lie inside. */
const OF_UNITS: Readonly<Record<string, { role: UnitReadings['role']; of: (unit: UnitReadings) => number }>> = {
  SHunit: { role: 'evaporator', of: (unit) => unit.evaporatorSuperheat },
  SCunit: { role: 'condenser', of: (unit) => unit.subcooling },
  opening: { role: 'evaporator', of: (unit) => unit.valveOpening },
};

function inBands(
  section: string,
  variant: NetworkVariant,
  mode: string,
  readings: NetworkReadings,
  bands: Bands | Readonly<Record<string, readonly number[]>>,
): Finding[] {
  return Object.entries(bands).flatMap(([name, [low, high]]) => {
    const single = OF_UNITS[name];
    const id = `${section}/${variant.id}/${mode}/${name}`;
    const what = `${name}, ${mode} at its rating point`;
    if (single === undefined) {
      const value = readings[name as keyof NetworkReadings] as number;
      return [finding(id, SOURCES.review, what, '', value, low, high)];
    }
    const values = readings.units.filter(({ role }) => role === single.role).map(single.of);
    return [
      finding(`${id}, least of the units`, SOURCES.review, what, '', Math.min(...values), low, high),
      finding(`${id}, most of the units`, SOURCES.review, what, '', Math.max(...values), low, high),
    ];
  });
}

export function networkBands(section: string, variant: NetworkVariant): Finding[] {
  const own = variant === MULTI_R32 ? MULTI_SIZE_32 : variant === RECOVERY ? RECOVERY_SIZE : MULTI_SIZE;
  const cooling = networkRead(variant, { mode: 'cooling' });
  const heating = networkRead(variant, { mode: 'heating' });
  const cold = variant === MULTI_R32 ? COOLING_32 : COOLING_410;
  const warm = variant === MULTI_R32 ? HEATING_32 : HEATING_410;
  return [
    ...inBands(section, variant, 'cooling', cooling, { ...cold, ...own.cooling }),
    ...inBands(section, variant, 'heating', heating, { ...warm, ...own.heating }),
  ];
}

/** Rooms that cool and rooms that heat at once, eight of them in turn. */
export function halfAndHalf(section: string): Finding[] {
  const snapshot = networkShot(RECOVERY, { mode: 'simultaneous' });
  const readings = networkReadings(RECOVERY, snapshot);
  const { outdoorShare, ...bands } = HALF_AND_HALF;
  const loads = (role: UnitReadings['role']): number =>
    readings.units.filter((unit) => unit.role === role).reduce((sum, { load }) => sum + load, 0);
  const cooled = loads('evaporator');
  const heated = loads('condenser');
  // first law: the compressors' shells warm the outdoors a little
  const outdoors = cooled + readings.power - heated;
  const id = `${section}/${RECOVERY.id}/half and half`;
  return [
    ...inBands(section, RECOVERY, 'half and half', readings, bands),
    finding(
      `${id}/outdoors`,
      SOURCES.review,
      'what leaves outdoors over what the heated rooms take',
      '-',
      outdoors / heated,
      outdoorShare[0],
      outdoorShare[1],
    ),
    finding(
      `${id}/moved`,
      SOURCES.field,
      'what the cooled rooms give over what the heated rooms take',
      '-',
      cooled / heated,
      0.6,
      0.95,
    ),
    finding(
      `${id}/units cooling`,
      SOURCES.field,
      'coils that boil',
      '-',
      readings.units.filter(({ role }) => role === 'evaporator').length,
      4,
      4,
    ),
    finding(
      `${id}/units heating`,
      SOURCES.field,
      'coils that condense',
      '-',
      readings.units.filter(({ role }) => role === 'condenser').length,
      4,
      4,
    ),
  ];
}

/** Charge at which the liquid leaves the outdoor coils 5 K subcooled, over what the installer's rule gives. */
export function chargeRule(section: string, variant: NetworkVariant): Finding {
  const at = (share: number): number => networkRead(variant, { mode: 'cooling', nuisance: { charge: share } }).SCport;
  let low = 0.85;
  let high = 1.15;
  for (let k = 0; k < 16; k++) {
    const middle = 0.5 * (low + high);
    if (at(middle) < 5) low = middle;
    else high = middle;
  }
  const [least, most] = CHARGE_RULE;
  const { charge } = networkData(variant.plant, variant.refrigerant);
  return finding(
    `${section}/${variant.id}/charge by the rule`,
    SOURCES.review,
    `charge that leaves the outdoor coils 5 K subcooled over the rule's ${charge.toFixed(2)} kg`,
    '-',
    0.5 * (low + high),
    least,
    most,
  );
}

interface Slope {
  readonly from: NetworkCase;
  readonly to: NetworkCase;
  readonly of: (readings: NetworkReadings) => number;
  readonly per: number;
}

const FIXED: NetworkCase = { mode: 'cooling', fixed: true };
const SLOPE_CASES: Readonly<Record<string, Slope>> = {
  'Tc per K outdoors': { from: { ...FIXED, outdoor: 30 }, to: { ...FIXED, outdoor: 40 }, of: ({ Tc }) => Tc, per: 10 },
  'Te, 25 % less indoor air': {
    from: FIXED,
    to: { ...FIXED, nuisance: { evaporatorAir: 0.75 } },
    of: ({ Te }) => Te,
    per: 1,
  },
  'SC, 10 % less charge': {
    from: FIXED,
    to: { ...FIXED, nuisance: { charge: 0.9 } },
    of: ({ SCport }) => SCport,
    per: 1,
  },
  'SC, 20 % more charge': {
    from: FIXED,
    to: { ...FIXED, nuisance: { charge: 1.2 } },
    of: ({ SCport }) => SCport,
    per: 1,
  },
};

export function networkSlopes(section: string, variant: NetworkVariant): Finding[] {
  return Object.entries(SLOPE_CASES).map(([name, { from, to, of, per }]) => {
    const [low, high] = SLOPES[name] as Band;
    const change = (of(networkRead(variant, to)) - of(networkRead(variant, from))) / per;
    return finding(`${section}/${variant.id}/slopes/${name}`, SOURCES.review, name, 'K', change, low, high);
  });
}
