/**
 * From a solved network to what the outside sees. Places: the suction and liquid service ports stand at the outdoor
 * modules; a unit's gas and liquid pipe carry its two sensors.
 */
import { wetBulb, wSaturated } from '../air/moistAir';
import * as L from '../fluids/layout';
import { leavingTemperature } from '../parts/airStream';
import { WALL_FIELDS } from '../parts/coil';
import { motorCurrent } from '../parts/motor';
import { probesOf } from '../snapshot';
import type {
  BranchSnapshot,
  CoilSegment,
  ControllerState,
  ProbeKey,
  ProbeName,
  Snapshot,
  UnitDemand,
  UnitSnapshot,
  UnitState,
} from '../types';
import { PROBES } from '../types';
import type { Branch } from './branch';
import { busVoltage } from './bus';
import { looksOf, moduleFan } from './looks';
import type { NetworkRig } from './rig';
import { sensorsOf } from './sensors';
import {
  afterDrier,
  allStations,
  gasPressure,
  gasTemperature,
  liquidPort,
  liquidSide,
  stationAt,
  suctionPort,
  vapourShare,
} from './stations';
import { sum } from './sum';
import { lowestBetweenPhases } from './supply';
import { standingPressure } from './volumes';

/** What a snapshot needs beside the solved network. */
export interface Shown {
  readonly time: number;
  readonly controller: ControllerState;
  readonly demands: readonly UnitDemand[];
  readonly unitStates: readonly UnitState[];
  /** kg of ice by segment of each outdoor module */
  readonly frost: readonly (readonly number[])[];
  readonly outdoorFan: number;
}

