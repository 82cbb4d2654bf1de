/**
 * Invented 22.4 kW variable-flow multi-split: one outdoor module, up to eight indoor units of different size, lift and
 * pipe length. Numbers chosen so that the healthy machine reads inside the bands that a technician expects
 * (physics/qualification/multiSplit.ts); geometry is typical of the size, no source.
 */
import type { NetworkData } from '../../network/data';
import { chargeByRule, type FluidFactors, installOf, moduleBranch, type UnitSize, unitBranch } from '../branches';
import type { InstallRecord } from '../types';

export const MULTI_SPLIT_UNITS: readonly UnitSize[] = [
  { id: 'unit1', rated: 2.2, metres: 8, lift: 0 },
  { id: 'unit2', rated: 2.8, metres: 12, lift: 0 },
  { id: 'unit3', rated: 3.6, metres: 16, lift: 0 },
  { id: 'unit4', rated: 2.2, metres: 10, lift: 3.5 },
  { id: 'unit5', rated: 2.8, metres: 14, lift: 3.5 },
  { id: 'unit6', rated: 4.5, metres: 18, lift: 3.5 },
  { id: 'unit7', rated: 2.8, metres: 20, lift: -3.5 },
  { id: 'unit8', rated: 2.8, metres: 24, lift: -3.5 },
];

const MAIN_METRES = 40;

/** What the installer wrote down. */
export function multiSplitInstall(refrigerant: 'R-410A' | 'R-32', units = MULTI_SPLIT_UNITS): InstallRecord {
  return installOf(units, refrigerant === 'R-32' ? 2.6 : 5.0, MAIN_METRES, 0.11);
}

/** @param count 2…8 of the units above */
export function multiSplitMachine(refrigerant: 'R-410A' | 'R-32', count = 8): NetworkData {
  const fluid: FluidFactors = refrigerant === 'R-32' ? { drop: 1.4, flow: 0.8 } : { drop: 1, flow: 1 };
  const units = MULTI_SPLIT_UNITS.slice(0, count);
  const share = units.reduce((sum, each) => sum + each.rated, 0) / 23.7;
  return {
    charge: chargeByRule(multiSplitInstall(refrigerant, units)),
    compressor: {
      displacement: (refrigerant === 'R-32' ? 62e-6 : 68e-6) * share,
      ratedSpeed: 60,
      volumetricPeak: 0.97,
      volumetricLoss: 0.04,
      efficiencyPeak: 0.72,
      peakRatio: 2.5,
      efficiencyCurve: 0.8,
      constantLoss: 120 * share,
      gasToShell: 80 * share,
      shellToAir: 5,
      shellCapacity: 30000,
      wetBoiled: 0.5,
      shellVolume: 5e-3,
    },
    motor: {
      kind: 'inverter',
      voltage: 400,
      ratedPower: 6300 * share,
      reactive: 0,
      uncompensated: 0,
      ratedSlip: 0,
      capacitance: null,
      powerFactor: 0.92,
      inverterEfficiency: 0.95,
      phases: 3,
    },
    modules: [moduleBranch('module1', 22.4 * share, 0, fluid)],
    units: units.map((each) => unitBranch(each, fluid)),
    pipes: {
      gasDrop: (5.5e7 * fluid.drop) / (share * share),
      inletDrop: (2.3e6 * fluid.drop) / (share * share),
      liquidBore: 1e-4,
      liquidDrop: (2.4e9 * fluid.drop) / (share * share),
      drier: (9e8 * fluid.drop) / (share * share),
      lift: 0,
      gasVolume: 18e-3 * share,
      hotVolume: 0,
      liquidVolume: 4e-3 * share,
      dischargeVolume: 5e-4,
      suctionVolume: 9e-3,
      gasUa: 12,
    },
    threePipes: false,
    suctionVessel: { capacity: 5, returned: 0.012, boilOff: 120 },
    subcooler: { ua: 260 * share, largestShare: 0.12 },
    control: {
      superheatTarget: 4,
      outdoorSuperheat: 3,
      subcoolingTarget: 8,
      subcoolingOpening: 0.75,
      subcoolingGain: 0.05,
      minOpening: 0.05,
      drainOpening: 0.06,
      evaporatingTarget: 280.15,
      condensingTarget: 318.65,
      minSpeed: 0.25,
      maxSpeed: 1.6,
    },
    limits: {
      highPressure: 4.1e6,
      lowPressure: 1.5e5,
      dischargeTemp: 388.15,
      slowDownTemp: 378.15,
      slowDownPressure: 3.75e6,
      slowDownLow: 2.5e5,
      overloadCurrent: 22,
    },
  };
}

/** The variant for a refrigerant, or undefined where there is none. */
export function multiSplitOf(refrigerant: string): NetworkData | undefined {
  return refrigerant === 'R-410A' || refrigerant === 'R-32' ? multiSplitMachine(refrigerant) : undefined;
}
