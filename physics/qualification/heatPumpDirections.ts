/**
 * Which way the heat pump's readings go under each fault: the rule table for a regulating valve at fixed speed in cooling,
 * and the review's table for heating. '0' is bounded, '+' and '-' must be read at twice the instruments' uncertainty.
 */
import { faultFamily, PhysicsError } from '../index';
import { changeOf, interval, RELATIVE } from './directions';
import { type Finding, finding } from './finding';
import { type HeatPumpRow, PART_ROWS, TABLE } from './heatPumpPartRows';
import { HEAT_PUMPS, type Reading, steadyReadings, type Variant } from './machines';
import { SOURCES } from './sources';

const COOLING: readonly Omit<HeatPumpRow, 'mode'>[] = [
  {
    name: 'undercharge, valve regulating',
    fault: 'undercharge',
    severity: 0.15,
    source: TABLE,
    signs: { Te: '0/-', SHout: '0', Tc: '-', SC: '-', rise: '0/-', capacity: '0/-', power: '0/-' },
  },
  {
    name: 'undercharge, valve open',
    fault: 'undercharge',
    severity: 0.42,
    source: TABLE,
    signs: { Te: '-', SHout: '+', Tc: '-', SC: '-', Td: '+', rise: '-', drop: '-', capacity: '-', power: '-' },
  },
  {
    name: 'overcharge',
    fault: 'overcharge',
    severity: 'severe',
    source: TABLE,
    signs: { Te: '0', SHout: '0', Tc: '+', SC: '+', Td: '+', rise: '0/+', drop: '0', power: '+' },
  },
  {
    name: 'outdoor coil dirty',
    fault: 'condenser-dirty',
    severity: 'clear',
    source: TABLE,
    signs: { Te: '0/+', SHout: '0', Tc: '+', Td: '+', rise: '+', drop: '0/-', capacity: '-', power: '+' },
  },
  {
    name: 'outdoor fan slow',
    fault: 'condenser-fan-slow',
    severity: 'clear',
    source: TABLE,
    signs: { Te: '0/+', SHout: '0', Tc: '+', Td: '+', rise: '+', drop: '0/-', capacity: '-', power: '+' },
  },
  {
    name: 'filter',
    fault: 'filter-dirty',
    severity: 'clear',
    source: TABLE,
    signs: { Te: '-', SHout: '0/-', Tc: '-', SC: '0/+', rise: '-', drop: '+', capacity: '-', power: '0/-' },
  },
  {
    name: 'indoor fan slow',
    fault: 'evaporator-fan-slow',
    severity: 'clear',
    source: TABLE,
    signs: { Te: '-', SHout: '0/-', Tc: '-', SC: '0/+', rise: '-', drop: '+', capacity: '-', power: '0/-' },
  },
  {
    name: 'drier, mild',
    fault: 'drier-restriction',
    severity: 0.15,
    source: TABLE,
    signs: { Te: '0', SHout: '0', Tc: '0', SC: '0/+', Td: '0', rise: '0', drop: '0', capacity: '0', power: '0' },
  },
  {
    name: 'drier, heavy',
    fault: 'drier-restriction',
    severity: 0.9,
    source: TABLE,
    signs: { Te: '-', SHout: '+', Tc: '0/-', SC: '+', Td: '+', rise: '-', drop: '-', capacity: '-', power: '-' },
  },
  {
    name: 'internal leak',
    fault: 'compressor-leak-by',
    severity: 'clear',
    source: TABLE,
    signs: {
      Te: '+',
      SHout: '0',
      Tc: '-',
      SC: '0/-',
      Td: '+',
      rise: '-',
      drop: '-',
      capacity: '-',
      power: '0/-',
      valveRise: '0/-',
    },
  },
  {
    name: 'reversing valve leak',
    fault: 'reversing-valve-leak',
    severity: 'clear',
    source: TABLE,
    signs: { Te: '+', SHout: '0/-', SHcomp: '+', Tc: '-', SC: '0/-', Td: '+', capacity: '-', valveRise: '+' },
  },
  {
    name: 'non-condensable gas',
    fault: 'non-condensable',
    severity: 'clear',
    source: TABLE,
    signs: { Te: '0', SHout: '0', Tc: '+', SC: '+', Td: '+', rise: '0', drop: '0', power: '+' },
  },
  {
    name: 'valve stuck open',
    fault: 'metering-valve-stuck-opening',
    severity: 'severe',
    source: TABLE,
    signs: { Te: '+', SHout: '-', SC: '-', Td: '-' },
  },
  {
    name: 'valve stuck shut',
    fault: 'metering-valve-stuck-closing',
    severity: 'severe',
    source: TABLE,
    signs: { Te: '-', SHout: '+', Tc: '0/-', SC: '+', Td: '+', rise: '-', drop: '-', capacity: '-' },
  },
  {
    name: 'bulb lost its charge',
    fault: 'bulb-charge-lost',
    severity: 'severe',
    source: TABLE,
    signs: { Te: '-', SHout: '+', Tc: '0/-', SC: '+', Td: '+', rise: '-', drop: '-', capacity: '-' },
  },
  {
    name: 'bulb loose',
    fault: 'bulb-loose',
    severity: 'severe',
    source: TABLE,
    signs: { Te: '+', SHout: '-', SC: '-', Td: '-' },
  },
  {
    name: 'valve set to more superheat',
    fault: 'metering-valve-superheat-set',
    severity: 'clear',
    source: TABLE,
    signs: { Te: '0/-', SHout: '+', Tc: '0/-', Td: '+', capacity: '0/-' },
  },
  {
    name: 'check valve leaking',
    fault: 'check-valve-leaking',
    severity: 'severe',
    source: TABLE,
    signs: { Te: '+', SHout: '-', SC: '-', Td: '-' },
  },
  {
    name: 'capacitor weak',
    fault: 'capacitor-weak',
    severity: 'clear',
    source: TABLE,
    signs: { Te: '0', Tc: '0', SC: '0', current: '+' },
  },
];

