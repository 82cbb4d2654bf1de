/** Faults of machines with many units as they grow: nothing at zero, the telling reading one way, no jump. */
import { createMachine, type FamilyId, type Faults, familiesOf, faultFamily, PhysicsError } from '../index';
import { type Finding, finding, statement } from './finding';
import {
  type NetworkCase,
  type NetworkReadings,
  type NetworkVariant,
  networkMachine,
  networkRead,
  RECOVERY,
} from './networkMachines';
import { SOURCES } from './sources';

interface Growth {
  /** the fault's key, an indoor unit after an @ */
  readonly key: string;
  readonly telling: string;
  readonly sign: 1 | -1;
  readonly change?: Partial<NetworkCase>;
  readonly only?: NetworkVariant;
  /** first severity where it is not zero */
  readonly from?: number;
}

const HELD = 'unit3';
const GROWTHS: readonly Growth[] = [
  { key: 'undercharge', telling: 'opening', sign: 1 },
  { key: 'overcharge', telling: 'SCport', sign: 1 },
  { key: 'non-condensable', telling: 'standing', sign: 1 },
  { key: 'drier-restriction', telling: 'opening', sign: 1 },
  { key: 'liquid-line-kink', telling: 'opening', sign: 1 },
  { key: 'service-valve-throttled', telling: 'capacity', sign: -1 },
  { key: 'condenser-dirty', telling: 'Tc', sign: 1 },
  { key: 'condenser-fan-slow', telling: 'Tc', sign: 1 },
  { key: 'filter-dirty', telling: 'drop', sign: 1 },
  { key: 'evaporator-dirty', telling: 'drop', sign: 1 },
  { key: 'evaporator-fan-slow', telling: 'drop', sign: 1 },
  { key: 'compressor-leak-by', telling: 'effort', sign: 1 },
  { key: 'supply-voltage-low', telling: 'current', sign: 1 },
  { key: `filter-dirty@${HELD}`, telling: `drop@${HELD}`, sign: 1 },
  { key: `evaporator-dirty@${HELD}`, telling: `drop@${HELD}`, sign: 1 },
  { key: `evaporator-fan-slow@${HELD}`, telling: `drop@${HELD}`, sign: 1 },
  // measured from where the healthy valve stands at free speed
  { key: `metering-valve-stuck-closing@${HELD}`, telling: `evaporatorSuperheat@${HELD}`, sign: 1, from: 0.04 },
  { key: `metering-valve-stuck-opening@${HELD}`, telling: `evaporatorSuperheat@${HELD}`, sign: -1 },
  { key: `thermistor-drift:suctionLine@${HELD}`, telling: `evaporatorSuperheat@${HELD}`, sign: -1 },
  {
    key: 'metering-valve-not-closing@unit6',
    telling: 'sensor@unit6',
    sign: -1,
    change: { units: { unit6: 'off' } },
  },
  { key: 'pressure-transducer-offset:suctionPressure', telling: 'Te', sign: -1, change: { fixed: false } },
  {
    key: 'pressure-transducer-offset:dischargePressure',
    telling: 'Tc',
    sign: -1,
    change: { mode: 'heating', fixed: false },
  },
  { key: `unit-capacity-set-wrong@${HELD}`, telling: `evaporatorSuperheat@${HELD}`, sign: 1 },
];

const STEPS = 14;
/** readings of the whole machine that must not jump, and the least change that counts, SI of machines.ts */
const SMOOTH: Readonly<Record<string, number>> = { ps: 40, pd: 100, SHout: 4.8, SC: 4.8, Td: 2.8 };
const LARGEST_STEP = 0.35;

function value(readings: NetworkReadings, name: string): number {
  const [key, id] = name.split('@');
  if (id === undefined) return readings[key as keyof NetworkReadings] as number;
  const unit = readings.units.find((each) => each.id === id);
  return (unit as unknown as Record<string, number>)[key];
}

/** Null where the machine's own safety switch stops it. */
function running(variant: NetworkVariant, change: NetworkCase): NetworkReadings | null {
  try {
    return networkRead(variant, change);
  } catch (error) {
    if (error instanceof PhysicsError && error.code === 'protection') return null;
    throw error;
  }
}

