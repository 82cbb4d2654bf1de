/** Machines whose indoor units share one circuit, as the qualification runs and reads them. */
import { fluidTable } from '../fluids/fluid';
import {
  type Conditions,
  createMachine,
  type Machine,
  type MachineSetup,
  plantDescription,
  type Snapshot,
} from '../index';
import type { OperatingMode, UnitDemand } from '../types';
import { type Readings, readingsOf } from './machines';

export interface NetworkVariant {
  readonly id: 'multi-r410a' | 'multi-r32' | 'recovery';
  readonly plant: 'multi-split' | 'heat-recovery';
  readonly refrigerant: MachineSetup['refrigerant'];
}

export const MULTI_R410A: NetworkVariant = { id: 'multi-r410a', plant: 'multi-split', refrigerant: 'R-410A' };
export const MULTI_R32: NetworkVariant = { id: 'multi-r32', plant: 'multi-split', refrigerant: 'R-32' };
export const RECOVERY: NetworkVariant = { id: 'recovery', plant: 'heat-recovery', refrigerant: 'R-410A' };
export const NETWORK_VARIANTS: readonly NetworkVariant[] = [MULTI_R410A, MULTI_R32, RECOVERY];

/** What to change of a mode's rating point: °C of the air, faults, nuisance, what rooms ask. */
export interface NetworkCase {
  readonly mode: OperatingMode;
  /** test mode: compressors at rated speed */
  readonly fixed?: boolean;
  readonly outdoor?: number;
  readonly indoor?: number;
  readonly wetBulb?: number;
  readonly faults?: MachineSetup['faults'];
  readonly nuisance?: MachineSetup['nuisance'];
  readonly units?: Readonly<Record<string, UnitDemand>>;
}

const ZERO = 273.15;

export function networkMachine({ plant, refrigerant }: NetworkVariant, change: NetworkCase): Machine {
  const rated = plantDescription(plant).modes[change.mode] as Conditions;
  const kelvin = (celsius: number | undefined, found: number): number =>
    celsius === undefined ? found : ZERO + celsius;
  return createMachine({
    plant,
    refrigerant,
    conditions: {
      ...rated,
      outdoor: kelvin(change.outdoor, rated.outdoor),
      indoor: kelvin(change.indoor, rated.indoor),
      wetBulb: kelvin(change.wetBulb, rated.wetBulb),
    },
    faults: change.faults ?? {},
    nuisance: change.nuisance,
  });
}

export function networkShot(variant: NetworkVariant, change: NetworkCase): Snapshot {
  const controls = { fixedSpeed: change.fixed ?? false, units: change.units };
  return networkMachine(variant, change).steady(controls);
}

/** One unit among its siblings. */
export interface UnitReadings {
  readonly id: string;
  readonly role: 'evaporator' | 'condenser' | 'idle';
  /** K at its own outlet; K of its liquid; share of its valve's stroke; K that its air falls; W */
  readonly evaporatorSuperheat: number;
  readonly subcooling: number;
  readonly valveOpening: number;
  readonly drop: number;
  readonly load: number;
  /** what its coil sensor reports over what its air sensor does, K */
  readonly sensor: number;
}

export interface NetworkReadings extends Readings {
  readonly units: readonly UnitReadings[];
  /** K before the subcooling exchanger; g/s through the units; kPa of the liquid header under the hot gas */
  readonly SCport: number;
  readonly unitFlow: number;
  readonly header: number;
  /** K, mean of the rooms that are heated */
  readonly SCunit: number;
}

export function networkReadings(variant: NetworkVariant, snapshot: Snapshot): NetworkReadings {
  const { probes, stations, sensors } = snapshot;
  const fluid = fluidTable(variant.refrigerant);
  const before = stations['condenser-out'];
  const units = (snapshot.units ?? []).map(({ id, role }): UnitReadings => {
    const of = (name: 'evaporatorSuperheat' | 'subcooling' | 'valveOpening' | 'returnAirTemp' | 'supplyAirTemp') =>
      probes[`${name}@${id}`].value;
    return {
      id,
      role,
      evaporatorSuperheat: of('evaporatorSuperheat'),
      subcooling: of('subcooling'),
      valveOpening: of('valveOpening'),
      drop: of('returnAirTemp') - of('supplyAirTemp'),
      load: probes[`capacityTotal@${id}`].value,
      sensor: sensors[`evaporatorCoil@${id}`] - sensors[`returnAir@${id}`],
    };
  });
  const heated = units.filter(({ role }) => role === 'condenser');
  return {
    ...readingsOf(snapshot),
    units,
    SCport: fluid.tBubble(before.pressure) - before.temperature,
    unitFlow: stations['metering-in'].massFlow * 1000,
    header: (probes.dischargePressure.value - stations['metering-in'].pressure) / 1000,
    SCunit: heated.reduce((sum, { subcooling }) => sum + subcooling, 0) / heated.length,
  };
}

export function networkRead(variant: NetworkVariant, change: NetworkCase): NetworkReadings {
  return networkReadings(variant, networkShot(variant, change));
}
