/**
 * Invented 22.4 kW variable-flow multi-split: one outdoor module, up to eight indoor units of different size, lift and
 * pipe length. Numbers chosen so that the healthy machine reads inside the bands that a technician expects
 * (physics/qualification/multiSplit.ts); geometry is typical of the size, no source.
 */
import type { NetworkData } from '../../network/data';
import { chargeByRule, type FluidFactors, installOf, moduleBranch, type UnitSize, unitBranch } from '../branches';
import type { InstallRecord } from '../types';

export const MULTI_SPLIT_UNITS: readonly UnitSize[] = [
  { id: 'unit1', rated: 2.2, metres: 5, lift: 0 },
  { id: 'unit2', rated: 2.8, metres: 7, lift: 0 },
  { id: 'unit3', rated: 3.6, metres: 9, lift: 0 },
  { id: 'unit4', rated: 2.2, metres: 6, lift: 3.5 },
  { id: 'unit5', rated: 2.8, metres: 8, lift: 3.5 },
  { id: 'unit6', rated: 4.5, metres: 10, lift: 3.5 },
  { id: 'unit7', rated: 2.8, metres: 11, lift: -3.5 },
  { id: 'unit8', rated: 2.8, metres: 13, lift: -3.5 },
];

const MAIN_METRES = 30;

function fluidOf(refrigerant: 'R-410A' | 'R-32'): FluidFactors {
  return refrigerant === 'R-32' ? { drop: 1.4, flow: 0.66, liquid: 0.9 } : { drop: 1, flow: 1, liquid: 1 };
}

/** Size of a machine for these units over that for all of them. */
function shareOf(units: readonly UnitSize[]): number {
  return units.reduce((sum, each) => sum + each.rated, 0) / 23.7;
}

/** What the installer wrote down. */
export function multiSplitInstall(refrigerant: 'R-410A' | 'R-32', units = MULTI_SPLIT_UNITS): InstallRecord {
  const share = shareOf(units);
  return installOf(
    units,
    (refrigerant === 'R-32' ? 3.83 : 4.84) * share,
    MAIN_METRES,
    0.11 * share,
    fluidOf(refrigerant),
  );
}

/** @param count 2…8 of the units above */
export function multiSplitMachine(refrigerant: 'R-410A' | 'R-32', count = 8): NetworkData {
  const fluid = fluidOf(refrigerant);
  const units = MULTI_SPLIT_UNITS.slice(0, count);
  const share = shareOf(units);
  return {
    charge: chargeByRule(multiSplitInstall(refrigerant, units)),
    compressor: {
      displacement: (refrigerant === 'R-32' ? 66.1e-6 : 71.8e-6) * share,
      ratedSpeed: 60,
      volumetricPeak: 0.97,
      volumetricLoss: 0.04,
      efficiencyPeak: refrigerant === 'R-32' ? 0.736 : 0.706,
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
      gasDrop: (8.2e7 * fluid.drop) / (share * share),
      inletDrop: (2.3e6 * fluid.drop) / (share * share),
      liquidBore: 1e-4,
      liquidDrop: (4.7e9 * fluid.drop) / (share * share),
      drier: (9e8 * fluid.drop) / (share * share),
      lift: 0,
      gasVolume: 15e-3 * share,
      hotVolume: 0,
      liquidVolume: 2.9e-3 * share,
      dischargeVolume: 5e-4,
      suctionVolume: 9e-3 * share,
      gasUa: 12,
    },
    threePipes: false,
    suctionVessel: { capacity: 5 * share, returned: 0.012 * share, boilOff: 120 },
    subcooler: { ua: 416 * share, largestShare: 0.13 },
    control: {
      superheatTarget: 4.8,
      outdoorSuperheat: 4,
      wetFrom: refrigerant === 'R-32' ? 376.15 : 371.15,
      subcoolingTarget: 11,
      subcoolingOpening: 0.57,
      subcoolingGain: 0.067,
      minOpening: 0.05,
      drainOpening: 0.06,
      evaporatingTarget: 280.37,
      condensingTarget: 319.05,
      minSpeed: 0.25,
      maxSpeed: 1.6,
    },
    limits: {
      highPressure: 4.1e6,
      lowPressure: 1.5e5,
      dischargeTemp: refrigerant === 'R-32' ? 395.15 : 388.15,
      slowDownTemp: refrigerant === 'R-32' ? 385.15 : 378.15,
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
