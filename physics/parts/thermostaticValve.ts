/**
 * Thermostatic expansion valve with external equaliser. The bulb's pressure opens it, the evaporator's outlet pressure and
 * the spring close it; lift is proportional to what is left. The bulb holds the machine's own refrigerant: while it holds
 * liquid its pressure is the saturation pressure; once all of it has boiled the gas alone carries it on (pressure limit).
 * A bulb that lost charge reaches that limit earlier, which is all that the loss does: nothing is felt before.
 * Principle: ASHRAE Handbook—Refrigeration, control devices, from memory; numbers are a machine's own.
 */
import type { FluidTable } from '../fluids/fluid';

export interface ThermostaticValveData {
  /** Pa that the spring asks for before the valve opens (static superheat at the design point) */
  readonly spring: number;
  /** Pa from just open to wide open (opening superheat of a full stroke) */
  readonly stroke: number;
  /** K at which the last liquid of a full bulb has boiled */
  readonly dryBulb: number;
  /** s of the bulb behind its pipe, and of the pin behind the pressures */
  readonly bulbLag: number;
  readonly pinLag: number;
}

/** Pa over which the bulb turns from liquid-filled to gas-filled: a solver needs no kink. */
const TURN = 6e3;
/** K over the dry point beyond which saturation no longer matters. */
const FAR = 25;

/**
 * Pressure inside the bulb, Pa.
 * @param temperature of the bulb, K; `lost` share of its charge that has leaked, 0…1
 */
export function bulbPressure(
  fluid: FluidTable,
  valve: ThermostaticValveData,
  temperature: number,
  lost: number,
): number {
  // far beyond its dry point only the gas counts, and a bulb on a hot pipe may pass the critical temperature
  const saturated = fluid.pDew(temperature < valve.dryBulb + FAR ? temperature : valve.dryBulb + FAR);
  const gas = (1 - lost) * fluid.pDew(valve.dryBulb) * (temperature / valve.dryBulb);
  const gap = saturated - gas;
  return gas + 0.5 * (gap - Math.sqrt(gap * gap + TURN * TURN));
}

/** Lift, a share of the stroke, before its stops: below 0 shut, above 1 wide open. */
export function lift(
  fluid: FluidTable,
  valve: ThermostaticValveData,
  bulb: number,
  lost: number,
  pEvaporatorOut: number,
): number {
  return (bulbPressure(fluid, valve, bulb, lost) - pEvaporatorOut - valve.spring) / valve.stroke;
}
