/**
 * The machine after a long stop: liquid has gone to the coldest part and sets the pressure; the rest holds vapour at the
 * same pressure. Nitrogen spreads over all the gas and adds its own pressure.
 */
import type { FluidTable } from '../fluids/fluid';
import * as L from '../fluids/layout';
import type { Effective, MachineData } from './effective';

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
    l.suctionVolume
  );
}

/**
 * Standing pressure, Pa absolute.
 * @param outdoor @param indoor air temperatures, K, that the two halves have taken on
 */
export function standingPressure(
  fluid: FluidTable,
  data: MachineData,
  effective: Effective,
  outdoor: number,
  indoor: number,
): number {
  const cold = outdoor < indoor ? outdoor : indoor;
  const block = new Float64Array(L.BLOCK_SIZE);
  const volume = totalVolume(data);
  let p = fluid.pBubble(cold);
  fluid.setPressure(p, block);
  if (effective.charge < block[L.RHO_V] * volume) {
    // not enough refrigerant for liquid: all of it is vapour
    let low = fluid.pMin * 1.001;
    let high = p;
    const out = new Float64Array(L.OUT_SIZE);
    for (let i = 0; i < 60; i++) {
      p = 0.5 * (low + high);
      fluid.setPressure(p, block);
      fluid.state(block, fluid.hVapour(block, cold), out);
      if (out[L.OUT_RHO] * volume < effective.charge) low = p;
      else high = p;
    }
  }
  return p + effective.nitrogen * fluid.pDew(298.15) * (cold / 298.15);
}
