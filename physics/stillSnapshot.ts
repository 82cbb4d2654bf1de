/**
 * What a machine shows that stands still or is just starting: pressures of the two vessels, pipes on their way to the air.
 */
import { wetBulb, wSaturated } from './air/moistAir';
import * as L from './fluids/layout';
import { displayOf, looksOfParts } from './looks';
import { leavingTemperature } from './parts/airStream';
import { WALL_FIELDS } from './parts/coil';
import { motorCurrent } from './parts/motor';
import { coveredBy, heaterResistance, iceBetweenFins, plugResistances, probesOf } from './snapshot';
import type { Rig } from './solve/compile';
import { reported } from './solve/control';
import { motorVoltage } from './solve/effective';
import { fansFor, takeAir } from './solve/regime';
import { highVolume, keptApart, lowVolume, standingPressure, totalVolume } from './solve/standing';
import type { CircuitState } from './solve/state';
import { stillStep } from './solve/stillStep';
import type { CoilSegment, ProbeName, Snapshot, Station, StationId } from './types';

export function stillSnapshot(rig: Rig, state: CircuitState): Snapshot {
  const { fluid, data, effective, circuit, conditions } = rig;
  const controls = fansFor(state.inputs.controls, state);
  takeAir(rig, controls, state);
  rig.effective.charge = state.charge;
  const now = stillStep(rig, state, 0);
  const { high, low } = now;
  const { pipes } = state;
  const indoorAir = circuit.indoorAir;
  const outdoorAir = circuit.outdoorAir;
  const cold = Math.min(high.temperature, low.temperature);
  const nitrogen = effective.nitrogen * fluid.pDew(298.15) * (cold / 298.15);
  // a shut solenoid keeps it where the compressor has pushed it
  const apart = keptApart(data, effective);
  const pHigh = high.pressure + (apart ? (nitrogen * totalVolume(data)) / highVolume(rig) : nitrogen);
  const pLow = low.pressure + (apart ? 0 : nitrogen);
  const flow = now.compressorFlow;
  const supply =
    leavingTemperature(indoorAir, now.airHeat, now.water) + rig.indoorFan.power / (indoorAir.massFlow * indoorAir.cp);
  const current = state.turning
    ? motorCurrent(data.motor, now.power, effective.weakCapacitor, motorVoltage(effective))
    : 0;
  const coilHeat = state.cold?.coilHeat ?? 0;
  const totalPower =
    now.power + rig.outdoorFan.power + rig.indoorFan.power + (coilHeat + (state.cold?.crankcaseHeat ?? 0));
  const dewLow = fluid.tDew(pLow);
  const bubbleHigh = fluid.tBubble(pHigh);
  const dewHigh = fluid.tDew(pHigh);
  const { heating } = circuit;
  const sensible = now.airHeat - now.water * 2.501e6;
  const asked = heating ? -1 : 1;
  const condenserAir = circuit.condenserAir;
  const condenserLeaving = condenserAir.temperature + now.condenserHeat / (condenserAir.massFlow * condenserAir.cp);
  const vapourLine = heating
    ? { pressure: pHigh, temperature: pipes.discharge }
    : { pressure: pLow, temperature: pipes.suction };
  const values: Record<ProbeName, number> = {
    suctionPressure: pLow,
    dischargePressure: pHigh,
    liquidPressure: pHigh,
    liquidPressureAfterDrier: now.valveFlow > 0 ? circuit.path.pAfterDrier + nitrogen : pHigh,
    evaporatorOutletPressure: pLow,
    compressorSuctionPressure: pLow,
    filterPressureDrop: rig.indoorFan.filterDrop,
    coilPressureDrop: rig.indoorFan.coilDrop,
    supplyDuctPressure: rig.indoorFan.supplyPressure,
    standingPressure: standingPressure(fluid, data, effective, conditions.outdoor, state.room),
    evaporatingTemp: dewLow,
    condensingTemp: bubbleHigh,
    condensingTempDew: dewHigh,
    condensingTempBubble: bubbleHigh,
    suctionLineTemp: pipes.suction,
    compressorSuctionTemp: pipes.compressorIn,
    reversingValveSuctionInTemp: data.reversingValve && !heating ? pipes.suction : pipes.compressorIn,
    vapourLineTemp: vapourLine.temperature,
    vapourLinePressure: vapourLine.pressure,
    dischargeLineTemp: pipes.discharge,
    liquidLineTemp: pipes.liquid,
    liquidLineTempAfterDrier: pipes.afterDrier,
    meteringInletTemp: pipes.meteringIn,
    evaporatorOutletTemp: pipes.evaporatorOut,
    superheat: pipes.suction - dewLow,
    compressorSuperheat: pipes.compressorIn - dewLow,
    evaporatorSuperheat: pipes.evaporatorOut - dewLow,
    subcooling: bubbleHigh - pipes.liquid,
    dischargeSuperheat: pipes.discharge - dewHigh,
    outdoorAirTemp: conditions.outdoor,
    condenserEnteringAirTemp: condenserAir.temperature,
    condenserLeavingAirTemp: condenserLeaving,
    outdoorEnteringAirTemp: outdoorAir.temperature,
    outdoorLeavingAirTemp: data.reversingValve
      ? leavingTemperature(outdoorAir, now.outdoorHeat, now.outdoorWater)
      : condenserLeaving,
    returnAirTemp: rig.roomTemp,
    returnAirWetBulb: wetBulb(rig.roomTemp, rig.roomHumidity, rig.pressure),
    coilEnteringAirTemp: indoorAir.temperature,
    thermostatAirTemp: rig.roomTemp + effective.thermostatOffset,
    supplyAirTemp: supply,
    supplyAirWetBulb: wetBulb(
      supply,
      Math.min(indoorAir.humidity - now.water / indoorAir.massFlow, wSaturated(supply, rig.pressure)),
      rig.pressure,
    ),
    supplyAirFlow: rig.indoorFan.delivered,
    condenserAirFlow: heating ? rig.indoorFan.flow : rig.outdoorFan.flow,
    outdoorAirFlow: rig.outdoorFan.flow,
    compressorCurrent: current,
    compressorPower: now.power,
    totalPower,
    compressorSpeed: state.turning ? data.compressor.ratedSpeed * state.speed * circuit.compressor.speedShare : 0,
    supplyVoltage: effective.voltage,
    // no bus: one unit, wired straight
    busVoltage: 0,
    contactorDrop: state.turning ? effective.contactDrop : effective.voltage,
    compressorCapacitance: (data.motor.capacitance ?? 0) * (1 - effective.weakCapacitor),
    fanCapacitance: (data.outdoorFan.capacitance ?? 0) * (1 - effective.weakFanCapacitor),
    defrostHeaterResistance: heaterResistance(data, effective),
    ...plugResistances(rig, state.sensed),
    valveOpening: state.opening,
    refrigerantMassFlow: flow,
    capacityTotal: asked * now.airHeat,
    capacitySensible: asked * sensible,
    cop: totalPower > 1 ? (asked * now.airHeat) / totalPower : 0,
    refrigerantCharge: state.charge,
  };
  const at = (
    pressure: number,
    temperature: number,
    enthalpy: number,
    quality: number,
    density: number,
    massFlow: number,
  ): Station => ({
    pressure,
    temperature,
    enthalpy,
    quality,
    density,
    massFlow,
  });
  const side = (
    vessel: typeof high,
    pressure: number,
    temperature: number,
    top: boolean,
    massFlow: number,
  ): Station => {
    const h = top ? vessel.topEnthalpy : vessel.bottomEnthalpy;
    const x = (h - vessel.block[L.H_L]) / (vessel.block[L.H_V] - vessel.block[L.H_L]);
    const rho = x <= 0 ? vessel.block[L.RHO_L] : x >= 1 ? vessel.density : vessel.block[L.RHO_V] / Math.max(x, 0.05);
    return at(pressure, temperature, h, x, rho, massFlow);
  };
  const stations: Record<StationId, Station> = {
    'compressor-in': side(low, pLow, pipes.compressorIn, true, flow),
    'compressor-out': side(high, pHigh, pipes.discharge, true, flow),
    'condenser-in': side(high, pHigh, pipes.discharge, true, flow),
    'condenser-out': side(high, pHigh, high.temperature, false, now.valveFlow),
    'liquid-port': side(high, pHigh, pipes.liquid, false, now.valveFlow),
    'drier-out': side(high, values.liquidPressureAfterDrier, pipes.afterDrier, false, now.valveFlow),
    'metering-in': side(high, pHigh, pipes.liquid, false, now.valveFlow),
    'evaporator-in': side(low, pLow, low.temperature, false, now.valveFlow),
    'evaporator-out': side(low, pLow, pipes.evaporatorOut, true, flow),
    'suction-port': side(low, pLow, pipes.suction, true, flow),
  };
  const coil = (walls: readonly number[], vessel: typeof high, frost: readonly number[]): CoilSegment[] =>
    Array.from({ length: walls.length / WALL_FIELDS }, (_, i) => ({
      temperature: vessel.temperature,
      quality: vessel.quality,
      wall: walls[i * WALL_FIELDS],
      frost: frost[i] ?? 0,
    }));
  const glass = 1 - Math.min(1, high.liquidShare / 0.02);
  const seen = reported(circuit, conditions.outdoor, state.sensed);
  return {
    time: state.time,
    regime: 'still',
    probes: probesOf(values),
    looks: {
      ...looksOfParts(rig, controls),
      sightGlass: glass,
      evaporatorFrost: coveredBy(heating ? (state.condenserIce ?? []) : state.frost),
      // at rest the high side's liquid runs down into the receiver first
      receiverLevel: data.receiver ? Math.min(1, (high.liquidShare * highVolume(rig)) / data.receiver.volume) : 0,
      evaporatorIce: iceBetweenFins(data, state.frost),
      display: displayOf(state.controller),
    },
    controller: state.controller,
    sensors: {
      ...seen,
      outdoorAir: conditions.outdoor + effective.drift.outdoorAir,
      returnAir: state.room + effective.drift.returnAir,
    },
    stations,
    condenser: coil(state.condenserWall, high, state.condenserIce ?? []),
    evaporator: coil(state.evaporatorWall, low, state.frost),
    ...(data.reversingValve && { outdoorWater: now.outdoorWater }),
    balance: {
      energy: 0,
      mass: Math.abs(high.density * highVolume(rig) + low.density * lowVolume(rig) - state.charge),
    },
  };
}
