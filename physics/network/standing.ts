/** A network after a long stop: liquid in the colder side, one pressure. */
import * as L from '../fluids/layout';
import { ln } from '../math/elementary';
import { WALL_FIELDS } from '../parts/coil';
import { standingAt } from '../solve/standing';
import type { Controls } from '../types';
import { unitStatesOf } from './bus';
import { demandsOf } from './design';
import type { NetworkRig } from './rig';
import { type NetworkState, PARKED } from './state';
import { type Outdoors, tasksFor } from './tasks';
import { highVolume, totalVolume } from './volumes';

/** Ice on the modules as found, kg by segment, spread evenly. */
export function frostFound(rig: NetworkRig): number[][] {
  const found = rig.iceFound();
  return rig.data.modules.map(({ coil }, i) => new Array<number>(coil.segments).fill(found[i] / coil.segments));
}

/** State in rooms and weather as found, valves parked, all rooms asking as the mode says. */
export function standingNetwork(rig: NetworkRig, controls: Controls, charge: number): NetworkState {
  const { fluid, network, data, conditions } = rig;
  const { branches } = network;
  const room = rig.roomFound();
  const demands = demandsOf(rig, conditions.mode, controls.units);
  const boils = demands.includes('heating') && !demands.includes('cooling');
  // where rooms will ask for both, one module is enough to begin with
  const balances = demands.includes('heating') && demands.includes('cooling');
  const outdoors: Outdoors = { role: boils ? 'evaporator' : 'condenser', count: balances ? 1 : data.modules.length };
  const openings = branches.map((b, i) => {
    const own = i < network.modules.length ? Number.NaN : b.effective.stuckOpening;
    return Number.isNaN(own) ? PARKED : own;
  });
  rig.setOutdoorAir(1, false);
  for (let i = 0; i < network.units.length; i++) rig.setUnitAir(i, room, false, false);
  rig.drive.tasks = tasksFor(rig, outdoors, demands, openings, null);
  branches.forEach((b, i) => {
    b.role = rig.drive.tasks[i].role;
  });
  rig.effective.machine.charge = charge;
  const vHigh = highVolume(rig);
  const vLow = totalVolume(rig) - vHigh;
  const outdoor = conditions.outdoor;
  const indoor = room.temperature;
  const tHigh = boils ? indoor : outdoor;
  const tLow = boils ? outdoor : indoor;
  const highCold = tHigh <= tLow;
  const cold = highCold ? tHigh : tLow;
  const warm = highCold ? tLow : tHigh;
  const p = standingAt(fluid, charge, totalVolume(rig), cold);
  const block = new Float64Array(L.BLOCK_SIZE);
  const out = new Float64Array(L.OUT_SIZE);
  fluid.setPressure(p, block);
  const hWarm = fluid.hVapour(block, warm > block[L.T_DEW] ? warm : block[L.T_DEW]);
  fluid.state(block, hWarm, out);
  const warmVolume = highCold ? vLow : vHigh;
  const coldVolume = highCold ? vHigh : vLow;
  const massWarm = out[L.OUT_RHO] * warmVolume;
  const massCold = charge - massWarm;
  const v = coldVolume / massCold;
  const quality = (v - 1 / block[L.RHO_L]) / (1 / block[L.RHO_V] - 1 / block[L.RHO_L]);
  let hCold = block[L.H_L] + quality * (block[L.H_V] - block[L.H_L]);
  if (quality > 1) hCold = fluid.hVapour(block, cold > block[L.T_DEW] ? cold : block[L.T_DEW]);
  const energyWarm = massWarm * hWarm - p * warmVolume;
  const energyCold = massCold * hCold - p * coldVolume;
  const walls = branches.map((b) => new Array<number>(b.data.coil.segments * WALL_FIELDS).fill(b.air.temperature));
  const massHigh = highCold ? massCold : massWarm;
  const flows = branches.map((b) => 0.05 * b.data.coil.airFlow);
  const frost = frostFound(rig);
  const rooms = data.units.map(() => ({
    temperature: indoor,
    humidity: room.humidity,
    load: 0,
    waterLoad: 0,
    temperatureFound: indoor,
    humidityFound: room.humidity,
  }));
  return {
    time: 0,
    regime: 'still',
    turning: false,
    x: [ln(p), ln(p), hWarm / 1e5, ln(p) - 0.03],
    jacobian: null,
    walls,
    openings,
    flows,
    shell: outdoor,
    inputs: {
      dt: 1,
      walls,
      shell: outdoor,
      massHigh,
      pool: 0,
      openings,
      flows,
      speed: 0.5,
      exchange: 1,
      rooms,
      frost,
      controls,
      fans: false,
    },
    charge,
    massHigh,
    pool: 0,
    energyHigh: highCold ? energyCold : energyWarm,
    energyLow: highCold ? energyWarm : energyCold,
    debtHigh: 0,
    debtLow: 0,
    speed: 0.5,
    speedError: 0,
    exchange: 1,
    outdoors,
    outdoorsFor: 0,
    valveErrors: branches.map(() => 0),
    gasSensed: branches.map((b) => b.air.temperature),
    liquidSensed: branches.map((b) => b.air.temperature),
    dischargeSensed: outdoor,
    pipes: [outdoor, outdoor, outdoor],
    rooms,
    frost,
    freezingFor: 0,
    meltingFor: null,
    slowFor: 0,
    sweepingFor: null,
    turnedFrom: null,
    demands,
    routing: demands,
    unitStates: unitStatesOf(rig, demands),
    controller: 'off',
    restartIn: 0,
    runningFor: 0,
    limitFor: 0,
    trips: 0,
    handOver: 0,
    rate: 1,
  };
}
