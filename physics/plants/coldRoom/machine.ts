/**
 * Invented 4 kW condensing unit with receiver and a ceiling cooler with thermostatic valve in a walk-in room at +2 °C.
 * Numbers chosen so that the healthy machine reads inside the bands that a technician expects
 * (physics/qualification/coldRoom.ts); geometry is typical of the size, no source.
 */
import type { ColdStoreData } from '../../solve/coldStore';
import type { MachineData } from '../../solve/effective';

const COLD_STORE: ColdStoreData = {
  cutOut: 1.15e5,
  cutIn: 2.4e5,
  fanOff: 7e5,
  fanOn: 9e5,
  crankcase: 50,
  line: 0.5,
  defrost: {
    interval: 4 * 3600,
    heater: 2400,
    growth: 6,
    endTemp: 281.15,
    longest: 2100,
    drip: 180,
    fanTemp: 271.15,
    fanDelay: 180,
  },
};

const R134A: MachineData = {
  charge: 3.03,
  condenser: {
    role: 'condenser',
    segments: 8,
    volume: 3.6e-3,
    diameter: 8.7e-3,
    circuits: 3,
    innerArea: 1.4,
    enhancement: 1.3,
    airUa: 1150,
    airFlow: 0.56,
    airExponent: 0.5,
    wallCapacity: 12000,
    pressureDrop: 2.0e9,
  },
  evaporator: {
    role: 'evaporator',
    segments: 8,
    volume: 5.0e-3,
    diameter: 10.9e-3,
    circuits: 5,
    innerArea: 1.9,
    enhancement: 1.4,
    airUa: 1020,
    airFlow: 0.64,
    airExponent: 0.6,
    wallCapacity: 14000,
    pressureDrop: 6e8,
  },
  outdoorFan: { flow: 0.56, pressure: 30, flatness: 0.5, power: 110, filterShare: 0, drift: 0.1 },
  indoorFan: { flow: 0.64, pressure: 60, flatness: 0.5, power: 140, filterShare: 0, coilShare: 0.6, drift: 0.1 },
  indoorFanLow: 0.7,
  liquid: { drier: 8e9, line: 1.2e10, lift: 1.6, area: 1.11e-6, throat: 0.55 },
  lines: {
    dischargeVolume: 2.0e-4,
    liquidVolume: 1.0e-4,
    liquidLineVolume: 8.0e-4,
    expansionVolume: 2e-5,
    suctionVolume: 2.5e-3,
    dischargeDrop: 2.5e8,
    suctionDrop: 0.8e8,
    inletDrop: 1.5e7,
    liquidUa: 18.6,
    suctionUa: 6,
    suctionShare: 0.8,
  },
  suctionVessel: { capacity: 0.12, returned: 3e-3, boilOff: 100 },
  compressor: {
    displacement: 50e-6,
    ratedSpeed: 60,
    volumetricPeak: 0.97,
    volumetricLoss: 0.04,
    efficiencyPeak: 0.66,
    peakRatio: 4,
    efficiencyCurve: 0.5,
    constantLoss: 40,
    gasToShell: 35,
    shellToAir: 2.5,
    shellCapacity: 14000,
    wetBoiled: 0.8,
    shellVolume: 4e-3,
  },
  motor: {
    kind: 'run-capacitor',
    voltage: 230,
    ratedPower: 1700,
    reactive: 4.3,
    uncompensated: 9,
    ratedSlip: 0.035,
    capacitance: 40e-6,
    powerFactor: 1,
    inverterEfficiency: 1,
  },
  receiver: { volume: 1.3e-3 },
  valve: { spring: 28.5e3, stroke: 34e3, dryBulb: 284.15, bulbLag: 50, pinLag: 4 },
  control: {
    metering: 'thermostatic',
    variableSpeed: false,
    superheatTarget: 0,
    minOpening: 0.04,
    coilTarget: 0,
    minSpeed: 1,
    maxSpeed: 1,
    parkedOpening: 0.04,
  },
  limits: {
    highPressure: 1.9e6,
    lowPressure: 1.15e5,
    dischargeTemp: 408.15,
    slowDownTemp: 408.15,
    slowDownPressure: 1.9e6,
    overloadCurrent: 20,
    startCapacitance: 0.3,
  },
  coldStore: COLD_STORE,
  ice: { full: 22, resistance: 1.2e-4, melt: 60 },
  roomCapacity: 9e5,
  roomAir: 40,
};

