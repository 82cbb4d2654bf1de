/** What a network shows while it stands or is just starting: two vessels, pipes that drift to the air around them. */
import { wetBulb } from '../air/moistAir';
import { leavingTemperature } from '../parts/airStream';
import { WALL_FIELDS } from '../parts/coil';
import { motorCurrent } from '../parts/motor';
import { probesOf } from '../snapshot';
import type { Vessel } from '../solve/vessels';
import {
  type BranchSnapshot,
  type CoilSegment,
  PROBES,
  type ProbeName,
  type Snapshot,
  type Station,
  type StationId,
  type UnitState,
} from '../types';
import { assign, setAir } from './advance';
import type { Branch } from './branch';
import { busVoltage } from './bus';
import { looksOf } from './looks';
import type { NetworkRig } from './rig';
import { sensorsWith } from './sensors';
import type { Shown } from './snapshot';
import type { NetworkState } from './state';
import { type StillResult, stillStep } from './stillStep';
import { lowestBetweenPhases } from './supply';
import { highVolume, standingPressure, totalVolume } from './volumes';

/** Heat of evaporation of water at 0 °C, J/kg (ASHRAE Fundamentals). */
const WATER = 2.501e6;

export function stillSnapshot(rig: NetworkRig, state: NetworkState): Snapshot {
  const { network, data, conditions, effective } = rig;
  assign(rig, state);
  setAir(rig, state, state.inputs.controls, state.turning);
  rig.effective.machine.charge = state.charge;
  const result = stillStep(rig, state, 0);
  const { high, low } = result;
  const vHigh = highVolume(rig);
  const vLow = totalVolume(rig) - vHigh;
  const [suction, discharge, liquid] = state.pipes;
  const { fluid } = rig;
  const units = network.units;
  const modules = network.modules.length;
  const heat = units.reduce((sum, b, i) => sum + (b.role === 'condenser' ? -1 : 1) * result.airHeat[modules + i], 0);
  const water = result.water.reduce((sum, each, i) => (i < modules ? sum : sum + each), 0);
  const fans = network.branches.reduce((sum, b) => sum + b.fan.power, 0);
  const airs = units.map((b, i) => leaving(rig, b, result, modules + i));
  const flow = airs.reduce((sum, each) => sum + each.flow, 0);
  const mean = (of: (each: (typeof airs)[number]) => number): number =>
    airs.reduce((sum, each) => sum + each.flow * of(each), 0) / flow;
  const m = result.compressorFlow;
  const dew = fluid.tDew(low.pressure);
  const bubble = fluid.tBubble(high.pressure);
  const outdoor = network.modules[0];
  const outdoorHeat = result.airHeat.reduce((sum, each, i) => (i < modules ? sum + each : sum), 0);
  const outdoorRate = network.modules.reduce((sum, b) => sum + b.air.massFlow * b.air.cp, 0);
  const values: Record<ProbeName, number> = {
    suctionPressure: low.pressure,
    dischargePressure: high.pressure,
    liquidPressure: high.pressure,
    liquidPressureAfterDrier: high.pressure,
    evaporatorOutletPressure: low.pressure,
    compressorSuctionPressure: low.pressure,
    filterPressureDrop: units.reduce((sum, b) => sum + b.fan.filterDrop, 0) / units.length,
    coilPressureDrop: units.reduce((sum, b) => sum + b.fan.coilDrop, 0) / units.length,
    supplyDuctPressure: units.reduce((sum, b) => sum + b.fan.supplyPressure, 0) / units.length,
    standingPressure: standingPressure(rig),
    vapourLinePressure: low.pressure,
    evaporatingTemp: dew,
    condensingTemp: bubble,
    condensingTempDew: fluid.tDew(high.pressure),
    condensingTempBubble: bubble,
    suctionLineTemp: suction,
    compressorSuctionTemp: suction,
    reversingValveSuctionInTemp: suction,
    vapourLineTemp: suction,
    dischargeLineTemp: discharge,
    liquidLineTemp: liquid,
    liquidLineTempAfterDrier: liquid,
    meteringInletTemp: liquid,
    evaporatorOutletTemp: suction,
    superheat: suction - dew,
    compressorSuperheat: suction - dew,
    evaporatorSuperheat: suction - dew,
    subcooling: bubble - liquid,
    dischargeSuperheat: discharge - fluid.tDew(high.pressure),
    outdoorAirTemp: conditions.outdoor,
    condenserEnteringAirTemp: outdoor.air.temperature,
    condenserLeavingAirTemp: outdoor.air.temperature - outdoorHeat / outdoorRate,
    outdoorEnteringAirTemp: outdoor.air.temperature,
    outdoorLeavingAirTemp: outdoor.air.temperature - outdoorHeat / outdoorRate,
    coilEnteringAirTemp: mean((each) => each.entering),
    thermostatAirTemp: mean((each) => each.entering),
    returnAirTemp: mean((each) => each.entering),
    returnAirWetBulb: mean((each) => each.enteringWet),
    supplyAirTemp: mean((each) => each.leaving),
    supplyAirWetBulb: mean((each) => each.leavingWet),
    supplyAirFlow: units.reduce((sum, b) => sum + b.fan.flow, 0),
    condenserAirFlow: network.modules.reduce((sum, b) => sum + b.fan.flow, 0),
    outdoorAirFlow: network.modules.reduce((sum, b) => sum + b.fan.flow, 0),
    compressorCurrent: state.turning ? motorCurrent(data.motor, result.power, 0, effective.machine.voltage) : 0,
    compressorPower: result.power,
    totalPower: result.power + fans,
    compressorSpeed: state.turning ? data.compressor.ratedSpeed * state.speed : 0,
    supplyVoltage: lowestBetweenPhases(rig),
    contactorDrop: state.turning ? effective.machine.contactDrop : effective.machine.voltage,
    compressorCapacitance: data.motor.capacitance ?? 0,
    fanCapacitance: outdoor.data.fan.capacitance ?? 0,
    defrostHeaterResistance: 0,
    suctionSensorResistance: 0,
    coilSensorResistance: 0,
    valveCoilResistance: 0,
    busVoltage: busVoltage(rig, 0),
    valveOpening: unitOpening(rig, state),
    refrigerantMassFlow: m,
    capacityTotal: heat,
    capacitySensible: heat - water * WATER,
    cop: result.power > 0 ? heat / (result.power + fans) : 0,
    refrigerantCharge: state.charge,
  };
  const probes: Record<string, { value: number; unit: string }> = { ...probesOf(values) };
  const own = (id: string, of: Partial<Record<ProbeName, number>>): void => {
    for (const [name, value] of Object.entries(of)) {
      probes[`${name}@${id}`] = { value, unit: PROBES[name as ProbeName] };
    }
  };
  network.modules.forEach((b, i) => {
    own(b.data.id, moduleValues(b, state, i, result));
  });
  units.forEach((b, i) => {
    own(b.data.id, { ...unitValues(rig, b, state, i, result, airs[i]), busVoltage: busVoltage(rig, i) });
  });
  const shown: Shown = {
    time: state.time,
    controller: state.controller,
    demands: state.demands,
    unitStates: state.unitStates,
    frost: state.frost,
    outdoorFan: outdoor.fan.power > 0 ? 1 : 0,
  };
  const gas = (v: Vessel, t: number): Station => ({ ...stationOf(v, v.topEnthalpy, m), temperature: t });
  const stations: Record<StationId, Station> = {
    ...Object.fromEntries(
      (['condenser-in', 'condenser-out', 'liquid-port', 'drier-out', 'metering-in'] as const).map((id) => [
        id,
        { ...stationOf(high, high.bottomEnthalpy, m), temperature: liquid },
      ]),
    ),
    'compressor-in': gas(low, suction),
    'compressor-out': gas(high, discharge),
    'evaporator-in': stationOf(low, low.bottomEnthalpy, m),
    'evaporator-out': gas(low, suction),
    'suction-port': gas(low, suction),
  } as Record<StationId, Station>;
  return {
    time: state.time,
    regime: 'still',
    probes: probes as Snapshot['probes'],
    looks: looksOf(rig, shown, high.liquidShare > 0 ? 0 : 1),
    controller: state.controller,
    sensors: sensorsWith(
      rig,
      suction,
      discharge,
      state.walls.slice(modules).map((each) => each[each.length - 1]),
      state.walls.map((each) => each[0]),
      { suction: low.pressure, discharge: high.pressure },
    ),
    stations,
    condenser: segments(state.walls[0], high),
    evaporator: segments(state.walls[modules], low),
    units: units.map((b, i) => ({
      ...standingBranch(b, state.walls[modules + i], b.role === 'condenser' ? high : low),
      state: state.turning || waitsForNothing(state.unitStates[i]) ? state.unitStates[i] : 'machine-stopped',
      fan: b.fan.power > 0 ? b.effective.indoorFanSpeed : 0,
    })),
    modules: network.modules.map((b, i) => ({
      ...standingBranch(b, state.walls[i], b.role === 'evaporator' ? low : high),
      fan: b.fan.power > 0 ? effective.machine.outdoorFanSpeed : 0,
    })),
    balance: { energy: 0, mass: Math.abs(high.density * vHigh + low.density * vLow - state.charge) },
  };
}

