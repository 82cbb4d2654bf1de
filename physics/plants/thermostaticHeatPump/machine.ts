/**
 * Invented 10 kW split heat pump: fixed-speed scroll, a thermostatic valve with its check valve at either coil, reversing
 * valve, suction accumulator. One set of parts; each mode puts them together in its own order, so that volumes, charge and
 * coils are the same metal in both. Numbers chosen so that the healthy machine reads inside the bands that a technician
 * expects in either mode (physics/qualification/heatPump.ts); geometry is typical of the size, no source.
 */
import type { CoilData } from '../../parts/coil';
import type { CompressorData } from '../../parts/compressor';
import type { ThermostaticValveData } from '../../parts/thermostaticValve';
import type { LimitData, MachineData } from '../../solve/effective';

type Coil = Omit<CoilData, 'role'>;

/** What differs between the variants and between the places of a part. */
interface Parts {
  readonly charge: number;
  readonly compressor: CompressorData;
  readonly outdoorCoil: Coil;
  readonly indoorCoil: Coil;
  /** each valve regulates in the mode in which its own coil evaporates */
  readonly indoorValve: ThermostaticValveData & { readonly area: number };
  readonly outdoorValve: ThermostaticValveData & { readonly area: number };
  readonly throat: number;
  readonly vesselReturn: number;
  readonly limits: LimitData;
}

/** m3: discharge stub, vapour line, liquid pipes of the outdoor unit, liquid line, accumulator with the pipes around it. */
const STUB = 1.5e-4;
const VAPOUR_LINE = 1.25e-3;
const OUTDOOR_LIQUID = 1.2e-4;
const LIQUID_LINE = 4.5e-4;
const ACCUMULATOR = 3.4e-3;
const AFTER_VALVE = 2e-5;
/** m that the indoor coil stands over the outdoor unit */
const RISE = 1.5;
/** Pa·kg/m3/(kg/s)²: vapour line, liquid line, drier, pipes around the compressor */
const VAPOUR_DROP = 1.2e8;
const LIQUID_DROP = 4e9;
const STUB_LIQUID = 2e8;
const DRIER = 3e9;
const STUB_DROP = 1.2e8;
const INLET_DROP = 1.5e7;

export function heatPumpMachine(parts: Parts, mode: 'cooling' | 'heating'): MachineData {
  const heating = mode === 'heating';
  const valve = heating ? parts.outdoorValve : parts.indoorValve;
  const { spring, stroke, dryBulb, bulbLag, pinLag } = valve;
  return {
    mode,
    charge: parts.charge,
    compressor: parts.compressor,
    condenser: { ...(heating ? parts.indoorCoil : parts.outdoorCoil), role: 'condenser' },
    evaporator: { ...(heating ? parts.outdoorCoil : parts.indoorCoil), role: 'evaporator' },
    outdoorFan: { flow: 1.05, pressure: 30, flatness: 0.5, power: 180, filterShare: 0, capacitance: 5e-6, drift: 0.1 },
    indoorFan: {
      flow: 0.547,
      pressure: 128,
      flatness: 0.5,
      power: 330,
      filterShare: 0.335,
      coilShare: 0.3,
      supplyShare: 0.3,
      drift: 0.21,
    },
    indoorFanLow: 0.75,
    outdoorHumidity: heating ? 0.86 : 0.5,
    liquid: {
      drier: DRIER,
      line: LIQUID_DROP,
      lift: heating ? 0 : RISE,
      area: valve.area,
      throat: parts.throat,
    },
    lines: {
      dischargeVolume: heating ? STUB + VAPOUR_LINE : STUB,
      liquidVolume: heating ? LIQUID_LINE : OUTDOOR_LIQUID,
      liquidLineVolume: heating ? OUTDOOR_LIQUID : LIQUID_LINE,
      expansionVolume: AFTER_VALVE,
      suctionVolume: heating ? ACCUMULATOR : ACCUMULATOR + VAPOUR_LINE,
      dischargeDrop: heating ? STUB_DROP + VAPOUR_DROP : STUB_DROP,
      suctionDrop: heating ? 1e7 : VAPOUR_DROP,
      inletDrop: INLET_DROP,
      liquidUa: 0.7929,
      suctionUa: heating ? 1.5 : 8,
      suctionShare: heating ? 0 : 0.7,
      ...(heating && { dischargeUa: 3, beforePort: { lift: -RISE, behind: STUB_LIQUID } }),
    },
    suctionVessel: { capacity: 1.4, returned: parts.vesselReturn, boilOff: 120 },
    motor: {
      kind: 'run-capacitor',
      voltage: 230,
      ratedPower: 2600,
      reactive: 4,
      uncompensated: 12,
      ratedSlip: 0.035,
      capacitance: 45e-6,
      powerFactor: 1,
      inverterEfficiency: 1,
    },
    reversingValve: { suctionDrop: 3e7, dischargeDrop: 5e7, exchange: 0.4203 },
    valve: { spring, stroke, dryBulb, bulbLag, pinLag },
    control: {
      metering: 'thermostatic',
      variableSpeed: false,
      superheatTarget: 0,
      minOpening: 0.12,
      coilTarget: 0,
      minSpeed: 1,
      maxSpeed: 1,
      parkedOpening: 0.12,
    },
    limits: parts.limits,
    outdoorIce: { full: 6, resistance: 9e-5, melt: 110 },
    roomCapacity: 9e6,
    roomAir: 420,
  };
}

