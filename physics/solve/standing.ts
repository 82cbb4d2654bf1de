/**
 * The machine after a long stop: liquid has gone to the coldest part and sets the pressure; the rest holds vapour at the
 * same pressure. Nitrogen spreads over all the gas and adds its own pressure.
 */
import type { FluidTable } from '../fluids/fluid';
import * as L from '../fluids/layout';
import { ln } from '../math/elementary';
import { WALL_FIELDS } from '../parts/coil';
import type { Controls } from '../types';
import { freshColdStore } from './coldStore';
import type { Rig } from './compile';
import type { Effective, MachineData } from './effective';
import { pumpedDown } from './pumpedDown';
import type { CircuitState } from './state';

export function totalVolume(data: MachineData): number {
  const l = data.lines;
  return (
    data.condenser.volume +
    data.evaporator.volume +
    data.compressor.shellVolume +
    l.dischargeVolume +
    l.liquidVolume +
    l.liquidLineVolume +
    l.expansionVolume +
    l.suctionVolume +
    (data.receiver?.volume ?? 0)
  );
}

/** Volume of the high side (discharge, condenser, receiver, liquid line) and of the rest, m3. */
export function highVolume({ data }: Pick<Rig, 'data'>): number {
  const l = data.lines;
  return data.condenser.volume + l.dischargeVolume + l.liquidVolume + l.liquidLineVolume + (data.receiver?.volume ?? 0);
}

/** Whether a shut solenoid keeps the two sides apart at rest. */
export function keptApart(data: MachineData, effective: Effective): boolean {
  return data.coldStore !== undefined && effective.solenoidPassing === 0;
}

export function lowVolume(rig: Rig): number {
  return totalVolume(rig.data) - highVolume(rig);
}

/**
 * Standing pressure, Pa absolute; that of the high side where a shut solenoid keeps the sides apart.
 * @param outdoor @param indoor air temperatures, K, that the two halves have taken on
 */
export function standingPressure(
  fluid: FluidTable,
  data: MachineData,
  effective: Effective,
  outdoor: number,
  indoor: number,
): number {
  const apart = keptApart(data, effective);
  const cold = apart || outdoor < indoor ? outdoor : indoor;
  const all = totalVolume(data);
  const volume = apart ? highVolume({ data }) : all;
  const p = standingAt(fluid, effective.charge, volume, cold);
  const spread = apart ? all / volume : 1;
  return p + spread * effective.nitrogen * fluid.pDew(298.15) * (cold / 298.15);
}

/** Pressure (Pa) of `charge` kg in `volume` m3 whose coldest part is at `cold` K. */
export function standingAt(fluid: FluidTable, charge: number, volume: number, cold: number): number {
  const block = new Float64Array(L.BLOCK_SIZE);
  let p = fluid.pBubble(cold);
  fluid.setPressure(p, block);
  if (charge < block[L.RHO_V] * volume) {
    // not enough refrigerant for liquid: all of it is vapour
    let low = fluid.pMin * 1.001;
    let high = p;
    const out = new Float64Array(L.OUT_SIZE);
    for (let i = 0; i < 60; i++) {
      p = 0.5 * (low + high);
      fluid.setPressure(p, block);
      fluid.state(block, fluid.hVapour(block, cold), out);
      if (out[L.OUT_RHO] * volume < charge) low = p;
      else high = p;
    }
  }
  return p;
}