function stationOf(vessel: Vessel, enthalpy: number, flow: number): Station {
  return {
    pressure: vessel.pressure,
    temperature: vessel.temperature,
    enthalpy,
    quality: vessel.quality,
    density: vessel.density,
    massFlow: flow,
  };
}

/** A coil through which nothing flows: it lies in one of the two vessels. */
function standingBranch(b: Branch, walls: readonly number[], vessel: Vessel): Omit<BranchSnapshot, 'fan'> {
  return {
    id: b.data.id,
    role: b.role,
    gas: stationOf(vessel, vessel.topEnthalpy, 0),
    liquid: stationOf(vessel, vessel.bottomEnthalpy, 0),
    coil: segments(walls, vessel),
  };
}

function moduleValues(
  b: Branch,
  state: NetworkState,
  index: number,
  result: StillResult,
): Partial<Record<ProbeName, number>> {
  return {
    condenserEnteringAirTemp: b.air.temperature,
    condenserLeavingAirTemp: b.air.temperature - result.airHeat[index] / (b.air.massFlow * b.air.cp),
    condenserAirFlow: b.fan.flow,
    liquidLineTemp: state.walls[index][0],
  };
}

function segments(walls: readonly number[], vessel: Vessel): CoilSegment[] {
  const n = walls.length / WALL_FIELDS;
  return Array.from({ length: n }, (_, i) => ({
    temperature: vessel.temperature,
    quality: vessel.quality,
    wall: walls[i * WALL_FIELDS],
    frost: 0,
  }));
}

