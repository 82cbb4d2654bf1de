/**
 * One step of a machine that stands still or is just starting: two vessels joined by the metering device, the leak and,
 * while it turns, the compressor. Explicit in short substeps; mass and energy are conserved exactly.
 */
import * as L from '../fluids/layout';
import { exp, ln } from '../math/elementary';
import { nozzleFlux } from '../parts/compressor';
import { motorLossFactor, slipPerWatt } from '../parts/motor';
import { meteringOpening, passing } from './coldStore';
import type { Rig } from './compile';
import { motorVoltage } from './effective';
import { highVolume, lowVolume } from './standing';
import type { CircuitState, PipeTemps } from './state';
import { Vessel } from './vessels';
import { frostStep, stillCoil } from './walls';

const SUBSTEP = 0.5;
/** s for a pipe to take on the temperature of the air around it, and of the gas that starts to move in it */
const PIPE_TO_AIR = 400;
const PIPE_TO_GAS = 15;

export interface StillResult {
  readonly state: CircuitState;
  readonly high: Vessel;
  readonly low: Vessel;
  /** last substep's flows, kg/s */
  readonly compressorFlow: number;
  readonly valveFlow: number;
  readonly power: number;
  /** W, kg/s out of the room's air, and out of the outdoor air */
  readonly airHeat: number;
  readonly water: number;
  readonly outdoorHeat: number;
  readonly outdoorWater: number;
  readonly condenserHeat: number;
}

/** @param dt whole seconds; 0 only evaluates. Throws PhysicsError where a vessel leaves the tables. */
export function stillStep(rig: Rig, from: CircuitState, dt: number): StillResult {
  const { fluid, data, effective, circuit } = rig;
  const vHigh = highVolume(rig);
  const vLow = lowVolume(rig);
  const high = new Vessel();
  const low = new Vessel();
  let massHigh = from.massHigh;
  let energyHigh = from.energyHigh;
  let energyLow = from.energyLow;
  let condenserWall = [...from.condenserWall];
  let evaporatorWall = [...from.evaporatorWall];
  let frost = from.frost;
  let { condenserIce } = from;
  let shell = from.shell;
  let pHigh = exp(from.x[0]);
  let pLow = exp(from.x[1]);
  let hCylinder = from.x[2] * 1e5;
  let compressorFlow = 0;
  let valveFlow = 0;
  let power = 0;
  let airHeat = 0;
  let water = 0;
  let outdoorHeat = 0;
  let outdoorWater = 0;
  let condenserHeat = 0;
  let tDischarge = from.pipes.discharge;
  const coolerIce = circuit.heating ? data.outdoorIce : data.ice;
  const leakArea = effective.leakArea + effective.reversingLeak;
  const substeps = Math.round(dt / SUBSTEP);
  const share = passing(effective, from);
  let line = from.cold?.line ?? 0;
  const coilHeat = from.cold?.coilHeat ?? 0;
  const crankcaseHeat = from.cold?.crankcaseHeat ?? 0;

  for (let k = 0; k <= substeps; k++) {
    high.settle(fluid, massHigh, energyHigh, vHigh, pHigh);
    low.settle(fluid, from.charge - massHigh, energyLow, vLow, pLow);
    pHigh = high.pressure;
    pLow = low.pressure;

    // metering device, either way
    const forward = pHigh >= pLow;
    const up = forward ? high : low;
    const hValve = forward ? up.bottomEnthalpy : up.topEnthalpy;
    circuit.path.solve(
      fluid,
      data.liquid,
      up.block,
      hValve,
      hValve,
      forward ? pLow : pHigh,
      effective.drier,
      effective.line,
      meteringOpening(effective, from.opening, line > 0 ? 1 : share),
      0.01,
    );
    valveFlow = forward ? circuit.path.flow : -circuit.path.flow;
    const hTop = high.topEnthalpy;
    const leak = leakArea > 0 && forward ? leakArea * nozzleFlux(pHigh, high.block[L.RHO_V], pLow) : 0;

    let hDischarge = 0;
    compressorFlow = 0;
    power = 0;
    hCylinder = low.topEnthalpy;
    const held = data.compressor.shellCapacity / SUBSTEP;
    if (from.turning) {
      const motor = data.motor;
      circuit.compressor.run(
        fluid,
        low.block,
        high.block,
        hCylinder,
        data.compressor.ratedSpeed * from.speed,
        0,
        effective.friction * motorLossFactor(motor, effective.weakCapacitor, motorVoltage(effective)),
        slipPerWatt(motor, effective.weakCapacitor, motorVoltage(effective)),
        rig.env.outdoor,
        shell,
        SUBSTEP,
        effective.displacement,
      );
      compressorFlow = circuit.compressor.massFlow;
      hDischarge = circuit.compressor.hDischarge;
      tDischarge = circuit.compressor.tDischarge;
      power = circuit.compressor.power;
    }
    const condenser = stillCoil(
      data.condenser,
      circuit.condenserAir,
      high,
      condenserWall,
      SUBSTEP,
      from.turning,
      massHigh,
    );
    const evaporator = stillCoil(
      data.evaporator,
      circuit.evaporatorAir,
      low,
      evaporatorWall,
      SUBSTEP,
      from.turning,
      from.charge - massHigh,
    );
    const [indoor, outdoor] = circuit.heating ? [condenser, evaporator] : [evaporator, condenser];
    airHeat = indoor.airHeat;
    water = indoor.water;
    outdoorHeat = outdoor.airHeat;
    outdoorWater = outdoor.water;
    condenserHeat = -condenser.airHeat;
    if (k === substeps) break;

    shell = from.turning
      ? circuit.compressor.shell
      : (held * shell + data.compressor.shellToAir * rig.env.outdoor + crankcaseHeat) /
        (held + data.compressor.shellToAir);
    condenserWall = condenser.walls;
    evaporatorWall = evaporator.walls;
    if (coilHeat > 0) {
      const warmer = (coilHeat * SUBSTEP) / data.evaporator.wallCapacity;
      evaporatorWall = evaporatorWall.map((t) => t + warmer);
    }
    frost = frostStep(
      frost,
      evaporatorWall,
      evaporator.waterBySegment,
      data.evaporator.wallCapacity / data.evaporator.segments,
      SUBSTEP,
      coolerIce,
    );
    // with the solenoid shut the line behind it drains
    if (line > 0 && forward) line = Math.max(0, line - SUBSTEP * valveFlow);
    condenserIce =
      condenserIce &&
      frostStep(
        condenserIce,
        condenserWall,
        condenser.waterBySegment,
        data.condenser.wallCapacity / data.condenser.segments,
        SUBSTEP,
        circuit.heating ? undefined : data.outdoorIce,
      );
    massHigh += SUBSTEP * (compressorFlow - valveFlow - leak);
    energyHigh += SUBSTEP * (compressorFlow * hDischarge - valveFlow * hValve - leak * hTop + condenser.heat);
    energyLow += SUBSTEP * (valveFlow * hValve + leak * hTop - compressorFlow * hCylinder + evaporator.heat);
  }

  const pipes = stillPipes(rig, from, high, low, tDischarge, dt);
  return {
    state: {
      ...from,
      time: from.time + dt,
      regime: 'still',
      x: [ln(pHigh), ln(pLow), hCylinder / 1e5],
      jacobian: null,
      condenserWall,
      evaporatorWall,
      shell,
      frost,
      ...(condenserIce && { condenserIce }),
      pipes,
      massHigh,
      pool: 0,
      energyHigh,
      energyLow,
      handOver: 0,
      ...(from.cold && { cold: { ...from.cold, line } }),
    },
    high,
    low,
    compressorFlow,
    valveFlow,
    power,
    airHeat,
    water,
    outdoorHeat,
    outdoorWater,
    condenserHeat,
  };
}