export function networkSnapshot(rig: NetworkRig, shown: Shown): Snapshot {
  const { network, fluid, data, drive, conditions } = rig;
  const { compressor, modules, units } = network;
  const effective = rig.effective.machine;
  const m = network.massFlow;
  const cooled = sum(units, (b) => (b.role === 'evaporator' ? b.boiling.airHeat : 0));
  const heated = sum(units, (b) => (b.role === 'condenser' ? -b.condensing.airHeat : 0));
  const heatingOnly = conditions.mode === 'heating';
  const suction = suctionPort(rig);
  const liquid = liquidPort(rig);
  const dewLow = fluid.tDew(suction.pressure);
  const bubble = fluid.tBubble(liquid.pressure);
  const compressorIn = stationAt(rig, network.low[L.P], network.hCompressorIn, m);
  const discharge = stationAt(rig, network.high[L.P], compressor.hDischarge, m);
  const outdoor = modules[0];
  const fans = sum(network.branches, (b) => b.fan.power);
  const air = mixedAir(units, rig.pressure);
  const boils = network.branches.filter((b) => b.role === 'evaporator');
  const flow = sum(boils, (b) => b.flow);
  const outlet = stationAt(
    rig, // where modules boil too, all meets behind the long pipe
    (boils.some((b) => modules.includes(b)) ? network.service : network.suction)[L.P],
    sum(boils, (b) => b.flow * b.hOut) / (flow || 1),
    flow,
  );
  const after = stationAt(rig, afterDrier(rig, liquid.pressure), network.hLiquid, m);
  const total = compressor.power + fans;
  const capacity = cooled + heated;
  const leaving =
    sum(modules, (b) => (b.role === 'idle' ? 0 : b.march.airHeat)) / sum(modules, (b) => b.air.massFlow * b.air.cp);
  const values: Record<ProbeName, number> = {
    suctionPressure: suction.pressure,
    dischargePressure: network.high[L.P],
    liquidPressure: liquid.pressure,
    liquidPressureAfterDrier: after.pressure,
    evaporatorOutletPressure: outlet.pressure,
    compressorSuctionPressure: network.low[L.P],
    filterPressureDrop: sum(units, (b) => b.fan.filterDrop) / units.length,
    coilPressureDrop: sum(units, (b) => b.fan.coilDrop) / units.length,
    supplyDuctPressure: sum(units, (b) => b.fan.supplyPressure) / units.length,
    standingPressure: standingPressure(rig),
    vapourLinePressure: suction.pressure,
    evaporatingTemp: dewLow,
    condensingTemp: fluid.tBubble(liquidSide(rig)),
    condensingTempDew: fluid.tDew(liquidSide(rig)),
    condensingTempBubble: fluid.tBubble(liquidSide(rig)),
    suctionLineTemp: suction.temperature,
    compressorSuctionTemp: compressorIn.temperature,
    reversingValveSuctionInTemp: compressorIn.temperature,
    vapourLineTemp: suction.temperature,
    dischargeLineTemp: discharge.temperature,
    liquidLineTemp: liquid.temperature,
    liquidLineTempAfterDrier: after.temperature,
    meteringInletTemp: stationAt(rig, network.liquid[L.P], network.hLiquid, m).temperature,
    evaporatorOutletTemp: outlet.temperature,
    superheat: suction.temperature - dewLow,
    compressorSuperheat: compressorIn.temperature - fluid.tDew(network.low[L.P]),
    evaporatorSuperheat: outlet.temperature - fluid.tDew(outlet.pressure),
    subcooling: bubble - liquid.temperature,
    dischargeSuperheat: discharge.temperature - fluid.tDew(network.high[L.P]),
    outdoorAirTemp: conditions.outdoor,
    condenserEnteringAirTemp: outdoor.air.temperature,
    condenserLeavingAirTemp: outdoor.air.temperature - leaving,
    outdoorEnteringAirTemp: outdoor.air.temperature,
    outdoorLeavingAirTemp: outdoor.air.temperature - leaving,
    coilEnteringAirTemp: air.entering,
    thermostatAirTemp: air.entering,
    returnAirTemp: air.entering,
    returnAirWetBulb: air.enteringWet,
    supplyAirTemp: air.leaving,
    supplyAirWetBulb: air.leavingWet,
    supplyAirFlow: sum(units, (b) => b.fan.flow),
    condenserAirFlow: sum(modules, (b) => b.fan.flow),
    outdoorAirFlow: sum(modules, (b) => b.fan.flow),
    compressorCurrent: motorCurrent(data.motor, compressor.power, 0, effective.voltage),
    compressorPower: compressor.power,
    totalPower: total,
    compressorSpeed: data.compressor.ratedSpeed * drive.speed * compressor.speedShare,
    supplyVoltage: lowestBetweenPhases(rig),
    contactorDrop: effective.contactDrop,
    // the inverter's motors and the fans' electronic ones have no run capacitor
    compressorCapacitance: data.motor.capacitance ?? 0,
    fanCapacitance: outdoor.data.fan.capacitance ?? 0,
    // none: it defrosts by its own heat
    defrostHeaterResistance: 0,
    suctionSensorResistance: 0,
    coilSensorResistance: 0,
    valveCoilResistance: 0,
    busVoltage: busVoltage(rig, 0),
    valveOpening: sum(boils, (b) => b.opening * b.data.valve.area) / (sum(boils, (b) => b.data.valve.area) || 1),
    refrigerantMassFlow: m,
    capacityTotal: capacity,
    capacitySensible: heatingOnly
      ? heated
      : heated + sum(units, (b) => (b.role === 'evaporator' ? b.boiling.sensible : 0)),
    cop: capacity / total,
    refrigerantCharge: network.massHigh + network.massLow + drive.pool,
  };
  const probes: Record<string, { value: number; unit: string }> = { ...probesOf(values) };
  const own = (b: Branch, of: Partial<Record<ProbeName, number>>): void => {
    for (const [name, value] of Object.entries(of)) {
      probes[`${name}@${b.data.id}` satisfies ProbeKey | string] = { value, unit: PROBES[name as ProbeName] };
    }
  };
  for (const b of modules) own(b, moduleValues(b));
  units.forEach((b, i) => {
    own(b, { ...unitValues(rig, b), busVoltage: busVoltage(rig, i) });
  });
  const glass = after.quality <= 0 ? 0 : after.quality >= 1 ? 1 : vapourShare(rig, after);
  return {
    time: shown.time,
    regime: 'flow',
    probes: probes as Snapshot['probes'],
    looks: looksOf(rig, shown, glass),
    controller: shown.controller,
    sensors: sensorsOf(rig, suction.temperature, { suction: suction.pressure, discharge: network.high[L.P] }),
    stations: allStations(rig, { suction, liquid, compressorIn, discharge, outlet, after }),
    condenser: segments(outdoor, shown.frost[0] ?? []),
    evaporator: segments(units[0], []),
    units: units.map(
      (b, i): UnitSnapshot => ({
        ...branchSnapshot(rig, b, b.fan.power > 0 ? b.effective.indoorFanSpeed : 0, []),
        state: shown.unitStates[i],
      }),
    ),
    modules: modules.map((b, i) => branchSnapshot(rig, b, moduleFan(rig, shown, b), shown.frost[i] ?? [])),
    balance: {
      energy: Math.abs(heatDefect(rig)) / Math.max(Math.abs(capacity), 100),
      mass: Math.abs(network.massHigh + network.massLow + drive.pool - effective.charge),
    },
  };
}

