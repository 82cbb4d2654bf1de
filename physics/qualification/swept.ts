/** The machines of the symptom sheets: in which mode, with which faults, and what is read off them. */

import { fluidTable } from '../fluids/fluid';
import {
  type Conditions,
  type FaultFamily,
  familiesOf,
  type MachineSetup,
  plantDescription,
  type Snapshot,
} from '../index';
import { networkData } from '../plants';
import type { OperatingMode, UnitDemand } from '../types';
import { RELATIVE, uncertainty } from './directions';
import {
  COLD_ROOMS,
  HEAT_PUMPS,
  type Reading,
  readingsOf,
  setupOf,
  steadySnapshot,
  VARIANTS,
  type Variant,
} from './machines';
import {
  MULTI_R410A,
  type NetworkVariant,
  networkMachine,
  networkReadings,
  networkShot,
  RECOVERY,
} from './networkMachines';

/** Readings by name; those of one unit carry it after an @. */
export type Numbers = Readonly<Record<string, number>>;

/** A fault as a sheet shows it. */
export interface SweptFault {
  readonly family: FaultFamily;
  /** the fault's key: the sensor after a colon, the unit after an @ where it needs them */
  readonly key: string;
  /** the unit that has it, and one that is asked the same and has not */
  readonly unit?: string;
  readonly sibling?: string;
  /** what rooms are asked otherwise than the mode says */
  readonly units?: Readonly<Record<string, UnitDemand>>;
}

export interface Swept {
  readonly id: string;
  readonly plant: MachineSetup['plant'];
  readonly refrigerant: MachineSetup['refrigerant'];
  readonly mode: OperatingMode;
  readonly conditions: Conditions;
  readonly fixedSpeed: boolean;
  /** steps from no fault to the end of its range */
  readonly steps: number;
  readonly faults: readonly SweptFault[];
  /** Its steady state; throws `PhysicsError` where there is none. */
  steady(fault: SweptFault, severity: number): Snapshot;
  read(snapshot: Snapshot): Numbers;
  /** half width of what an instrument cannot tell from the healthy machine, in the reading's own unit */
  blur(reading: string, healthy: Numbers): number;
}

const ZERO = 273.15;
const SINGLE_STEPS = 96;
const NETWORK_STEPS = 48;

function keysOf({ id, targets }: FaultFamily): string[] {
  return targets?.map((target) => `${id}:${target}`) ?? [id];
}

/** Half width of what an instrument cannot tell from the healthy machine, in the reading's own unit. */
export function blur(reading: string, healthy: Numbers, variant: Variant): number {
  switch (reading) {
    // the bounds of lookalikes.ts, which are twice the uncertainty
    case 'standing':
      return 17.5;
    case 'filterDrop':
      return 10;
    case 'drierFall':
    case 'supply':
      return 0.7;
    case 'drierDrop':
      return 20;
    // flow and COP are read through the capacity
    case 'flow':
    case 'cop':
      return 0.03 * healthy[reading];
    case 'outdoorIce':
      return 0.05;
    default: {
      const known = reading as Reading;
      return uncertainty(known, variant) * (RELATIVE.includes(known) ? healthy[reading] : 1);
    }
  }
}

function single(variant: Variant, mode: 'cooling' | 'heating', id: string): Swept {
  const { plant, refrigerant } = variant;
  return {
    id,
    plant,
    refrigerant,
    mode,
    conditions: setupOf(variant, { mode }).conditions,
    fixedSpeed: variant.controls.fixedSpeed ?? false,
    steps: SINGLE_STEPS,
    faults: familiesOf(plant, mode, refrigerant).flatMap((family) => keysOf(family).map((key) => ({ family, key }))),
    steady: ({ key }, severity) => steadySnapshot(variant, { mode, faults: { [key]: severity } }),
    read: readingsOf,
    blur: (reading, healthy) => blur(reading, healthy, variant),
  };
}

/** Who has a fault of one unit, and who is asked the same: in every mode, and where every second room heats. */
const PAIRED = [['unit3', 'unit5']] as const;
const PAIRED_EACH_WAY = [
  ['unit3', 'unit5'],
  ['unit4', 'unit6'],
] as const;

/** Only in a unit that is off can this be seen. */
const SEEN_WHEN_OFF = ['metering-valve-not-closing', 'unit-address-crossed'];

