/** Draws that belong to a callout rather than to an instrument. */
import type { Nuisance } from '../../physics/types';
import { type Stream, stream } from '../instruments/streams';

/**
 * How far machines of one kind differ without being faulty: half-widths of the multipliers, taken as 2 standard
 * deviations. Common practice, no source: charge by weight ±3 %, air flows and coil conductances as installed,
 * tolerance of compressor and metering device as made, supply voltage ±2 %.
 */
export const NUISANCE_SPREAD: Readonly<Record<keyof Nuisance, number>> = {
  charge: 0.03,
  condenserAir: 0.07,
  evaporatorAir: 0.07,
  condenserUa: 0.06,
  evaporatorUa: 0.06,
  displacement: 0.02,
  meteringArea: 0.04,
  voltage: 0.02,
};

/** One machine's own differences. Draws in the order of NUISANCE_SPREAD. */
export function drawNuisance(source: Stream): Nuisance {
  const drawn = { ...NUISANCE_SPREAD };
  for (const name of Object.keys(NUISANCE_SPREAD) as (keyof Nuisance)[]) {
    drawn[name] = 1 + 0.5 * NUISANCE_SPREAD[name] * source.normal();
  }
  return drawn;
}

/** The differences of the machine of a callout; the same in every attempt at it. */
export function machineNuisance(machineSeed: string): Nuisance {
  return drawNuisance(stream(`${machineSeed}/machine/nuisance`));
}
