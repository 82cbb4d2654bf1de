/**
 * What eyes make of the machine's parts as they are, whether it runs or stands: dirt, fans, valve stems, a bent pipe.
 */
import { passageFilled } from './parts/ice';
import { LIQUID_BORE } from './parts/line';
import type { Rig } from './solve/compile';
import { panWater } from './solve/held';
import type { ControllerState, Controls, Looks } from './types';

/** Discharge coefficient of a sharp narrowing (textbook value, from memory). */
const CONTRACTION = 0.7;

/** K of a coil over its air at which a sensor half out of its pocket reads half of it too low (ours, no source). */
const SENSED = 10;

/**
 * What the display of the thermostat or of the unit says is amiss, on a scale of its own: nothing, a limit that stopped the
 * machine, its safety circuit open, a sensor that it does not believe. It never says which or why.
 */
export const DISPLAYED = { nothing: 0, limit: 0.25, safety: 0.5, sensor: 0.75 } as const;

export function displayOf(controller: ControllerState): number {
  if (controller === 'held-by-safety-circuit') return DISPLAYED.safety;
  if (controller === 'held-by-sensor') return DISPLAYED.sensor;
  return controller.startsWith('stopped-on-') ? DISPLAYED.limit : DISPLAYED.nothing;
}

/** The looks that follow from what the parts are; the rest follows from what flows through them. */
export function looksOfParts(
  rig: Rig,
  controls: Controls,
): Omit<Looks, 'sightGlass' | 'evaporatorFrost' | 'receiverLevel' | 'evaporatorIce' | 'display'> {
  const { effective, data, ice } = rig;
  return {
    filterDust: effective.filterLost,
    condenserDirt: effective.condenserLost,
    evaporatorDirt: effective.evaporatorLost,
    condenserFanSpeed: controls.outdoorFanRunning ? effective.outdoorFanSpeed : 0,
    evaporatorFanSpeed: controls.indoorFanRunning ? effective.indoorFanSpeed : 0,
    bulbContact: 1 - effective.bulbLoose,
    liquidLineKink: flattened(effective.line - data.liquid.line * (1 + effective.linesLonger), LIQUID_BORE),
    outdoorIce: data.outdoorIce ? passageFilled(data.outdoorIce, ice) : 0,
    outdoorSensorContact: SENSED / (SENSED + effective.defrostNotEnding),
    suctionValveOpen: Math.sqrt(data.lines.inletDrop / effective.suctionValve),
    lineCharged: 1 - (effective.lineUncharged * LIQUID_BORE) / data.lines.liquidLineVolume,
    linesPlanned: 1 / (1 + effective.linesLonger),
    suctionSensorContact: 1 - effective.loose.suctionLine,
    coilSensorContact: 1 - effective.loose.evaporatorCoil,
    condensatePan: panWater(rig),
  };
}

/** Share of a bore (m2) that a kink takes whose pressure drop is `coefficient`·m²/ρ. A drop that bites needs a pipe all but shut. */
export function flattened(coefficient: number, bore: number): number {
  if (coefficient <= 0) return 0;
  const left = 1 / (CONTRACTION * Math.sqrt(2 * coefficient) * bore);
  return left < 1 ? 1 - left : 0;
}
