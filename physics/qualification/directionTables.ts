/**
 * Which way each reading goes under each fault: published rule tables as amended by the trade review (disputed entries are
 * left out or carry the amended sign). '+' and '-' must be read at twice the instrument's uncertainty, '0' is bounded,
 * '0/+' may stand or rise but not fall, '0/-' the reverse. Rows of a valve that still regulates are read while it does.
 */
import type { FamilyId } from '../index';
import { INVERTER_FIXED, INVERTER_FREE, ORIFICES, type Reading, type Variant } from './machines';
import { SOURCES } from './sources';

export type Sign = '+' | '-' | '0' | '0/+' | '0/-';

/**
 * `regulating`: four fifths of the severity at which the valve comes to its stop. `valve-open`: beyond it, a tenth further
 * or where the family is severe.
 */
export type Level = 'clear' | 'severe' | 'max' | 'regulating' | 'valve-open';

export interface DirectionRow {
  readonly name: string;
  readonly fault: FamilyId;
  readonly level: Level;
  readonly machines: readonly Variant[];
  readonly source: string;
  readonly signs: Readonly<Partial<Record<Reading, Sign>>>;
}

const AMENDED = '; amended by the trade review';

/** Fixed orifice, cooling. */
const ORIFICE_ROWS: readonly Omit<DirectionRow, 'machines'>[] = [
  {
    name: 'undercharge',
    fault: 'undercharge',
    level: 'clear',
    source: SOURCES.rossiBraun,
    signs: { Te: '-', SH: '+', Tc: '-', SC: '-', Td: '+', rise: '-', drop: '-', capacity: '-', power: '-' },
  },
  {
    // Discharge temperature: the rule table has −, the review + for constant superheat. An orifice does not hold it.
    name: 'internal leak',
    fault: 'compressor-leak-by',
    level: 'clear',
    source: SOURCES.rossiBraun + AMENDED,
    signs: { Te: '+', SH: '-', Tc: '-', SC: '-', Td: '+', rise: '-', drop: '-', capacity: '-', power: '0/-' },
  },
  {
    name: 'liquid-line restriction',
    fault: 'drier-restriction',
    level: 'clear',
    source: SOURCES.rossiBraun + AMENDED,
    signs: { Te: '-', SH: '+', Tc: '0/-', SC: '+', Td: '+', rise: '-', drop: '-', capacity: '-', power: '-' },
  },
  {
    // The rule table's restriction sits anywhere in the liquid line; drier and port before it must not move.
    name: 'kinked liquid line',
    fault: 'liquid-line-kink',
    level: 'clear',
    source: SOURCES.rossiBraun + AMENDED,
    signs: { Te: '-', SH: '+', Tc: '0/-', SC: '+', Td: '+', rise: '-', drop: '-', capacity: '-', drierFall: '0' },
  },
  {
    // Named as missing by the review, its signs from memory: the port is on the line's side of the valve.
    name: 'suction service valve throttled',
    fault: 'service-valve-throttled',
    level: 'clear',
    source: SOURCES.memory,
    signs: { Te: '+', SH: '-', Tc: '-', rise: '-', drop: '-', capacity: '-', power: '0/-' },
  },
  {
    name: 'condenser fouling',
    fault: 'condenser-dirty',
    level: 'clear',
    source: SOURCES.rossiBraun,
    signs: { Te: '+', SH: '-', Tc: '+', SC: '-', Td: '+', rise: '+', drop: '-', capacity: '-', power: '+' },
  },
  {
    name: 'condenser air loss',
    fault: 'condenser-fan-slow',
    level: 'clear',
    source: SOURCES.rossiBraun,
    signs: { Te: '+', SH: '-', Tc: '+', SC: '-', Td: '+', rise: '+', drop: '-', capacity: '-', power: '+' },
  },
  {
    name: 'evaporator air loss, filter',
    fault: 'filter-dirty',
    level: 'clear',
    source: SOURCES.rossiBraun + AMENDED,
    signs: { Te: '-', SH: '-', Tc: '-', SC: '0/-', Td: '-', rise: '-', drop: '+', capacity: '-', power: '0/-' },
  },
  {
    name: 'evaporator air loss, fan',
    fault: 'evaporator-fan-slow',
    level: 'clear',
    source: SOURCES.rossiBraun + AMENDED,
    signs: { Te: '-', SH: '-', Tc: '-', SC: '0/-', Td: '-', rise: '-', drop: '+', capacity: '-', power: '0/-' },
  },
  {
    name: 'evaporator fouling',
    fault: 'evaporator-dirty',
    level: 'clear',
    source: SOURCES.rossiBraun + AMENDED,
    signs: { Te: '-', SH: '-', Tc: '-', SC: '0/-', Td: '-', rise: '-', drop: '+', capacity: '-', power: '0/-' },
  },
  {
    // The review: the rise over the coil does not move, the face is 5…8 K warmer; the rest as any warmer place.
    name: 'condenser air recirculating',
    fault: 'air-recirculation',
    level: 'clear',
    source: SOURCES.review,
    signs: { Tc: '+', rise: '0', face: '+', TcOverFace: '0', capacity: '0/-', current: '+', power: '+' },
  },
  {
    name: 'overcharge',
    fault: 'overcharge',
    level: 'clear',
    source: SOURCES.memory + AMENDED,
    signs: { Te: '+', SH: '-', Tc: '+', SC: '+', rise: '0/+', drop: '0', capacity: '0/-', power: '+' },
  },
  {
    name: 'non-condensable gas',
    fault: 'non-condensable',
    level: 'clear',
    source: SOURCES.memory,
    signs: { Te: '0/+', SH: '0/-', Tc: '+', SC: '+', Td: '+', rise: '0', drop: '0', capacity: '0/-', power: '+' },
  },
  {
    name: 'orifice partly blocked',
    fault: 'orifice-undersize',
    level: 'clear',
    source: SOURCES.memory + AMENDED,
    signs: { Te: '-', SH: '+', Tc: '0/-', SC: '+', Td: '+', rise: '-', drop: '-', capacity: '-', power: '-' },
  },
  {
    name: 'orifice too large',
    fault: 'orifice-oversize',
    level: 'clear',
    source: SOURCES.memory + AMENDED,
    signs: { Te: '+', SH: '-', Tc: '0/-', SC: '-', Td: '-', rise: '0', drop: '-', capacity: '-', power: '0/+' },
  },
];