function grown(section: string, variant: NetworkVariant, growth: Growth): Finding[] {
  const { key, telling, sign } = growth;
  const { max } = faultFamily(key.split(/[:@]/)[0] as FamilyId);
  const from = growth.from ?? 0;
  const points: NetworkReadings[] = [];
  for (let k = 0; k <= STEPS; k++) {
    const faults = { [key]: from + ((max - from) * k) / STEPS };
    const point = running(variant, { mode: 'cooling', fixed: true, ...growth.change, faults });
    if (point === null) break;
    points.push(point);
  }
  const values = points.map((each) => value(each, telling));
  const travel = sign * (values[values.length - 1] - values[0]);
  const back = values.slice(1).reduce((most, v, k) => Math.max(most, (-sign * (v - values[k])) / travel), 0);
  const id = `${section}/${variant.id}/growth/${key}/${telling}`;
  return [
    finding(
      `${id} runs`,
      SOURCES.field,
      'share of its range before a safety switch stops it',
      '-',
      (points.length - 1) / STEPS,
      0.6,
      1,
    ),
    statement(`${id} travels`, SOURCES.model, 'the telling reading travels the expected way', travel > 0),
    // a valve that comes to its stop, a coil that floods: kinks, not ways back
    finding(`${id} one way`, SOURCES.model, 'largest step back over the whole travel', '-', back, 0, 0.02),
    ...Object.entries(SMOOTH).map(([name, least]) => {
      const course = points.map((each) => value(each, name));
      const range = Math.max(...course) - Math.min(...course);
      const most = course.slice(1).reduce((worst, v, k) => Math.max(worst, Math.abs(v - course[k])), 0);
      const bound = Math.max(LARGEST_STEP * range, least);
      return finding(`${id} no jump of ${name}`, SOURCES.model, 'largest of the steps', '', most, 0, bound);
    }),
  ];
}

export function networkGrowth(section: string, variant: NetworkVariant): Finding[] {
  return GROWTHS.flatMap((growth) => grown(section, variant, growth));
}

/** Every family at severity zero is the sound machine to the last bit, in every mode. */
export function networkZero(section: string, variant: NetworkVariant): Finding[] {
  const modes = variant === RECOVERY ? (['cooling', 'simultaneous'] as const) : (['cooling', 'heating'] as const);
  const shown = (mode: NetworkCase['mode'], faults: NetworkCase['faults']): string =>
    JSON.stringify(networkMachine(variant, { mode, faults }).steady());
  const sound = modes.map((mode) => shown(mode, {}));
  return familiesOf(variant.plant).map((family) => {
    const target = family.targets ? `:${family.targets[0]}` : '';
    const keys = [`${family.id}${target}`, ...(family.perUnit ? [`${family.id}${target}@unit2`] : [])];
    const same = keys.every((key) => modes.every((mode, k) => shown(mode, { [key]: 0 }) === sound[k]));
    return statement(
      `${section}/${variant.id}/zero/${family.id}`,
      SOURCES.model,
      'severity 0 is the sound machine, in all units or in one',
      same,
    );
  });
}

/** A fault in one unit leaves another machine's same unit alone: refused where it makes no sense. */
export function unitKeys(section: string, variant: NetworkVariant): Finding[] {
  const refused = (faults: Faults): boolean => {
    try {
      createMachine({
        plant: variant.plant,
        refrigerant: variant.refrigerant,
        conditions: networkMachine(variant, { mode: 'cooling' }).setup.conditions,
        faults,
      });
      return false;
    } catch {
      return true;
    }
  };
  const id = `${section}/${variant.id}/keys`;
  return [
    statement(
      `${id}/unknown unit`,
      SOURCES.model,
      'a unit that does not exist is refused',
      refused({ 'filter-dirty@unit9': 0.3 }),
    ),
    statement(
      `${id}/whole machine`,
      SOURCES.model,
      'a fault of the whole machine takes no unit',
      refused({ 'undercharge@unit3': 0.2 }),
    ),
  ];
}
