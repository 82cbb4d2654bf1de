/**
 * A machine made of straight lines, for tests of the examiner alone: every fault moves a few channels in proportion to
 * its severity, every difference between machines moves some a little. Its figures stand for nothing but themselves.
 */
import { ORIFICE_SPLIT_PLACES } from '../../../physics/plants/orificeSplit/places';
import {
  type FaultFamily,
  LOOKS,
  type LookKey,
  type LookName,
  type MachineSetup,
  type Nuisance,
  type Place,
  type PlantDescription,
  PROBES,
  type ProbeName,
  type SensorName,
  type Snapshot,
} from '../../../physics/types';
import type { Bench } from '../../../src/examiner/candidates';
import type { MachineSource } from '../../../src/examiner/source';
import type { Differential, DifferentialInput } from '../../../src/examiner/types';

type Effects = Partial<Record<ProbeName | `look:${LookName}`, number>>;

const BASE: Partial<Record<ProbeName, number>> = {
  suctionPressure: 1e6,
  liquidPressure: 2.8e6,
  liquidPressureAfterDrier: 2.78e6,
  suctionLineTemp: 288,
  liquidLineTemp: 312,
  liquidLineTempAfterDrier: 311.9,
  dischargeLineTemp: 352,
  evaporatorOutletTemp: 286,
  outdoorAirTemp: 308.15,
  condenserEnteringAirTemp: 308.15,
  condenserLeavingAirTemp: 318,
  returnAirTemp: 300.15,
  returnAirWetBulb: 292.55,
  supplyAirTemp: 289.5,
  supplyAirWetBulb: 287,
  compressorCurrent: 12,
  supplyVoltage: 230,
  compressorCapacitance: 4.5e-5,
  filterPressureDrop: 40,
  superheat: 7,
  subcooling: 6,
  capacityTotal: 1e4,
};

/** Change of each channel for severity 1. */
const FAULT_EFFECTS: Record<string, Effects> = {
  undercharge: {
    suctionPressure: -9e5,
    liquidPressure: -9e5,
    superheat: 40,
    subcooling: -30,
    suctionLineTemp: 15,
    liquidLineTemp: 4,
    compressorCurrent: -6,
    'look:sightGlass': 3,
  },
  overcharge: { liquidPressure: 1.2e6, subcooling: 35, liquidLineTemp: -8, compressorCurrent: 4, superheat: -10 },
  'drier-restriction': {
    suctionPressure: -4e5,
    liquidPressureAfterDrier: -2.4e6,
    superheat: 25,
    subcooling: 10,
    suctionLineTemp: 10,
    liquidLineTempAfterDrier: -12,
    compressorCurrent: -2,
  },
  'condenser-dirty': {
    liquidPressure: 1.1e6,
    condenserLeavingAirTemp: 16,
    liquidLineTemp: 9,
    compressorCurrent: 5,
    'look:condenserDirt': 1,
  },
  'filter-dirty': {
    suctionPressure: -3e5,
    supplyAirTemp: -9,
    filterPressureDrop: 180,
    superheat: -8,
    suctionLineTemp: -9,
    'look:filterDust': 1,
  },
};
const NUISANCE_EFFECTS: Partial<Record<keyof Nuisance, Effects>> = {
  charge: { suctionPressure: 9e5, liquidPressure: 9e5, superheat: -40, subcooling: 30, suctionLineTemp: -15 },
  condenserAir: { liquidPressure: -4e5, condenserLeavingAirTemp: -8 },
  evaporatorAir: { suctionPressure: 2e5, supplyAirTemp: 6 },
  displacement: { compressorCurrent: 6, suctionPressure: -2e5 },
  voltage: { supplyVoltage: 230, compressorCurrent: -5 },
};

const family = (id: FaultFamily['id'], slight: number, clear: number, severe: number, max: number): FaultFamily => ({
  id,
  plants: ['orifice-split'],
  slight,
  clear,
  severe,
  max,
  unit: 'share',
});

const FAMILIES: readonly FaultFamily[] = [
  family('undercharge', 0.08, 0.18, 0.28, 0.45),
  family('overcharge', 0.08, 0.18, 0.28, 0.4),
  family('drier-restriction', 0.15, 0.35, 0.5, 0.6),
  family('condenser-dirty', 0.15, 0.3, 0.5, 0.7),
  family('filter-dirty', 0.15, 0.3, 0.5, 0.7),
];

/** What this machine of straight lines knows of; a place of the plant that reads anything else is left out. */
const LOOKED_AT: readonly LookKey[] = [
  'sightGlass',
  'evaporatorFrost',
  'filterDust',
  'condenserDirt',
  'condenserFanSpeed',
  'evaporatorFanSpeed',
];
const isModelled = ({ reads: { look, link: _link, ...probes } }: Place): boolean =>
  look ? LOOKED_AT.includes(look) : Object.values(probes).every((probe) => BASE[probe as ProbeName] !== undefined);

const PLANT = {
  id: 'orifice-split',
  refrigerants: ['R-410A'],
  metering: 'fixed-orifice',
  variableSpeed: false,
  dataLink: false,
  places: ORIFICE_SPLIT_PLACES.filter(isModelled),
} as unknown as PlantDescription;

export function syntheticSnapshot({ faults, nuisance = {} }: MachineSetup, still: boolean): Snapshot {
  const at = (channel: ProbeName | `look:${LookName}`, base: number): number => {
    let value = base;
    for (const [key, severity] of Object.entries(faults)) value += severity * (FAULT_EFFECTS[key]?.[channel] ?? 0);
    for (const [name, factor] of Object.entries(nuisance)) {
      value += (factor - 1) * (NUISANCE_EFFECTS[name as keyof Nuisance]?.[channel] ?? 0);
    }
    return value;
  };
  const probes = Object.fromEntries(
    Object.entries(PROBES).map(([name, unit]) => {
      const pressure = still && name.endsWith('Pressure');
      const value = pressure ? 1.65e6 : at(name as ProbeName, BASE[name as ProbeName] ?? 0);
      return [name, { value, unit }];
    }),
  );
  const looks = Object.fromEntries(
    LOOKS.map((name) => [name, Math.max(0, at(`look:${name}`, name.endsWith('FanSpeed') ? 1 : 0))]),
  );
  const sensors = {} as Record<SensorName, number>;
  return {
    time: 0,
    regime: still ? 'still' : 'flow',
    probes,
    looks,
    sensors,
    controller: 'cooling',
  } as unknown as Snapshot;
}

export const SYNTHETIC: MachineSource = {
  version: 'straight-lines',
  families: FAMILIES,
  plant: () => PLANT,
  snapshots: (setup, states) =>
    Object.fromEntries(states.map((state) => [state, syntheticSnapshot(setup, state === 'standing')])),
};

export const INPUT: DifferentialInput = {
  plant: 'orifice-split',
  refrigerant: 'R-410A',
  conditions: { outdoor: 308.15, indoor: 300.15, wetBulb: 292.55, mode: 'cooling', altitude: 0 },
};

export const TALLY = {
  'no-fault': 15,
  undercharge: 25,
  overcharge: 10,
  'drier-restriction': 10,
  'condenser-dirty': 20,
  'filter-dirty': 20,
} as const;

export const benchFor = (differential: Differential): Bench => ({
  plant: PLANT,
  toolbag: ['low-gauge', 'high-gauge', 'pipe-clamp', 'air-probe', 'clamp-ammeter', 'multimeter', 'manometer'],
  charge: 2.8,
  states: differential.states,
});