/** Regulating valve at fixed speed, cooling. */
const VALVE_ROWS: readonly DirectionRow[] = [
  {
    name: 'undercharge, valve regulating',
    fault: 'undercharge',
    level: 'clear',
    signs: { Te: '0/-', SH: '0', Tc: '-', SC: '-', Td: '0', rise: '0/-', drop: '0', capacity: '0/-', power: '0/-' },
  },
  {
    name: 'undercharge, valve at its stop',
    fault: 'undercharge',
    level: 'valve-open',
    signs: { Te: '-', SH: '+', Tc: '-', SC: '-', Td: '+', rise: '-', drop: '-', capacity: '-', power: '-' },
  },
  {
    name: 'overcharge',
    fault: 'overcharge',
    level: 'clear',
    signs: { Te: '0', SH: '0', Tc: '+', SC: '+', Td: '+', rise: '0/+', drop: '0', capacity: '0', power: '+' },
  },
  {
    // subcooling: either way (review), not scored
    name: 'condenser fouling',
    fault: 'condenser-dirty',
    level: 'clear',
    signs: { Te: '0/+', SH: '0', Tc: '+', Td: '+', rise: '+', drop: '0/-', capacity: '-', power: '+' },
  },
  {
    name: 'condenser air loss',
    fault: 'condenser-fan-slow',
    level: 'clear',
    signs: { Te: '0/+', SH: '0', Tc: '+', Td: '+', rise: '+', drop: '0/-', capacity: '-', power: '+' },
  },
  {
    name: 'evaporator air loss, filter',
    fault: 'filter-dirty',
    level: 'clear',
    signs: { Te: '-', SH: '0/-', Tc: '-', SC: '0/+', Td: '0/-', rise: '-', drop: '+', capacity: '-', power: '0/-' },
  },
  {
    name: 'evaporator air loss, fan',
    fault: 'evaporator-fan-slow',
    level: 'clear',
    signs: { Te: '-', SH: '0/-', Tc: '-', SC: '0/+', Td: '0/-', rise: '-', drop: '+', capacity: '-', power: '0/-' },
  },
  {
    name: 'evaporator fouling',
    fault: 'evaporator-dirty',
    level: 'clear',
    signs: { Te: '-', SH: '0/-', Tc: '-', SC: '0/+', rise: '-', drop: '+', capacity: '-', power: '0/-' },
  },
  {
    name: 'condenser air recirculating',
    fault: 'air-recirculation',
    level: 'clear',
    signs: { Te: '0/+', SH: '0', Tc: '+', rise: '0', face: '+', TcOverFace: '0', current: '+', power: '+' },
  },
  {
    name: 'liquid-line restriction, valve regulating',
    fault: 'drier-restriction',
    level: 'regulating',
    signs: { Te: '0', SH: '0', Tc: '0', SC: '0/+', Td: '0', rise: '0', drop: '0', capacity: '0', power: '0' },
  },
  {
    name: 'liquid-line restriction, valve at its stop',
    fault: 'drier-restriction',
    level: 'valve-open',
    signs: { Te: '-', SH: '+', Tc: '0/-', SC: '+', Td: '+', rise: '-', drop: '-', capacity: '-', power: '-' },
  },
  {
    name: 'internal leak',
    fault: 'compressor-leak-by',
    level: 'clear',
    signs: { Te: '+', SH: '0', Tc: '-', SC: '0/-', Td: '+', rise: '-', drop: '-', capacity: '-', power: '0/-' },
  },
  {
    name: 'non-condensable gas',
    fault: 'non-condensable',
    level: 'clear',
    signs: { Te: '0', SH: '0', Tc: '+', SC: '+', Td: '+', rise: '0', drop: '0', capacity: '0', power: '+' },
  },
  {
    name: 'valve stuck open',
    fault: 'metering-valve-stuck-opening',
    level: 'clear',
    signs: { Te: '+', SH: '-', Tc: '0/+', SC: '-', Td: '-', rise: '0', drop: '0/-', capacity: '-', power: '0/+' },
  },
  {
    name: 'valve stuck towards shut',
    fault: 'metering-valve-stuck-closing',
    level: 'clear',
    signs: { Te: '-', SH: '+', Tc: '-', SC: '+', Td: '+', rise: '-', drop: '-', capacity: '-', power: '-' },
  },
].map((row) => ({ ...row, machines: [INVERTER_FIXED], source: SOURCES.memory + AMENDED }) as DirectionRow);