function stillPipes(
  rig: Rig,
  from: CircuitState,
  high: Vessel,
  low: Vessel,
  tDischarge: number,
  dt: number,
): PipeTemps {
  const outdoor = rig.env.outdoor;
  const toAir = dt / (dt + PIPE_TO_AIR);
  const drift = (t: number, air: number): number => t + (air - t) * toAir;
  const p = from.pipes;
  if (!from.turning) {
    return {
      suction: drift(p.suction, outdoor),
      compressorIn: drift(p.compressorIn, outdoor),
      discharge: drift(p.discharge, outdoor),
      liquid: drift(p.liquid, outdoor),
      afterDrier: drift(p.afterDrier, outdoor),
      meteringIn: drift(p.meteringIn, outdoor),
      evaporatorOut: drift(p.evaporatorOut, rig.circuit.heating ? outdoor : from.room),
    };
  }
  const toGas = dt / (dt + PIPE_TO_GAS);
  const follow = (t: number, gas: number): number => t + (gas - t) * toGas;
  return {
    suction: follow(p.suction, low.temperature),
    compressorIn: follow(p.compressorIn, low.temperature),
    discharge: follow(p.discharge, tDischarge),
    liquid: follow(p.liquid, high.temperature),
    afterDrier: follow(p.afterDrier, high.temperature),
    meteringIn: follow(p.meteringIn, high.temperature),
    evaporatorOut: follow(p.evaporatorOut, low.temperature),
  };
}
