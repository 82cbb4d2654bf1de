/**
 * One step of a network that stands still or is just starting: all that hangs on the hot side is one vessel, the rest
 * another; valves, leak and, while they turn, the compressors join them. Explicit in short substeps; mass and energy are
 * conserved exactly.
 */
import * as L from '../fluids/layout';
import { exp, ln } from '../math/elementary';
import { nozzleFlux } from '../parts/compressor';
import { LiquidPath, type LiquidPathData } from '../parts/metering';
import { motorLossFactor, slipPerWatt } from '../parts/motor';
import { Vessel } from '../solve/vessels';
import { stillCoil } from '../solve/walls';
import type { NetworkRig } from './rig';
import type { NetworkState } from './state';
import { highVolume, totalVolume } from './volumes';

const SUBSTEP = 0.5;
const PIPE_TO_AIR = 400;
const PIPE_TO_GAS = 15;

export interface StillResult {
  readonly state: NetworkState;
  readonly high: Vessel;
  readonly low: Vessel;
  readonly compressorFlow: number;
  readonly power: number;
  /** W out of each branch's air, and water kg/s */
  readonly airHeat: readonly number[];
  readonly water: readonly number[];
}

const path = new LiquidPath(L.BLOCK_SIZE);

/** All valves between the two vessels as one device. */
function joined(rig: NetworkRig, state: NetworkState): LiquidPathData {
  const { network, data } = rig;
  let area = 0;
  network.branches.forEach((b, i) => {
    // between the vessels lie the valves of what boils; those of what condenses are inside the high one
    if (b.role === 'condenser') return;
    area += b.data.valve.area * state.openings[i] * b.effective.metering;
  });
  return { drier: 0, line: data.pipes.liquidDrop, lift: 0, area, throat: 0.6 };
}

/** @param dt whole seconds; 0 only evaluates. Throws PhysicsError where a vessel leaves the tables. */
export function stillStep(rig: NetworkRig, from: NetworkState, dt: number): StillResult {
  const { fluid, data, network, effective } = rig;
  const { compressor, branches } = network;
  const machine = effective.machine;
  const vHigh = highVolume(rig);
  const vLow = totalVolume(rig) - vHigh;
  const valves = joined(rig, from);
  const high = new Vessel();
  const low = new Vessel();
  let { massHigh, energyHigh, energyLow, shell } = from;
  let walls = from.walls.map((each) => [...each]);
  let pHigh = exp(from.x[0]);
  let pLow = exp(from.x[1]);
  let hCylinder = from.x[2] * 1e5;
  let compressorFlow = 0;
  let power = 0;
  let tDischarge = from.pipes[1];
  let airHeat: number[] = [];
  let water: number[] = [];
  const substeps = Math.round(dt / SUBSTEP);
  for (let k = 0; k <= substeps; k++) {
    high.settle(fluid, massHigh, energyHigh, vHigh, pHigh);
    low.settle(fluid, from.charge - massHigh, energyLow, vLow, pLow);
    pHigh = high.pressure;
    pLow = low.pressure;
    const forward = pHigh >= pLow;
    const up = forward ? high : low;
    const hValve = forward ? up.bottomEnthalpy : up.topEnthalpy;
    path.solve(fluid, valves, up.block, hValve, hValve, forward ? pLow : pHigh, machine.drier, machine.line, 1, 0.05);
    const valveFlow = forward ? path.flow : -path.flow;
    const hTop = high.topEnthalpy;
    const leak = machine.leakArea > 0 && forward ? machine.leakArea * nozzleFlux(pHigh, high.block[L.RHO_V], pLow) : 0;
    hCylinder = low.topEnthalpy;
    const held = data.compressor.shellCapacity / SUBSTEP;
    let hDischarge = 0;
    compressorFlow = 0;
    power = 0;
    if (from.turning) {
      compressor.run(
        fluid,
        low.block,
        high.block,
        hCylinder,
        data.compressor.ratedSpeed * from.speed,
        0,
        motorLossFactor(data.motor, 0, machine.voltage),
        slipPerWatt(data.motor, 0, machine.voltage),
        rig.conditions.outdoor,
        shell,
        SUBSTEP,
        machine.displacement,
      );
      compressorFlow = compressor.massFlow;
      hDischarge = compressor.hDischarge;
      tDischarge = compressor.tDischarge;
      power = compressor.power;
    }
    const coils = branches.map((b, i) => {
      const hot = b.role === 'condenser';
      const mass = hot ? massHigh : from.charge - massHigh;
      return stillCoil(b.data.coil, b.air, hot ? high : low, walls[i], SUBSTEP, from.turning, mass);
    });
    airHeat = coils.map((each) => each.airHeat);
    water = coils.map((each) => each.water);
    if (k === substeps) break;
    shell = from.turning
      ? compressor.shell
      : (held * shell + data.compressor.shellToAir * rig.conditions.outdoor) / (held + data.compressor.shellToAir);
    walls = coils.map((each) => each.walls);
    let heatHigh = 0;
    let heatLow = 0;
    coils.forEach((each, i) => {
      if (branches[i].role === 'condenser') heatHigh += each.heat;
      else heatLow += each.heat;
    });
    massHigh += SUBSTEP * (compressorFlow - valveFlow - leak);
    energyHigh += SUBSTEP * (compressorFlow * hDischarge - valveFlow * hValve - leak * hTop + heatHigh);
    energyLow += SUBSTEP * (valveFlow * hValve + leak * hTop - compressorFlow * hCylinder + heatLow);
  }
  return {
    state: {
      ...from,
      time: from.time + dt,
      regime: 'still',
      x: [ln(pHigh), ln(pLow), hCylinder / 1e5, ln(pHigh) - 0.03],
      jacobian: null,
      walls,
      shell,
      massHigh,
      pool: 0,
      energyHigh,
      energyLow,
      handOver: 0,
      pipes: pipesAfter(rig, from, low.temperature, tDischarge, high.temperature, dt),
    },
    high,
    low,
    compressorFlow,
    power,
    airHeat,
    water,
  };
}

function pipesAfter(
  rig: NetworkRig,
  from: NetworkState,
  suction: number,
  discharge: number,
  liquid: number,
  dt: number,
): [number, number, number] {
  const lag = from.turning ? PIPE_TO_GAS : PIPE_TO_AIR;
  const share = dt / (dt + lag);
  const { outdoor } = rig.conditions;
  const toward = from.turning ? [suction, discharge, liquid] : [outdoor, outdoor, outdoor];
  return [0, 1, 2].map((i) => from.pipes[i] + share * (toward[i] - from.pipes[i])) as [number, number, number];
}
