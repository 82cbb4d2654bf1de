/** A cold room after a pump-down and a long rest: what each side holds. */
import type { FluidTable } from '../fluids/fluid';
import * as L from '../fluids/layout';
import { ln } from '../math/elementary';
import type { ColdStoreData } from './coldStore';
import type { Rig } from './compile';
import { highVolume, lowVolume } from './standing';
import type { CircuitState } from './state';

/** Pressure and energy of `mass` kg that has taken on `temperature` in `volume`: liquid and vapour, or vapour alone. */
function atRest(
  fluid: FluidTable,
  mass: number,
  volume: number,
  temperature: number,
): { pressure: number; energy: number; enthalpy: number } {
  const block = new Float64Array(L.BLOCK_SIZE);
  const out = new Float64Array(L.OUT_SIZE);
  const density = mass / volume;
  const vapourAt = (p: number): number => {
    fluid.setPressure(p, block);
    const h = fluid.hVapour(block, temperature > block[L.T_DEW] ? temperature : block[L.T_DEW]);
    fluid.state(block, h, out);
    return h;
  };
  let p = fluid.pBubble(temperature);
  fluid.setPressure(p, block);
  let h: number;
  if (density > block[L.RHO_V]) {
    const quality = (1 / density - 1 / block[L.RHO_L]) / (1 / block[L.RHO_V] - 1 / block[L.RHO_L]);
    h = block[L.H_L] + quality * (block[L.H_V] - block[L.H_L]);
  } else {
    let low = fluid.pMin * 1.001;
    let high = fluid.pDew(temperature);
    for (let i = 0; i < 60; i++) {
      p = 0.5 * (low + high);
      vapourAt(p);
      if (out[L.OUT_RHO] < density) low = p;
      else high = p;
    }
    h = vapourAt(p);
  }
  return { pressure: p, enthalpy: h, energy: mass * h - p * volume };
}

/**
 * The two sides of a cold room that was pumped down: a shut solenoid keeps them apart. The low side holds vapour at a
 * pressure between the switch's two, the high side all the rest at the temperature of the outdoor air.
 */
export function pumpedDown(
  rig: Rig,
  store: ColdStoreData,
  room: number,
  charge: number,
): Pick<CircuitState, 'x' | 'massHigh' | 'energyHigh' | 'energyLow'> {
  const { fluid, env } = rig;
  const vLow = lowVolume(rig);
  const block = new Float64Array(L.BLOCK_SIZE);
  const out = new Float64Array(L.OUT_SIZE);
  const pLow = 0.5 * (store.cutOut + store.cutIn);
  fluid.setPressure(pLow, block);
  const hLow = fluid.hVapour(block, room > block[L.T_DEW] ? room : block[L.T_DEW]);
  fluid.state(block, hLow, out);
  const massLow = Math.min(out[L.OUT_RHO] * vLow, 0.5 * charge);
  const low = atRest(fluid, massLow, vLow, room);
  const high = atRest(fluid, charge - massLow, highVolume(rig), env.outdoor);
  return {
    x: [ln(high.pressure), ln(low.pressure), low.enthalpy / 1e5],
    massHigh: charge - massLow,
    energyHigh: high.energy,
    energyLow: low.energy,
  };
}