/** Whether a unit has nothing to wait for while the machine stands. */
function waitsForNothing(state: UnitState): boolean {
  return state === 'off' || state === 'not-answering';
}

interface Leaving {
  readonly flow: number;
  readonly entering: number;
  readonly enteringWet: number;
  readonly leaving: number;
  readonly leavingWet: number;
}

function leaving(rig: NetworkRig, b: Branch, result: StillResult, index: number): Leaving {
  const { air, fan } = b;
  const heat = result.airHeat[index];
  const water = result.water[index];
  const t = leavingTemperature(air, heat, water) + fan.power / (air.massFlow * air.cp);
  const humidity = Math.min(air.humidity - water / air.massFlow, 0.999 * air.saturated.humidity(t));
  return {
    flow: air.massFlow,
    entering: air.temperature,
    enteringWet: wetBulb(air.temperature, air.humidity, rig.pressure),
    leaving: t,
    leavingWet: wetBulb(t, humidity, rig.pressure),
  };
}

function unitValues(
  rig: NetworkRig,
  b: Branch,
  state: NetworkState,
  index: number,
  result: StillResult,
  air: Leaving,
): Partial<Record<ProbeName, number>> {
  const vessel = b.role === 'condenser' ? result.high : result.low;
  const walls = state.walls[rig.network.modules.length + index];
  const gas = walls[walls.length - 1];
  return {
    evaporatorOutletTemp: gas,
    evaporatorOutletPressure: vessel.pressure,
    evaporatorSuperheat: gas - rig.fluid.tDew(vessel.pressure),
    liquidLineTemp: walls[0],
    subcooling: rig.fluid.tBubble(vessel.pressure) - walls[0],
    valveOpening: state.openings[rig.network.modules.length + index],
    returnAirTemp: air.entering,
    returnAirWetBulb: air.enteringWet,
    supplyAirTemp: air.leaving,
    supplyAirWetBulb: air.leavingWet,
    supplyAirFlow: b.fan.flow,
    filterPressureDrop: b.fan.filterDrop,
    coilPressureDrop: b.fan.coilDrop,
    capacityTotal: (b.role === 'condenser' ? -1 : 1) * result.airHeat[rig.network.modules.length + index],
  };
}

/** Mean opening of the units' valves by their area. */
function unitOpening(rig: NetworkRig, state: NetworkState): number {
  const { modules, units } = rig.network;
  let area = 0;
  let open = 0;
  units.forEach((b, i) => {
    area += b.data.valve.area;
    open += b.data.valve.area * state.openings[modules.length + i];
  });
  return open / area;
}