/**
 * Built for the blend: a smaller compressor, a bulb and switches for its pressures, and coils with less air side, since the
 * glide lets the refrigerant boil well below the dew point that a technician reads.
 */
const R448A: MachineData = {
  ...R134A,
  charge: 3.2,
  condenser: { ...R134A.condenser, airUa: 760 },
  evaporator: { ...R134A.evaporator, airUa: 480, airFlow: 0.56 },
  indoorFan: { ...R134A.indoorFan, flow: 0.56 },
  liquid: { ...R134A.liquid, area: 0.9e-6 },
  compressor: { ...R134A.compressor, displacement: 34e-6, efficiencyPeak: 0.68, efficiencyCurve: 0.3 },
  valve: { spring: 47e3, stroke: 56e3, dryBulb: 284.15, bulbLag: 50, pinLag: 4 },
  limits: { ...R134A.limits, highPressure: 2.9e6, lowPressure: 2.3e5, slowDownPressure: 2.9e6 },
  coldStore: { ...COLD_STORE, cutOut: 2.3e5, cutIn: 4.0e5, fanOff: 1.35e6, fanOn: 1.7e6 },
};

const { receiver: _none, ...SEALED } = R134A;

/**
 * A packaged unit through the wall, sealed in the factory: no receiver, narrow tubes and short lines, so that the charge
 * stays below half a kilogram (limits of the product standard for propane, from memory: 0.15 kg, newer 0.5 kg). Charge
 * beyond what the coils need stands in the condenser as subcooling. The condenser alone can hold all of it as liquid, so
 * that it still empties its low side. Bulb and switches are those of R-134a at propane's pressures.
 */
const R290: MachineData = {
  ...SEALED,
  charge: 0.39,
  condenser: {
    ...R134A.condenser,
    volume: 1.5e-3,
    diameter: 5.2e-3,
    circuits: 6,
    innerArea: 1.15,
    airUa: 830,
    wallCapacity: 8000,
    pressureDrop: 3.0e9,
  },
  evaporator: {
    ...R134A.evaporator,
    volume: 2.6e-3,
    diameter: 7e-3,
    circuits: 8,
    innerArea: 1.5,
    airUa: 830,
    wallCapacity: 10000,
    pressureDrop: 8e8,
  },
  liquid: { drier: 8e9, line: 1.2e10, lift: 1.6, area: 0.79e-6, throat: 0.55 },
  lines: {
    dischargeVolume: 6e-5,
    liquidVolume: 3e-5,
    liquidLineVolume: 7e-5,
    expansionVolume: 1e-5,
    suctionVolume: 1.1e-3,
    dischargeDrop: 2.5e8,
    suctionDrop: 0.8e8,
    inletDrop: 1.5e7,
    liquidUa: 8,
    suctionUa: 4,
    suctionShare: 0.8,
  },
  suctionVessel: { capacity: 0.03, returned: 2e-3, boilOff: 100 },
  compressor: { ...R134A.compressor, displacement: 33.7e-6, shellVolume: 2.5e-3 },
  valve: { spring: 41e3, stroke: 49e3, dryBulb: 284.15, bulbLag: 50, pinLag: 4 },
  limits: { ...R134A.limits, highPressure: 2.25e6, lowPressure: 2.15e5, slowDownPressure: 2.25e6 },
  coldStore: { ...COLD_STORE, cutOut: 2.15e5, cutIn: 4.05e5, fanOff: 0.99e6, fanOn: 1.235e6, line: 0.03 },
};

export const COLD_ROOM_MACHINE: Readonly<Record<'R-134a' | 'R-448A' | 'R-290', MachineData>> = {
  'R-134a': R134A,
  'R-448A': R448A,
  'R-290': R290,
};