function networkFaults(variant: NetworkVariant, mode: OperatingMode): SweptFault[] {
  const pairs = mode === 'simultaneous' ? PAIRED_EACH_WAY : PAIRED;
  return familiesOf(variant.plant, mode).flatMap((family) =>
    keysOf(family).flatMap((key): SweptFault[] => {
      if (!family.perUnit) return [{ family, key }];
      return pairs.map(([unit, sibling]) => ({
        family,
        key: `${key}@${unit}`,
        unit,
        sibling,
        units: SEEN_WHEN_OFF.includes(family.id) ? { [unit]: 'off' } : undefined,
      }));
    }),
  );
}

function numbersOf(variant: NetworkVariant, snapshot: Snapshot): Numbers {
  const { units, ...whole } = networkReadings(variant, snapshot);
  const { sensors, stations, modules = [] } = snapshot;
  const celsius = (sensor: 'evaporatorCoil', id: string): number => sensors[`${sensor}@${id}`] - ZERO;
  const own = units.flatMap(({ id, evaporatorSuperheat, subcooling, valveOpening, drop, load }) => [
    [`SH@${id}`, evaporatorSuperheat],
    [`SC@${id}`, subcooling],
    [`opening@${id}`, valveOpening],
    [`drop@${id}`, drop],
    [`warming@${id}`, -drop],
    [`load@${id}`, load / 1000],
    [`coil@${id}`, celsius('evaporatorCoil', id)],
  ]);
  const doing = (role: 'evaporator' | 'condenser'): number => modules.filter((each) => each.role === role).length;
  const header = stations['metering-in'];
  return {
    ...whole,
    warming: -whole.drop,
    outdoorFall: -whole.rise,
    boiling: doing('evaporator'),
    atWork: doing('evaporator') + doing('condenser'),
    SCheader: fluidTable(variant.refrigerant).tBubble(header.pressure) - header.temperature,
    wetFrom: networkData(variant.plant, variant.refrigerant).control.wetFrom - ZERO,
    ...Object.fromEntries(own),
  };
}

/** What the readings of one unit are as readings of a machine, for what an instrument can tell. */
const LIKE: Readonly<Record<string, Reading>> = {
  SH: 'SH',
  SC: 'SC',
  SCport: 'SC',
  SCunit: 'SC',
  drop: 'drop',
  warming: 'drop',
  coil: 'Td',
};

function networkBlur(reading: string, healthy: Numbers, variant: Variant): number {
  const [name] = reading.split('@');
  switch (name) {
    case 'opening':
      return 0.02;
    case 'load':
      return 0.03 * Math.abs(healthy[reading]);
    case 'header':
      return 17.5;
    default:
      return LIKE[name] === undefined ? blur(name, healthy, variant) : uncertainty(LIKE[name], variant);
  }
}

function network(variant: NetworkVariant, mode: OperatingMode, fixed: boolean): Swept {
  const { id, plant, refrigerant } = variant;
  const instruments: Variant = { id: 'inverter-free', plant, refrigerant, controls: {} };
  return {
    id: `${id}-${mode}${fixed ? '-full-load' : ''}`,
    plant,
    refrigerant,
    mode,
    conditions: networkMachine(variant, { mode }).setup.conditions,
    fixedSpeed: fixed,
    steps: NETWORK_STEPS,
    faults: networkFaults(variant, mode),
    steady: ({ key, units }, severity) => networkShot(variant, { mode, fixed, units, faults: { [key]: severity } }),
    read: (snapshot) => numbersOf(variant, snapshot),
    blur: (reading, healthy) => networkBlur(reading, healthy, instruments),
  };
}

/** Every sheet, in the order of the plants. */
export const SWEPT: readonly Swept[] = [
  ...[...VARIANTS, ...COLD_ROOMS].map((variant) => single(variant, 'cooling', variant.id)),
  ...HEAT_PUMPS.flatMap((variant) =>
    (['cooling', 'heating'] as const).map((mode) => single(variant, mode, `${variant.id}-${mode}`)),
  ),
  ...(['cooling', 'heating'] as const).flatMap((mode) => [
    network(MULTI_R410A, mode, false),
    network(MULTI_R410A, mode, true),
  ]),
  ...(['cooling', 'heating', 'simultaneous'] as const).map((mode) => network(RECOVERY, mode, false)),
];

/** Whether a plant runs at more than one speed. */
export function hasSpeeds(plant: Swept['plant']): boolean {
  return plantDescription(plant).variableSpeed;
}