/** State of the machine after a long stop in air of these temperatures: pressures equal, liquid in the colder half. */
export function standingState(
  rig: Rig,
  controls: Controls,
  room: number,
  roomHumidity: number,
  charge: number,
): CircuitState {
  const { fluid, data, env } = rig;
  const outdoor = env.outdoor;
  // the air around either side's coil
  const [highAir, lowAir] = rig.circuit.heating ? [room, outdoor] : [outdoor, room];
  const lowIsCold = lowAir <= highAir;
  const cold = lowIsCold ? lowAir : highAir;
  const warm = lowIsCold ? highAir : lowAir;
  const vHigh = highVolume(rig);
  const vLow = lowVolume(rig);
  rig.effective.charge = charge;
  const nitrogen = rig.effective.nitrogen * fluid.pDew(298.15) * (cold / 298.15);
  const p = standingPressure(fluid, data, rig.effective, outdoor, room) - nitrogen;
  const block = new Float64Array(L.BLOCK_SIZE);
  const out = new Float64Array(L.OUT_SIZE);
  fluid.setPressure(p, block);
  const warmVolume = lowIsCold ? vHigh : vLow;
  const coldVolume = lowIsCold ? vLow : vHigh;
  const hWarm = fluid.hVapour(block, warm > block[L.T_DEW] ? warm : block[L.T_DEW]);
  fluid.state(block, hWarm, out);
  const massWarm = out[L.OUT_RHO] * warmVolume;
  const massCold = charge - massWarm;
  // liquid and vapour in the cold vessel by its volume
  const v = coldVolume / massCold;
  const quality = (v - 1 / block[L.RHO_L]) / (1 / block[L.RHO_V] - 1 / block[L.RHO_L]);
  let hCold = block[L.H_L] + quality * (block[L.H_V] - block[L.H_L]);
  if (quality > 1) hCold = fluid.hVapour(block, cold > block[L.T_DEW] ? cold : block[L.T_DEW]);
  const energyWarm = massWarm * hWarm - p * warmVolume;
  const energyCold = massCold * hCold - p * coldVolume;
  const n = data.condenser.segments;
  const k = data.evaporator.segments;
  const condenserWall = new Array<number>(n * WALL_FIELDS).fill(highAir);
  const evaporatorWall = new Array<number>(k * WALL_FIELDS).fill(lowAir);
  const opening = data.control.metering === 'fixed' ? 1 : data.control.parkedOpening;
  return {
    time: 0,
    regime: 'still',
    turning: false,
    x: [ln(p), ln(p), hWarm / 1e5],
    jacobian: null,
    condenserWall,
    evaporatorWall,
    shell: outdoor,
    pipes: {
      suction: outdoor,
      compressorIn: outdoor,
      discharge: outdoor,
      liquid: outdoor,
      afterDrier: outdoor,
      meteringIn: outdoor,
      evaporatorOut: lowAir,
    },
    inputs: {
      dt: 1,
      condenserWall,
      evaporatorWall,
      shell: outdoor,
      massHigh: lowIsCold ? massWarm : massCold,
      pool: 0,
      opening,
      speed: 1,
      room,
      roomHumidity,
      controls,
    },
    charge,
    massHigh: lowIsCold ? massWarm : massCold,
    pool: 0,
    energyHigh: lowIsCold ? energyWarm : energyCold,
    energyLow: lowIsCold ? energyCold : energyWarm,
    debtHigh: 0,
    debtLow: 0,
    opening: Number.isNaN(rig.effective.stuckOpening) ? opening : rig.effective.stuckOpening,
    speed: 1,
    valveError: 0,
    speedError: 0,
    bulb: lowAir,
    sensed: { suctionLine: outdoor, evaporatorCoil: lowAir, dischargeLine: outdoor },
    room,
    roomHumidity,
    roomFound: room,
    humidityFound: roomHumidity,
    load: 0,
    waterLoad: 0,
    frost: new Array<number>(k).fill(0),
    ...(data.coldStore && { cold: freshColdStore(false) }),
    ...(data.coldStore && keptApart(data, rig.effective) && pumpedDown(rig, data.coldStore, room, charge)),
    ...reversible(rig, n),
    controller: 'off',
    restartIn: 0,
    runningFor: 0,
    limitFor: 0,
    trips: 0,
    handOver: 0,
    rate: 1,
  };
}

/** What only a machine with a reversing valve carries; `n` segments of the coil that condenses. */
export function reversible(
  { data, circuit }: Rig,
  n: number,
): Pick<CircuitState, 'direction' | 'condenserIce' | 'slideMoved' | 'defrost'> {
  if (!data.reversingValve) return {};
  return {
    direction: circuit.heating ? 'heating' : 'cooling',
    condenserIce: new Array<number>(n).fill(0),
    slideMoved: false,
    defrost: { freezing: 0, running: 0, sensor: Number.NaN },
  };
}
