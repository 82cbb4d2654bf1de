/** Which way readings go on machines with many units: rows of the trade review, written before the numbers were chosen. */
import type { FamilyId } from '../index';
import type { TransducerName } from '../types';
import type { Sign } from './directionTables';

export type Mode = 'cooling' | 'heating';

export interface NetworkRow {
  readonly name: string;
  readonly mode: Mode;
  /** free: by its own control; fixed: test mode at rated speed */
  readonly speed: 'free' | 'fixed';
  readonly fault: FamilyId;
  /** the sensor that it sits at, where the family has several */
  readonly sensor?: TransducerName;
  /** a severity of the family; `open` = so far that every valve is open, 0.1 beyond; `regulating` = 0.8 of that */
  readonly level: 'slight' | 'clear' | 'severe' | 'open' | 'regulating';
  readonly signs: Readonly<Record<string, Sign>>;
}

/** Rows "speed on Te target", table of regulating valves at fixed speed as amended, rows of heating. */
export const NETWORK_ROWS: readonly NetworkRow[] = [
  {
    // it holds what it reads: the truth lies as far below
    name: 'suction sensor reads high',
    mode: 'cooling',
    speed: 'free',
    fault: 'pressure-transducer-offset',
    sensor: 'suctionPressure',
    level: 'clear',
    signs: { Te: '-', SHout: '0', Tc: '+', Td: '+', speed: '+', effort: '+' },
  },
  {
    name: 'suction sensor reads high',
    mode: 'cooling',
    speed: 'fixed',
    fault: 'pressure-transducer-offset',
    sensor: 'suctionPressure',
    level: 'clear',
    signs: { Te: '0', SHout: '0', Tc: '0', SC: '0', Td: '0' },
  },
  {
    name: 'discharge sensor reads high',
    mode: 'heating',
    speed: 'free',
    fault: 'pressure-transducer-offset',
    sensor: 'dischargePressure',
    level: 'clear',
    signs: { Te: '0/+', SHout: '0', Tc: '-', Td: '-', speed: '-', capacity: '0/-' },
  },
  {
    name: 'undercharge, valves regulating',
    mode: 'cooling',
    speed: 'free',
    fault: 'undercharge',
    level: 'regulating',
    signs: { Te: '0', SHout: '0', Tc: '0/-', SC: '-', opening: '+' },
  },
  {
    name: 'undercharge, valves open',
    mode: 'cooling',
    speed: 'free',
    fault: 'undercharge',
    level: 'open',
    signs: { Te: '0', SC: '-', Td: '+', opening: '+', effort: '+' },
  },
  {
    name: 'liquid-line restriction',
    mode: 'cooling',
    speed: 'free',
    fault: 'drier-restriction',
    level: 'clear',
    signs: { Te: '0', SHout: '0', Tc: '0/-', opening: '+' },
  },
  {
    name: 'internal leak',
    mode: 'cooling',
    speed: 'free',
    fault: 'compressor-leak-by',
    level: 'clear',
    signs: { Te: '0', SHout: '0', Tc: '0/-', SC: '0/-', Td: '+', speed: '+', effort: '+' },
  },
  {
    name: 'dirty filters of all units',
    mode: 'cooling',
    speed: 'free',
    fault: 'filter-dirty',
    level: 'clear',
    signs: { Te: '0', SHout: '0', Tc: '-', SC: '0/+', Td: '0/-', speed: '-', opening: '-', drop: '+' },
  },
  {
    name: 'outdoor coil dirty',
    mode: 'cooling',
    speed: 'free',
    fault: 'condenser-dirty',
    level: 'clear',
    signs: { Te: '0', SHout: '0', Tc: '+', Td: '+', rise: '+', effort: '+' },
  },
  {
    name: 'overcharge',
    mode: 'cooling',
    speed: 'fixed',
    fault: 'overcharge',
    level: 'clear',
    signs: { Te: '0', SHout: '0', Tc: '+', SC: '+', Td: '+', opening: '-', power: '+' },
  },
  {
    name: 'undercharge, valves regulating',
    mode: 'cooling',
    speed: 'fixed',
    fault: 'undercharge',
    level: 'slight',
    signs: { SHout: '0', Tc: '0/-', SC: '-', opening: '+', drop: '0' },
  },
  {
    name: 'undercharge, valves open',
    mode: 'cooling',
    speed: 'fixed',
    fault: 'undercharge',
    level: 'open',
    signs: { Te: '-', SHout: '+', Tc: '-', SC: '-', Td: '+', rise: '-', drop: '-', capacity: '-', power: '-' },
  },
  {
    name: 'internal leak',
    mode: 'cooling',
    speed: 'fixed',
    fault: 'compressor-leak-by',
    level: 'clear',
    signs: { Te: '+', SHout: '0', Tc: '-', SC: '0/-', Td: '+', rise: '-', drop: '-', capacity: '-', power: '0/-' },
  },
  {
    name: 'outdoor coil dirty',
    mode: 'cooling',
    speed: 'fixed',
    fault: 'condenser-dirty',
    level: 'clear',
    signs: { Te: '0/+', SHout: '0', Tc: '+', Td: '+', rise: '+', drop: '0/-', capacity: '-', power: '+' },
  },
  {
    name: 'dirty filters of all units',
    mode: 'cooling',
    speed: 'fixed',
    fault: 'filter-dirty',
    level: 'clear',
    signs: { Te: '-', SHout: '0/-', Tc: '-', SC: '0/+', rise: '-', drop: '+', capacity: '-', power: '0/-' },
  },
  {
    name: 'non-condensable gas',
    mode: 'cooling',
    speed: 'fixed',
    fault: 'non-condensable',
    level: 'clear',
    signs: { Te: '0', SHout: '0', Tc: '+', SC: '+', Td: '+', rise: '0', drop: '0', power: '+' },
  },
  {
    name: 'liquid-line restriction, valves open',
    mode: 'cooling',
    speed: 'fixed',
    fault: 'drier-restriction',
    level: 'open',
    signs: { Te: '-', SHout: '+', Tc: '0/-', Td: '+', rise: '-', drop: '-', capacity: '-' },
  },
  {
    name: 'suction service valve throttled',
    mode: 'cooling',
    speed: 'fixed',
    fault: 'service-valve-throttled',
    level: 'clear',
    signs: { Te: '+', Tc: '-', drop: '-', capacity: '-', power: '0/-' },
  },
  {
    name: 'undercharge, valves open',
    mode: 'heating',
    speed: 'fixed',
    fault: 'undercharge',
    level: 'open',
    signs: { Te: '-', SHout: '+', Tc: '-', SCunit: '-', Td: '+', capacity: '-' },
  },
  {
    name: 'overcharge',
    mode: 'heating',
    speed: 'fixed',
    fault: 'overcharge',
    level: 'clear',
    signs: { Tc: '+', SCunit: '+', Td: '+', power: '+' },
  },
  {
    name: 'overcharge',
    mode: 'heating',
    speed: 'free',
    fault: 'overcharge',
    level: 'clear',
    signs: { SCunit: '+', speed: '-', capacity: '-' },
  },
  {
    name: 'dirty filters of all units',
    mode: 'heating',
    speed: 'fixed',
    fault: 'filter-dirty',
    level: 'clear',
    signs: { Te: '0/+', SHout: '0', Tc: '+', SCunit: '0/-', Td: '+', drop: '-' },
  },
  {
    name: 'outdoor coil dirty',
    mode: 'heating',
    speed: 'fixed',
    fault: 'condenser-dirty',
    level: 'severe',
    signs: { Te: '-', SHout: '0/-', Tc: '-', SCunit: '0/-', Td: '+', capacity: '-' },
  },
  {
    name: 'internal leak',
    mode: 'heating',
    speed: 'fixed',
    fault: 'compressor-leak-by',
    level: 'clear',
    signs: { Te: '+', SHout: '0', Tc: '-', Td: '+', capacity: '-', power: '0/-' },
  },
];
