/**
 * From a solved circuit to what the outside sees: probes by their places, looks, stations, balances.
 */
import { wetBulb, wSaturated } from './air/moistAir';
import * as L from './fluids/layout';
import { displayOf, looksOfParts } from './looks';
import { leavingTemperature } from './parts/airStream';
import { WALL_FIELDS } from './parts/coil';
import { passageFilled } from './parts/ice';
import { motorCurrent } from './parts/motor';
import { solenoidShare } from './parts/solenoid';
import { OPEN_CIRCUIT, sensorResistance } from './parts/thermistor';
import type { Rig } from './solve/compile';
import { felt, reported, type Sensed, sensorTruth } from './solve/control';
import { type Effective, type MachineData, motorVoltage } from './solve/effective';
import { standingPressure } from './solve/standing';
import {
  type CoilSegment,
  type ControllerState,
  type Controls,
  PROBES,
  type ProbeName,
  type Probes,
  type Snapshot,
  type Station,
  type StationId,
} from './types';

export function probesOf(values: Readonly<Record<ProbeName, number>>): Probes {
  const probes: Partial<Record<ProbeName, { value: number; unit: (typeof PROBES)[ProbeName] }>> = {};
  for (const name of Object.keys(PROBES) as ProbeName[]) probes[name] = { value: values[name], unit: PROBES[name] };
  return probes as Probes;
}

export function segments(coil: Rig['circuit']['condenser'], frost: readonly number[]): CoilSegment[] {
  return Array.from(coil.temperature, (temperature, i) => ({
    temperature,
    quality: coil.quality[i],
    wall: coil.walls[i * WALL_FIELDS],
    frost: frost[i] ?? 0,
  }));
}

/** kg of ice on one segment at which it counts as covered */
export const FROST_COVER = 0.02;

/** Share of the passage between the cooler's fins that `frost` (kg a segment) fills; 0 where ice does not block air. */
export function iceBetweenFins(data: MachineData, frost: readonly number[]): number {
  return data.ice ? passageFilled(data.ice, total(frost)) : 0;
}

const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** Ohm across the defrost heater at nominal voltage, burnt elements open; 0 without a heater. */
export function heaterResistance(data: MachineData, effective: Effective): number {
  if (data.coldStore === undefined) return 0;
  const left = data.coldStore.defrost.heater * (1 - effective.heaterLost);
  const { voltage } = data.motor;
  return Math.min(OPEN_CIRCUIT, (voltage * voltage) / Math.max(left, 1e-9));
}

/** Ohm of one winding of a valve's step motor (from memory) */
const VALVE_COIL = 46;

/** Ohm at the plugs of an electronic valve's controller. */
export function plugResistances(
  { circuit, data, effective, env }: Rig,
  truth: Sensed,
): Pick<Record<ProbeName, number>, 'suctionSensorResistance' | 'coilSensorResistance' | 'valveCoilResistance'> {
  if (data.control.metering !== 'electronic') {
    return { suctionSensorResistance: 0, coilSensorResistance: 0, valveCoilResistance: 0 };
  }
  const { suctionLine, evaporatorCoil } = felt(circuit, env.outdoor, truth);
  const { sensorCircuit } = effective;
  return {
    suctionSensorResistance: sensorResistance(suctionLine, sensorCircuit.suctionLine),
    coilSensorResistance: sensorResistance(evaporatorCoil, sensorCircuit.evaporatorCoil),
    valveCoilResistance: effective.valveCoilOpen ? OPEN_CIRCUIT : VALVE_COIL,
  };
}

/** Temperature of the liquid behind the solenoid valve: it flashes where the valve hangs halfway, K. */
function atValve(rig: Rig, before: Station): number {
  const { circuit, env, fluid } = rig;
  if (env.passing >= 1 || env.passing <= 0) return before.temperature;
  const share = solenoidShare(env.opening, env.passing);
  const drop = (share / (1 + share)) * (circuit.path.pMetering - circuit.path.pThroat);
  const block = new Float64Array(L.BLOCK_SIZE);
  const out = new Float64Array(L.OUT_SIZE);
  fluid.setPressure(before.pressure - drop, block);
  fluid.state(block, before.enthalpy, out);
  return out[L.OUT_T];
}

/** Share of a coil's segments that carry ice. */
export function coveredBy(frost: readonly number[]): number {
  return frost.length > 0 ? frost.reduce((sum, kg) => sum + Math.min(1, kg / FROST_COVER), 0) / frost.length : 0;
}