const OUTDOOR_COIL: Coil = {
  segments: 8,
  volume: 0.004712,
  diameter: 8.7e-3,
  circuits: 5,
  innerArea: 2.199,
  enhancement: 1.647,
  airUa: 5000,
  airFlow: 1.05,
  airExponent: 0.5,
  wallCapacity: 22000,
  pressureDrop: 2.44e9,
};
const INDOOR_COIL: Coil = {
  segments: 8,
  volume: 0.004865,
  diameter: 8.7e-3,
  circuits: 5,
  innerArea: 1.021,
  enhancement: 1.05,
  airUa: 1040,
  airFlow: 0.547,
  airExponent: 0.6,
  wallCapacity: 11000,
  pressureDrop: 4.393e8,
};
const COMPRESSOR: CompressorData = {
  displacement: 32e-6,
  ratedSpeed: 60,
  volumetricPeak: 0.985,
  volumetricLoss: 0.038,
  efficiencyPeak: 0.74,
  peakRatio: 2.5,
  efficiencyCurve: 0.6,
  constantLoss: 60,
  gasToShell: 40,
  shellToAir: 2.25,
  shellCapacity: 14000,
  wetBoiled: 0.8,
  shellVolume: 2.5e-3,
};

export const HEAT_PUMP_PARTS: Readonly<Record<'R-410A' | 'R-454B', Parts>> = {
  'R-410A': {
    charge: 3.26,
    compressor: {
      ...COMPRESSOR,
      displacement: 3.064e-5,
      efficiencyPeak: 0.7271,
      efficiencyCurve: 0.3,
      shellToAir: 4,
      volumetricPeak: 0.96,
    },
    outdoorCoil: OUTDOOR_COIL,
    indoorCoil: INDOOR_COIL,
    indoorValve: { area: 1.764e-6, spring: 1.632e5, stroke: 1.582e5, dryBulb: 301.5, bulbLag: 25, pinLag: 4 },
    outdoorValve: { area: 1.2e-6, spring: 9.93e4, stroke: 1.173e5, dryBulb: 294, bulbLag: 25, pinLag: 4 },
    throat: 0.5648,
    vesselReturn: 0.009123,
    limits: {
      highPressure: 4.3e6,
      lowPressure: 1.2e5,
      dischargeTemp: 408.15,
      slowDownTemp: 408.15,
      slowDownPressure: 4.3e6,
      overloadCurrent: 24,
      startCapacitance: 0.3,
    },
  },
  'R-454B': {
    charge: 2.867,
    compressor: {
      ...COMPRESSOR,
      displacement: 3.078e-5,
      efficiencyPeak: 0.66,
      efficiencyCurve: 0.3,
      shellToAir: 2.549,
      volumetricPeak: 0.9897,
    },
    outdoorCoil: OUTDOOR_COIL,
    indoorCoil: INDOOR_COIL,
    indoorValve: { area: 2.121e-6, spring: 8.452e4, stroke: 1.265e5, dryBulb: 301.5, bulbLag: 25, pinLag: 4 },
    outdoorValve: { area: 1.312e-6, spring: 1.611e4, stroke: 1.899e5, dryBulb: 294, bulbLag: 25, pinLag: 4 },
    throat: 0.8,
    vesselReturn: 0.005,
    limits: {
      highPressure: 4.2e6,
      lowPressure: 1.15e5,
      dischargeTemp: 413.15,
      slowDownTemp: 413.15,
      slowDownPressure: 4.2e6,
      overloadCurrent: 24,
      startCapacitance: 0.3,
    },
  },
};

const of = (mode: 'cooling' | 'heating'): Readonly<Record<'R-410A' | 'R-454B', MachineData>> => ({
  'R-410A': heatPumpMachine(HEAT_PUMP_PARTS['R-410A'], mode),
  'R-454B': heatPumpMachine(HEAT_PUMP_PARTS['R-454B'], mode),
});

export const HEAT_PUMP_COOLING = of('cooling');
export const HEAT_PUMP_HEATING = of('heating');
