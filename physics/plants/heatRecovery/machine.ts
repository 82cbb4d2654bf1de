/**
 * Invented 67 kW heat recovery: three outdoor modules, three pipes, eight indoor units behind changeover boxes, each
 * cooling or heating as its room asks. Numbers chosen so that the healthy machine reads inside the bands that a technician
 * expects (physics/qualification/heatRecovery.ts); geometry is typical of the size, no source.
 */
import type { NetworkData } from '../../network/data';
import { chargeByRule, type FluidFactors, installOf, moduleBranch, type UnitSize, unitBranch } from '../branches';
import type { InstallRecord } from '../types';

export const HEAT_RECOVERY_UNITS: readonly UnitSize[] = [
  { id: 'unit1', rated: 7.1, metres: 10, lift: 0 },
  { id: 'unit2', rated: 7.1, metres: 12, lift: 0 },
  { id: 'unit3', rated: 5.6, metres: 15, lift: 3.5 },
  { id: 'unit4', rated: 5.6, metres: 18, lift: 3.5 },
  { id: 'unit5', rated: 9.0, metres: 15, lift: 3.5 },
  { id: 'unit6', rated: 9.0, metres: 20, lift: 7 },
  { id: 'unit7', rated: 11.2, metres: 24, lift: 7 },
  { id: 'unit8', rated: 11.2, metres: 28, lift: 7 },
];
const MAIN_METRES = 55;
const FLUID: FluidFactors = { drop: 1, flow: 1 };

/** What the installer wrote down. */
export function heatRecoveryInstall(modules = 3): InstallRecord {
  return installOf(HEAT_RECOVERY_UNITS, 7 + 5.2 * modules, MAIN_METRES, 0.26);
}

/** @param modules 1…3 outdoor modules; the units stay as many as they are */
export function heatRecoveryMachine(modules = 3): NetworkData {
  const share = modules / 3;
  return {
    charge: chargeByRule(heatRecoveryInstall(modules)),
    compressor: {
      displacement: 204e-6 * share,
      ratedSpeed: 60,
      volumetricPeak: 0.97,
      volumetricLoss: 0.04,
      efficiencyPeak: 0.72,
      peakRatio: 2.5,
      efficiencyCurve: 0.8,
      constantLoss: 360 * share,
      gasToShell: 240 * share,
      shellToAir: 15 * share,
      shellCapacity: 90000 * share,
      wetBoiled: 0.5,
      shellVolume: 15e-3 * share,
    },
    motor: {
      kind: 'inverter',
      voltage: 400,
      ratedPower: 18900 * share,
      reactive: 0,
      uncompensated: 0,
      ratedSlip: 0,
      capacitance: null,
      powerFactor: 0.92,
      inverterEfficiency: 0.95,
      phases: 3,
    },
    modules: Array.from({ length: modules }, (_, i) => moduleBranch(`module${i + 1}`, 22.4, 0, FLUID)),
    units: HEAT_RECOVERY_UNITS.map((each) => unitBranch(each, FLUID)),
    pipes: {
      gasDrop: 5.5e6 / (share * share),
      inletDrop: 2.5e5 / (share * share),
      liquidBore: 2.5e-4,
      liquidDrop: 2.4e8 / (share * share),
      drier: 9e7 / (share * share),
      lift: 0,
      gasVolume: 70e-3 * share,
      hotVolume: 35e-3 * share,
      liquidVolume: 14e-3 * share,
      dischargeVolume: 1.5e-3 * share,
      suctionVolume: 25e-3 * share,
      gasUa: 30,
    },
    threePipes: true,
    suctionVessel: { capacity: 15 * share, returned: 0.036 * share, boilOff: 120 },
    subcooler: { ua: 780 * share, largestShare: 0.12 },
    control: {
      superheatTarget: 4,
      outdoorSuperheat: 3,
      subcoolingTarget: 8,
      subcoolingOpening: 0.75,
      subcoolingGain: 0.05,
      minOpening: 0.05,
      drainOpening: 0.06,
      evaporatingTarget: 279.65,
      condensingTarget: 318.65,
      minSpeed: 0.15,
      maxSpeed: 1.6,
    },
    limits: {
      highPressure: 4.1e6,
      lowPressure: 1.5e5,
      dischargeTemp: 388.15,
      slowDownTemp: 378.15,
      slowDownPressure: 3.75e6,
      slowDownLow: 2.5e5,
      overloadCurrent: 66,
    },
  };
}

/** The variant for a refrigerant, or undefined where there is none. */
export function heatRecoveryOf(refrigerant: string): NetworkData | undefined {
  return refrigerant === 'R-410A' ? heatRecoveryMachine() : undefined;
}