/** Snapshot of a rig whose circuit has just been evaluated in flow. */
export function flowSnapshot(
  rig: Rig,
  controls: Controls,
  time: number,
  controller: ControllerState,
  frost: readonly number[],
  condenserIce: readonly number[] = [],
): Snapshot {
  const { circuit, fluid, data, effective, env, conditions } = rig;
  const { compressor, condenser, evaporator, path, heating } = circuit;
  const block = new Float64Array(L.BLOCK_SIZE);
  const out = new Float64Array(L.OUT_SIZE);
  const m = circuit.massFlow;
  const station = (pressure: number, enthalpy: number, flow: number): Station => {
    fluid.setPressure(pressure, block);
    fluid.state(block, enthalpy, out);
    return {
      pressure,
      enthalpy,
      temperature: out[L.OUT_T],
      quality: out[L.OUT_Q],
      density: out[L.OUT_RHO],
      massFlow: flow,
    };
  };
  const stations: Record<StationId, Station> = {
    'compressor-in': station(circuit.pSuction, compressor.hSuction, compressor.massFlow),
    'compressor-out': station(circuit.pDischarge, compressor.hDischarge, compressor.massFlow),
    'condenser-in': station(circuit.pCondenserIn, circuit.hCondenserIn, m),
    'condenser-out': station(circuit.pCondenserOut, condenser.hOut, m),
    'liquid-port': station(circuit.pLiquid, circuit.hLiquid, path.flow),
    'drier-out': station(path.pAfterDrier, circuit.hLiquid, path.flow),
    'metering-in': station(path.pMetering, circuit.hMetering, path.flow),
    'evaporator-in': station(circuit.pEvaporatorIn, circuit.hMetering, path.flow),
    'evaporator-out': station(circuit.pEvaporatorOut, evaporator.hOut, m),
    // a heating machine's only port on the low side is at the compressor, behind the reversing valve
    'suction-port': heating
      ? station(circuit.pSuction, compressor.hSuction, compressor.massFlow)
      : station(circuit.pServiceSuction, circuit.hServiceSuction, m),
  };
  const vapourLine = heating ? station(circuit.pValveOut, circuit.hValveOut, m) : stations['suction-port'];
  const dewLow = fluid.tDew(stations['suction-port'].pressure);
  const indoorAir = circuit.indoorAir;
  const outdoorAir = circuit.outdoorAir;
  const fanRise = rig.indoorFan.power / (indoorAir.massFlow * indoorAir.cp);
  const { indoorCoil, outdoorCoil, condenserAir } = circuit;
  const supplyHumidity = indoorAir.humidity - indoorCoil.waterTotal / indoorAir.massFlow;
  const supply = leavingTemperature(indoorAir, indoorCoil.airHeat, indoorCoil.waterTotal) + fanRise;
  const dryCapacity = indoorAir.massFlow * indoorAir.cp * (indoorAir.temperature - (supply - fanRise));
  /** what the room is given of what it asks for: cold or heat */
  const asked = heating ? -1 : 1;
  const condenserLeaving = condenserAir.temperature - condenser.airHeat / (condenserAir.massFlow * condenserAir.cp);
  const current = motorCurrent(data.motor, compressor.power, effective.weakCapacitor, motorVoltage(effective));
  const totalPower = compressor.power + rig.outdoorFan.power + rig.indoorFan.power;
  const truth = sensorTruth(circuit);
  const seen = reported(circuit, conditions.outdoor, truth);
  const suction = stations['suction-port'];
  const liquid = stations['liquid-port'];
  const after = stations['drier-out'];
  const outlet = stations['evaporator-out'];
  const discharge = stations['compressor-out'];
  const inlet = stations['compressor-in'];
  const bubbleHigh = fluid.tBubble(circuit.pLiquid);
  const dewHigh = fluid.tDew(circuit.pLiquid);
  const speed = data.compressor.ratedSpeed * env.speed * compressor.speedShare;
  const values: Record<ProbeName, number> = {
    suctionPressure: suction.pressure,
    dischargePressure: circuit.pDischarge,
    liquidPressure: circuit.pLiquid,
    liquidPressureAfterDrier: path.pAfterDrier,
    evaporatorOutletPressure: circuit.pEvaporatorOut,
    compressorSuctionPressure: circuit.pSuction,
    filterPressureDrop: rig.indoorFan.filterDrop,
    coilPressureDrop: rig.indoorFan.coilDrop,
    supplyDuctPressure: rig.indoorFan.supplyPressure,
    standingPressure: standingPressure(fluid, data, effective, conditions.outdoor, rig.roomTemp),
    evaporatingTemp: dewLow,
    condensingTemp: bubbleHigh,
    condensingTempDew: dewHigh,
    condensingTempBubble: bubbleHigh,
    suctionLineTemp: suction.temperature,
    compressorSuctionTemp: inlet.temperature,
    reversingValveSuctionInTemp: data.reversingValve
      ? station(circuit.pValveIn, circuit.hValveIn, m).temperature
      : inlet.temperature,
    vapourLineTemp: vapourLine.temperature,
    vapourLinePressure: vapourLine.pressure,
    dischargeLineTemp: discharge.temperature,
    liquidLineTemp: liquid.temperature,
    liquidLineTempAfterDrier: after.temperature,
    meteringInletTemp: atValve(rig, stations['metering-in']),
    evaporatorOutletTemp: outlet.temperature,
    superheat: suction.temperature - dewLow,
    compressorSuperheat: inlet.temperature - fluid.tDew(circuit.pSuction),
    evaporatorSuperheat: outlet.temperature - fluid.tDew(circuit.pEvaporatorOut),
    subcooling: bubbleHigh - liquid.temperature,
    dischargeSuperheat: discharge.temperature - fluid.tDew(circuit.pDischarge),
    outdoorAirTemp: conditions.outdoor,
    condenserEnteringAirTemp: condenserAir.temperature,
    condenserLeavingAirTemp: condenserLeaving,
    outdoorEnteringAirTemp: outdoorAir.temperature,
    outdoorLeavingAirTemp: data.reversingValve
      ? leavingTemperature(outdoorAir, outdoorCoil.airHeat, outdoorCoil.waterTotal)
      : condenserLeaving,
    returnAirTemp: rig.roomTemp,
    returnAirWetBulb: wetBulb(rig.roomTemp, rig.roomHumidity, rig.pressure),
    coilEnteringAirTemp: indoorAir.temperature,
    thermostatAirTemp: rig.roomTemp + effective.thermostatOffset,
    supplyAirTemp: supply,
    // air leaving a flooded coil can carry a little mist: its wet bulb is then its dry bulb
    supplyAirWetBulb: wetBulb(supply, Math.min(supplyHumidity, wSaturated(supply, rig.pressure)), rig.pressure),
    supplyAirFlow: rig.indoorFan.delivered,
    condenserAirFlow: heating ? rig.indoorFan.flow : rig.outdoorFan.flow,
    outdoorAirFlow: rig.outdoorFan.flow,
    compressorCurrent: current,
    compressorPower: compressor.power,
    totalPower,
    compressorSpeed: speed,
    supplyVoltage: effective.voltage,
    // no bus: one unit, wired straight
    busVoltage: 0,
    contactorDrop: effective.contactDrop,
    compressorCapacitance: (data.motor.capacitance ?? 0) * (1 - effective.weakCapacitor),
    fanCapacitance: (data.outdoorFan.capacitance ?? 0) * (1 - effective.weakFanCapacitor),
    defrostHeaterResistance: heaterResistance(data, effective),
    ...plugResistances(rig, truth),
    valveOpening: env.opening,
    refrigerantMassFlow: m,
    capacityTotal: asked * indoorCoil.airHeat,
    capacitySensible: asked * dryCapacity,
    cop: (asked * indoorCoil.airHeat) / totalPower,
    refrigerantCharge: circuit.massHigh + circuit.massLow + env.pool,
  };
  const heatDefect =
    evaporator.airHeat +
    condenser.airHeat +
    compressor.power -
    compressor.shellHeat -
    circuit.liquidLoss +
    circuit.suctionGain +
    circuit.lineGain -
    circuit.dischargeLoss;
  const glass =
    after.quality <= 0
      ? 0
      : after.quality >= 1
        ? 1
        : (after.quality * after.density) / circuit.fluidVapourDensity(path.pAfterDrier);
  const covered = coveredBy(frost);
  return {
    time,
    regime: 'flow',
    probes: probesOf(values),
    looks: {
      ...looksOfParts(rig, controls),
      sightGlass: glass,
      evaporatorFrost: heating ? coveredBy(condenserIce) : covered,
      receiverLevel: circuit.receiverLevel,
      evaporatorIce: iceBetweenFins(data, frost),
      display: displayOf(controller),
    },
    controller,
    sensors: {
      ...seen,
      outdoorAir: conditions.outdoor + effective.drift.outdoorAir,
      returnAir: rig.roomTemp + effective.drift.returnAir,
    },
    stations,
    condenser: segments(condenser, condenserIce),
    evaporator: segments(evaporator, frost),
    ...(data.reversingValve && { outdoorWater: outdoorCoil.waterTotal }),
    balance: {
      energy: Math.abs(heatDefect) / Math.max(Math.abs(evaporator.airHeat), 100),
      mass: Math.abs(circuit.massHigh + circuit.massLow + env.pool - effective.charge),
    },
  };
}
