/** Where gauges and clamps go outdoors, and states of the refrigerant at the stations of a solved network. */
import * as L from '../fluids/layout';
import type { Station, StationId } from '../types';
import type { Branch } from './branch';
import type { NetworkRig } from './rig';
import { sum } from './sum';

/** Gas pipe at the outdoor modules' service port; in heating the port lies on the common suction pipe. */
export function suctionPort(rig: NetworkRig): Station {
  const { network } = rig;
  return stationAt(rig, network.service[L.P], network.hSuctionPort, network.massFlow);
}

/** Liquid service port outdoors: after the exchanger in cooling, before the outdoor valve in heating. */
export function liquidPort(rig: NetworkRig): Station {
  const { network, effective } = rig;
  if (network.plainCooling) return stationAt(rig, network.port[L.P], network.hLiquid, network.massFlow);
  const header = stationAt(rig, network.liquid[L.P], network.hLiquid, network.massFlow);
  const through = sum(network.modules, (b) => (b.role === 'evaporator' ? b.flow : 0));
  const drop = ((effective.machine.line + effective.machine.drier) * through * through) / header.density;
  return stationAt(rig, Math.max(header.pressure - drop, network.low[L.P]), network.hLiquid, through);
}

/** Pressure behind the drier, Pa. @param before Pa at the liquid port */
export function afterDrier(rig: NetworkRig, before: number): number {
  const { network, effective } = rig;
  if (!network.plainCooling) return before;
  const m = network.massFlow - network.bypassFlow;
  const density = stationAt(rig, before, network.hLiquid, m).density;
  return Math.max(before - (effective.machine.drier * m * m) / density, network.low[L.P]);
}

/** Pressure by which the condensing temperature is told: at the outlet of what condenses. */
export function liquidSide(rig: NetworkRig): number {
  const { network } = rig;
  const condensers = network.branches.filter((b) => b.role === 'condenser');
  const flow = sum(condensers, (b) => b.flow);
  return flow > 0 ? sum(condensers, (b) => b.flow * b.pOut) / flow : network.high[L.P];
}

const block = new Float64Array(L.BLOCK_SIZE);
const out = new Float64Array(L.OUT_SIZE);

/** State at a pressure (Pa) and an enthalpy (J/kg). Throws PhysicsError outside the tables. */
export function stationAt(rig: NetworkRig, pressure: number, enthalpy: number, flow: number): Station {
  rig.fluid.setPressure(pressure, block);
  rig.fluid.state(block, enthalpy, out);
  return {
    pressure,
    enthalpy,
    temperature: out[L.OUT_T],
    quality: out[L.OUT_Q],
    density: out[L.OUT_RHO],
    massFlow: flow,
  };
}

/** Pressure at the gas pipe of a branch, Pa. */
export function gasPressure(b: Branch): number {
  return b.role === 'condenser' ? b.pIn : b.pOut;
}

/** Temperature of the gas pipe of a branch, K. */
export function gasTemperature(rig: NetworkRig, b: Branch): number {
  if (b.role !== 'condenser') return b.tGas;
  return stationAt(rig, b.pIn, b.hIn, b.flow).temperature;
}

/** Every station by its name; coils are told by the first one at work. */
export function allStations(
  rig: NetworkRig,
  known: Readonly<Record<'suction' | 'liquid' | 'compressorIn' | 'discharge' | 'outlet' | 'after', Station>>,
): Record<StationId, Station> {
  const { network } = rig;
  const hottest = network.branches.find((b) => b.role === 'condenser') ?? network.modules[0];
  const coldest = network.branches.find((b) => b.role === 'evaporator') ?? network.units[0];
  return {
    'compressor-in': known.compressorIn,
    'compressor-out': known.discharge,
    'condenser-in': stationAt(rig, hottest.pIn, hottest.hIn, hottest.flow),
    'condenser-out': stationAt(rig, hottest.pOut, hottest.hOut, hottest.flow),
    'liquid-port': known.liquid,
    'drier-out': known.after,
    'metering-in': stationAt(rig, network.liquid[L.P], network.hLiquid, network.valveFlow),
    'evaporator-in': stationAt(rig, coldest.pIn, coldest.hIn, coldest.flow),
    'evaporator-out': known.outlet,
    'suction-port': known.suction,
  };
}

/** Share of the volume that gas fills. */
export function vapourShare(rig: NetworkRig, at: Station): number {
  rig.fluid.setPressure(at.pressure, block);
  return (at.quality * at.density) / block[L.RHO_V];
}