/** W that heat in, power and heat out miss each other by. */
function heatDefect(rig: NetworkRig): number {
  const { network } = rig;
  const { compressor } = network;
  return (
    sum(network.branches, (b) => (b.role === 'idle' ? 0 : b.march.airHeat)) +
    compressor.power -
    compressor.shellHeat +
    network.suctionGain
  );
}

/** Values of one unit by probe name. */
function unitValues(rig: NetworkRig, b: Branch): Partial<Record<ProbeName, number>> {
  const { fluid } = rig;
  const air = mixedAir([b], rig.pressure);
  const gas = gasPressure(b);
  const liquid = b.role === 'condenser' ? b.pOut : b.pIn;
  return {
    evaporatorOutletTemp: gasTemperature(rig, b),
    evaporatorOutletPressure: gas,
    evaporatorSuperheat: gasTemperature(rig, b) - fluid.tDew(gas),
    liquidLineTemp: b.tLiquid,
    subcooling: fluid.tBubble(liquid) - b.tLiquid,
    valveOpening: b.role === 'idle' ? 0 : b.opening,
    returnAirTemp: air.entering,
    returnAirWetBulb: air.enteringWet,
    supplyAirTemp: air.leaving,
    supplyAirWetBulb: air.leavingWet,
    supplyAirFlow: b.fan.flow,
    filterPressureDrop: b.fan.filterDrop,
    coilPressureDrop: b.fan.coilDrop,
    capacityTotal: b.role === 'condenser' ? -b.condensing.airHeat : b.role === 'idle' ? 0 : b.boiling.airHeat,
  };
}

/** Values of one outdoor module by probe name. */
function moduleValues(b: Branch): Partial<Record<ProbeName, number>> {
  const gained = b.role === 'idle' ? 0 : b.march.airHeat / (b.air.massFlow * b.air.cp);
  return {
    condenserEnteringAirTemp: b.air.temperature,
    condenserLeavingAirTemp: b.air.temperature - gained,
    condenserAirFlow: b.fan.flow,
    liquidLineTemp: b.tLiquid,
  };
}

/** Mixed by flow: air that enters and leaves these units, K; their fans warm it. */
function mixedAir(
  units: readonly Branch[],
  pressure: number,
): { entering: number; enteringWet: number; leaving: number; leavingWet: number } {
  let flow = 0;
  let entering = 0;
  let humidity = 0;
  let leaving = 0;
  let dried = 0;
  for (const b of units) {
    const g = b.air.massFlow;
    const coil = b.march;
    const idle = b.role === 'idle';
    const heat = idle ? 0 : coil.airHeat;
    const water = idle ? 0 : coil.waterTotal;
    flow += g;
    entering += g * b.air.temperature;
    humidity += g * b.air.humidity;
    leaving += g * (leavingTemperature(b.air, heat, water) + b.fan.power / (g * b.air.cp));
    dried += g * b.air.humidity - water;
  }
  const inWet = humidity / flow;
  const outWet = dried / flow;
  const t = leaving / flow;
  return {
    entering: entering / flow,
    enteringWet: wetBulb(entering / flow, inWet, pressure),
    leaving: t,
    // what a unit blows into colder air falls out as mist
    leavingWet: wetBulb(t, Math.min(outWet, wSaturated(t, pressure)), pressure),
  };
}

function branchSnapshot(rig: NetworkRig, b: Branch, fan: number, frost: readonly number[]): BranchSnapshot {
  const condenses = b.role === 'condenser';
  const gas = stationAt(rig, gasPressure(b), condenses ? b.hIn : b.hOut, b.flow);
  const liquid = stationAt(rig, condenses ? b.pOut : b.pIn, condenses ? b.hOut : b.hIn, b.flow);
  return { id: b.data.id, role: b.role, fan, gas, liquid, coil: segments(b, frost) };
}

function segments(b: Branch, frost: readonly number[]): CoilSegment[] {
  const coil = b.march;
  return Array.from(coil.temperature, (temperature, i) => ({
    temperature: b.role === 'idle' ? b.tGas : temperature,
    quality: b.role === 'idle' ? 1 : coil.quality[i],
    wall: b.role === 'idle' ? b.air.temperature : coil.walls[i * WALL_FIELDS],
    frost: frost[i] ?? 0,
  }));
}