const HEATING: readonly Omit<HeatPumpRow, 'mode'>[] = [
  {
    name: 'undercharge',
    fault: 'undercharge',
    severity: 'max',
    source: SOURCES.review,
    signs: { Te: '-', SHout: '+', Tc: '-', SC: '-', Td: '+', capacity: '-' },
  },
  {
    name: 'overcharge',
    fault: 'overcharge',
    severity: 'severe',
    source: SOURCES.review,
    signs: { Te: '0', SHout: '0', Tc: '+', SC: '+', Td: '+' },
  },
  {
    name: 'filter',
    fault: 'filter-dirty',
    severity: 'clear',
    source: SOURCES.review,
    signs: { Te: '0/+', SHout: '0', Tc: '+', SC: '0/-', Td: '+', rise: '+' },
  },
  {
    name: 'indoor fan slow',
    fault: 'evaporator-fan-slow',
    severity: 'clear',
    source: SOURCES.review,
    signs: { Te: '0/+', SHout: '0', Tc: '+', SC: '0/-', Td: '+', rise: '+' },
  },
  {
    name: 'outdoor coil dirty',
    fault: 'condenser-dirty',
    severity: 'severe',
    source: SOURCES.review,
    signs: { Te: '-', SHout: '0/-', Tc: '-', SC: '0/-', capacity: '-', outdoorFall: '+' },
  },
  {
    name: 'outdoor coil iced',
    fault: 'defrost-not-starting',
    severity: 'clear',
    outdoor: 2,
    source: SOURCES.review,
    signs: { Te: '-', SHout: '0/-', Tc: '-', SC: '0/-', capacity: '-' },
  },
  {
    name: 'reversing valve leak',
    fault: 'reversing-valve-leak',
    severity: 'clear',
    source: SOURCES.review,
    signs: { Te: '+', SHout: '0/-', SHcomp: '+', Tc: '-', SC: '-', Td: '+', valveRise: '+' },
  },
  {
    name: 'check valve leaking',
    fault: 'check-valve-leaking',
    severity: 'severe',
    source: SOURCES.review,
    signs: { SHout: '-', Td: '-' },
  },
];

const ROWS: readonly HeatPumpRow[] = [
  ...COOLING.map((row) => ({ ...row, mode: 'cooling' }) as const),
  ...HEATING.map((row) => ({ ...row, mode: 'heating' }) as const),
  ...PART_ROWS,
];

/** Where a sign that is too small to read is read once more: it must become readable within the fault's range. */
const STRONGER: Readonly<Record<string, readonly ('severe' | 'max')[]>> = { clear: ['severe', 'max'], severe: ['max'] };

function findingsOf(row: HeatPumpRow, variant: Variant): Finding[] {
  const { mode, outdoor } = row;
  const family = faultFamily(row.fault);
  const healthy = steadyReadings(variant, { mode, outdoor });
  const at = (level: HeatPumpRow['severity']) => {
    const severity = typeof level === 'number' ? level : family[level];
    return { severity, ill: steadyReadings(variant, { mode, outdoor, faults: { [row.fault]: severity } }) };
  };
  const first = at(row.severity);
  return Object.entries(row.signs).map(([name, sign]) => {
    const reading = name as Reading;
    const bounds = interval(sign, reading, variant);
    const entry = ({ severity, ill }: typeof first): Finding =>
      finding(
        `heatPump/${variant.id}/${mode} directions/${row.name}/${reading}`,
        row.source,
        `${reading} ${sign} at severity ${severity.toFixed(2)}`,
        RELATIVE.includes(reading) ? 'share' : 'K',
        changeOf(reading, healthy, ill),
        ...bounds,
      );
    const one = entry(first);
    const signed = sign === '+' || sign === '-';
    if (one.holds || !signed || one.ours * (sign === '+' ? 1 : -1) < 0) return one;
    return (
      (STRONGER[row.severity] ?? []).map((level) => running(() => entry(at(level)))).find((other) => other?.holds) ??
      one
    );
  });
}

/** Null where a switch stops the machine at this severity. */
function running(make: () => Finding): Finding | null {
  try {
    return make();
  } catch (error) {
    if (error instanceof PhysicsError && error.code === 'protection') return null;
    throw error;
  }
}

export function heatPumpDirections(): readonly Finding[] {
  return HEAT_PUMPS.flatMap((variant) => ROWS.flatMap((row) => findingsOf(row, variant)));
}
