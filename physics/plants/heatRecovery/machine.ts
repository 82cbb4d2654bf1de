/**
 * Invented 67 kW heat recovery: three outdoor modules, three pipes, eight indoor units behind changeover boxes, each
 * cooling or heating as its room asks. Numbers chosen so that the healthy machine reads inside the bands that a technician
 * expects (physics/qualification/heatRecovery.ts); geometry is typical of the size, no source.
 */
import type { BranchData, NetworkData } from '../../network/data';
import { chargeByRule, type FluidFactors, installOf, moduleBranch, type UnitSize, unitBranch } from '../branches';
import type { InstallRecord } from '../types';

export const HEAT_RECOVERY_UNITS: readonly UnitSize[] = [
  { id: 'unit1', rated: 7.1, metres: 6, lift: 0 },
  { id: 'unit2', rated: 7.1, metres: 8, lift: 0 },
  { id: 'unit3', rated: 5.6, metres: 9, lift: 3.5 },
  { id: 'unit4', rated: 5.6, metres: 11, lift: 3.5 },
  { id: 'unit5', rated: 9, metres: 9, lift: 3.5 },
  { id: 'unit6', rated: 9, metres: 12, lift: 7 },
  { id: 'unit7', rated: 11.2, metres: 14, lift: 7 },
  { id: 'unit8', rated: 11.2, metres: 16, lift: 7 },
];
const MAIN_METRES = 45;
const FLUID: FluidFactors = { drop: 1, flow: 1, liquid: 1 };

/**
 * Coils of narrower tube outdoors and wider indoors, with valves to suit: who condenses changes from hour to hour, so both
 * sides must do with the same charge.
 */
function resized(branch: BranchData, volume: number, area: number): BranchData {
  const { coil, valve } = branch;
  return {
    ...branch,
    coil: { ...coil, volume: volume * coil.volume },
    valve: { ...valve, area: area * valve.area },
  };
}

/** What the installer wrote down. */
export function heatRecoveryInstall(modules = 3): InstallRecord {
  return installOf(HEAT_RECOVERY_UNITS, 4.4 + 4.75 * modules, MAIN_METRES, 0.26, FLUID);
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
      efficiencyPeak: 0.711,
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
    modules: Array.from({ length: modules }, (_, i) =>
      resized(moduleBranch(`module${i + 1}`, 22.4, 0, FLUID), 0.74, 0.63),
    ),
    units: HEAT_RECOVERY_UNITS.map((each) => resized(unitBranch(each, FLUID), 1.11, 1.14)),
    pipes: {
      gasDrop: 6.4e6 / (share * share),
      inletDrop: 2.5e5 / (share * share),
      liquidBore: 2.5e-4,
      liquidDrop: 2.75e8 / (share * share),
      drier: 9e7 / (share * share),
      lift: 0,
      gasVolume: 57e-3 * share,
      hotVolume: 24e-3 * share,
      liquidVolume: 11.4e-3 * share,
      dischargeVolume: 1.5e-3 * share,
      suctionVolume: 25e-3 * share,
      gasUa: 30,
    },
    threePipes: true,
    suctionVessel: { capacity: 15 * share, returned: 0.036 * share, boilOff: 120 },
    subcooler: { ua: 1520 * share, largestShare: 0.136 },
    control: {
      superheatTarget: 4.9,
      outdoorSuperheat: 3.4,
      wetFrom: 371.15,
      subcoolingTarget: 5,
      subcoolingOpening: 0.7,
      subcoolingGain: 0.03,
      minOpening: 0.05,
      drainOpening: 0.06,
      evaporatingTarget: 279.92,
      condensingTarget: 320.02,
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
