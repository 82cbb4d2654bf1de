/**
 * What the heat pump's readings do under faults of parts that keep their place and change their function with the mode: the
 * liquid and the vapour line, the coils' air, duct, supply and contactor, compressor, thermostat.
 */
import type { FamilyId } from '../index';
import type { Sign } from './directionTables';
import type { Reading } from './machines';
import { SOURCES } from './sources';

export interface HeatPumpRow {
  readonly name: string;
  readonly fault: FamilyId;
  readonly severity: number | 'clear' | 'severe' | 'max';
  readonly mode: 'cooling' | 'heating';
  /** °C outdoors, left out = the rating point's */
  readonly outdoor?: number;
  readonly source: string;
  readonly signs: Readonly<Partial<Record<Reading, Sign>>>;
}

export const TABLE = `${SOURCES.memory}; amended by the trade review`;

const COOLING: readonly Omit<HeatPumpRow, 'mode'>[] = [
  {
    name: 'liquid line bent flat',
    fault: 'liquid-line-kink',
    severity: 'severe',
    source: TABLE,
    signs: { Te: '-', SHout: '+', Tc: '0/-', SC: '+', Td: '+', rise: '-', drop: '-', capacity: '-', kinkFall: '+' },
  },
  {
    name: 'liquid line heated',
    fault: 'liquid-line-heated',
    severity: 'clear',
    source: TABLE,
    signs: { SHout: '0', SC: '0/+', kinkFall: '-', drop: '0/-', capacity: '-' },
  },
  {
    name: 'vapour line bare',
    fault: 'suction-line-uninsulated',
    severity: 'clear',
    source: TABLE,
    signs: { Te: '0', SHout: '0', SHcomp: '+', Tc: '0', SC: '0', Td: '+', suctionWarming: '+', capacity: '0/-' },
  },
  {
    name: 'vapour valve throttled',
    fault: 'service-valve-throttled',
    severity: 'clear',
    source: TABLE,
    signs: { Te: '+', SHout: '0', Tc: '-', Td: '+', rise: '-', drop: '-', capacity: '-', power: '0/-' },
  },
  {
    name: 'indoor coil dirty',
    fault: 'evaporator-dirty',
    severity: 'clear',
    source: TABLE,
    signs: { Te: '-', SHout: '0/-', Tc: '-', SC: '0/+', rise: '-', drop: '+', capacity: '-', power: '0/-' },
  },
  {
    name: 'outdoor air recirculating',
    fault: 'air-recirculation',
    severity: 'clear',
    source: SOURCES.review,
    signs: { Te: '0/+', SHout: '0', Tc: '+', rise: '0', face: '+', TcOverFace: '0', current: '+', power: '+' },
  },
  {
    name: 'outdoor fan capacitor weak',
    fault: 'fan-capacitor-weak',
    severity: 'clear',
    source: TABLE,
    signs: { Te: '0/+', SHout: '0', Tc: '+', Td: '+', rise: '+', drop: '0/-', capacity: '-', power: '+' },
  },
];

const HEATING: readonly Omit<HeatPumpRow, 'mode'>[] = [
  {
    // before the port, which lies behind it: it reads as too little refrigerant, though the coil is full
    name: 'liquid line bent flat',
    fault: 'liquid-line-kink',
    severity: 'clear',
    source: SOURCES.review,
    signs: { Te: '0/-', SHout: '0/+', Tc: '-', SC: '-', rise: '0', capacity: '0/-' },
  },
  {
    name: 'liquid line heated',
    fault: 'liquid-line-heated',
    severity: 'clear',
    source: SOURCES.memory,
    signs: { Te: '0/-', SHout: '0', SC: '-', rise: '0', capacity: '0' },
  },
  {
    name: 'vapour line bare',
    fault: 'suction-line-uninsulated',
    severity: 'clear',
    source: SOURCES.memory,
    signs: { Te: '0/-', SHout: '0', Tc: '-', SC: '0/-', rise: '-', capacity: '-' },
  },
  {
    name: 'indoor coil dirty',
    fault: 'evaporator-dirty',
    severity: 'clear',
    source: SOURCES.review,
    signs: { Te: '0/+', SHout: '0', Tc: '+', SC: '0/+', Td: '+', rise: '+' },
  },
  {
    name: 'outdoor air recirculating',
    fault: 'air-recirculation',
    severity: 'clear',
    source: SOURCES.memory,
    signs: { Te: '-', SHout: '0/-', Tc: '0/-', outdoorFall: '+', capacity: '0/-', current: '0/-' },
  },
  {
    name: 'outdoor fan capacitor weak',
    fault: 'fan-capacitor-weak',
    severity: 'clear',
    source: SOURCES.memory,
    signs: { Te: '-', SHout: '0/-', Tc: '0/-', outdoorFall: '+', capacity: '-' },
  },
];

/** Less air sees the duct's resistance, so the fan moves a little more of it. */
const DUCT = { name: 'supply duct leaks', fault: 'duct-leak', severity: 'clear', source: TABLE } as const;

/** The same in either mode: electrics and what the circuit does not feel. */
const BOTH: readonly Omit<HeatPumpRow, 'mode'>[] = [
  {
    name: 'supply voltage low',
    fault: 'supply-voltage-low',
    severity: 'clear',
    source: TABLE,
    signs: { Te: '0', SHout: '0', Tc: '0', SC: '0', current: '+' },
  },
  {
    name: 'contactor burnt',
    fault: 'contactor-burnt',
    severity: 'clear',
    source: TABLE,
    signs: { Te: '0', SHout: '0', Tc: '0', SC: '0', current: '+' },
  },
  {
    name: 'compressor worn',
    fault: 'compressor-worn',
    severity: 'clear',
    source: TABLE,
    signs: { Te: '0', SHout: '0', SC: '0', Td: '+', current: '+', power: '+' },
  },
  {
    name: 'thermostat misplaced',
    fault: 'thermostat-misplaced',
    severity: 'clear',
    source: TABLE,
    signs: { Te: '0', SHout: '0', Tc: '0', SC: '0', Td: '0', capacity: '0', power: '0' },
  },
];

export const PART_ROWS: readonly HeatPumpRow[] = [
  { ...DUCT, mode: 'cooling', signs: { Te: '0/+', SHout: '0', Tc: '0', SC: '0', Td: '0' } },
  { ...DUCT, mode: 'heating', signs: { Te: '0', SHout: '0', Tc: '0/-', SC: '0', Td: '0/-' } },
  ...[...COOLING, ...BOTH].map((row) => ({ ...row, mode: 'cooling' }) as const),
  ...[...HEATING, ...BOTH].map((row) => ({ ...row, mode: 'heating' }) as const),
];
