/**
 * Ice between the fins of a cooler: it narrows the passage, so the fan moves less air, and lies as a layer on the fins.
 * Laminar flow between plates: resistance as 1/gap³ (textbook). How much fills the passage, and what the layer resists,
 * are a machine's own numbers; order of magnitude from frost of 300–400 kg/m3 and 0.4 W/(m K), from memory.
 */
import { exp, ln } from '../math/elementary';

export interface IceData {
  /** kg that would fill the passages of the whole coil */
  readonly full: number;
  /** K/W of the layer over the whole coil when it fills half the passage */
  readonly resistance: number;
  /** W/K between a segment's wall and the ice that melts on it */
  readonly melt: number;
}

/** Even a coil frozen solid lets a little air round its edges. */
const MOST = 0.92;

/** Share of the passage that `kg` of ice fill, 0…1. */
export function passageFilled(ice: IceData, kg: number): number {
  const share = kg / ice.full;
  return share < MOST ? share : MOST;
}

/**
 * Share of clean air flow that ice takes away.
 * @param pathShare share of the fan's shut-off pressure that the clean path takes at the design point (`FanData.flatness`)
 */
export function airLost(filled: number, pathShare: number): number {
  const gap = 1 - filled;
  return 1 - 1 / Math.sqrt(1 - pathShare + pathShare / (gap * gap * gap));
}

/** kg of ice that take away this share of clean air flow: the inverse of `airLost`. */
export function iceFor(ice: IceData, lost: number, pathShare: number): number {
  if (lost <= 0) return 0;
  const kept = 1 - lost;
  const resistance = (1 / (kept * kept) - 1 + pathShare) / pathShare;
  return ice.full * (1 - exp(-ln(resistance) / 3));
}

/** Factor on the air-side conductance `ua` (W/K, fins included) by the layer's own resistance. */
export function throughLayer(ice: IceData, filled: number, ua: number): number {
  return 1 / (1 + 2 * filled * ice.resistance * ua);
}