/**
 * Speed on a target of evaporating temperature. The review's row for charge and restriction names two stages itself
 * (“0 until the valve is fully open”); what follows from starving is read beyond the stop.
 */
const SPEED_ROWS: readonly DirectionRow[] = [
  {
    name: 'undercharge, valve regulating',
    fault: 'undercharge',
    level: 'regulating',
    signs: { Te: '0', SH: '0', Tc: '0/-', SC: '-', opening: '+' },
  },
  {
    name: 'undercharge, valve at its stop',
    fault: 'undercharge',
    level: 'valve-open',
    signs: { Te: '0', Td: '+', speed: '+' },
  },
  {
    name: 'liquid-line restriction, valve regulating',
    fault: 'drier-restriction',
    level: 'regulating',
    signs: { Te: '0', SH: '0', Tc: '0/-', opening: '+' },
  },
  {
    name: 'liquid-line restriction, valve at its stop',
    fault: 'drier-restriction',
    level: 'valve-open',
    signs: { Te: '0', SC: '+', Td: '+', speed: '+' },
  },
  {
    name: 'internal leak',
    fault: 'compressor-leak-by',
    level: 'clear',
    signs: { Te: '0', SH: '0', Tc: '0/-', SC: '0/-', Td: '+', speed: '+', effort: '+' },
  },
  {
    name: 'evaporator air loss, filter',
    fault: 'filter-dirty',
    level: 'clear',
    signs: { Te: '0/-', SH: '0', Tc: '-', SC: '0/+', Td: '0/-', speed: '-', opening: '-' },
  },
].map((row) => ({ ...row, machines: [INVERTER_FREE], source: SOURCES.review }) as DirectionRow);

export const DIRECTION_ROWS: readonly DirectionRow[] = [
  ...ORIFICE_ROWS.map((row) => ({ ...row, machines: ORIFICES })),
  ...VALVE_ROWS,
  ...SPEED_ROWS,
];
