import { PhysicsError } from '../errors';
import { type WetState, wetStateAt, wetStateOfQuality } from './blend/blendDome';
import type { FluidEos, Saturation } from './fluidEos';
import { EOS } from './helmholtz';

export type FluidPhase = 'liquid' | 'two-phase' | 'vapour' | 'supercritical';

/** A pair that fixes a state: Pa absolute, J/kg (IIR), K, quality 0 ... 1. */
export type PointInput =
  | { readonly p: number; readonly h: number }
  | { readonly t: number; readonly q: number }
  | { readonly p: number; readonly t: number };

/** A state: K, Pa, J/kg, J/(kg K), kg/m3 (homogeneous in the dome); q is null outside the dome. */
export interface FluidPoint {
  readonly t: number;
  readonly p: number;
  readonly h: number;
  readonly s: number;
  readonly rho: number;
  readonly q: number | null;
  readonly phase: FluidPhase;
}

/** Saturation is not solved above this share of the critical pressure: the two phases can no longer be told apart. */
const SATURATION_LIMIT = 0.99;
/** Highest pressure accepted, Pa, where the paper itself allows more. */
const P_LIMIT = 70e6;
/** Below this share of the critical temperature a liquid's density is close to its saturated one. */
const COLD = 0.97;
/** Closer to saturation than this, temperature and pressure do not fix a pure fluid's state, K. */
const ON_THE_LINE = 1e-6;

/**
 * One exact state straight from the equation of state; microseconds, not for use inside a solver.
 * A pseudo-pure blend runs linearly in quality between its bubble and dew temperature; a blend by its components is in
 * phase equilibrium throughout, with q by mass.
 * Throws `bad-input` for values that are no numbers or do not fix a state, `range` outside the equation's limits.
 */
export function fluidPoint(fluid: FluidEos, input: PointInput): FluidPoint {
  for (const [name, value] of Object.entries(input)) {
    if (typeof value !== 'number' || !Number.isFinite(value)) throw badInput(fluid, `${name} is not a finite number`);
  }
  if ('q' in input) return fromQuality(fluid, input.t, input.q);
  requirePressure(fluid, input.p);
  if ('h' in input) return fromEnthalpy(fluid, input.p, input.h);
  return fromTemperature(fluid, input.p, input.t);
}

function fromQuality(fluid: FluidEos, t: number, q: number): FluidPoint {
  if (!(q >= 0 && q <= 1)) throw badInput(fluid, `q ${q} is outside 0 to 1`);
  const { validRange } = fluid.data;
  const top = highestSaturation(fluid);
  const tTop = top.tBubble + q * (top.tDew - top.tBubble);
  if (!(t >= validRange.tMin && t <= tTop)) throw outOfRange(fluid, 't', t, validRange.tMin, tTop, 'K, saturated');
  if (q === 0) return { ...mixture(fluid, fluid.saturationAtBubble(t), 0), t };
  if (q === 1 || !fluid.glides) return { ...mixture(fluid, fluid.saturationAtDew(t), q), t };
  if (fluid.blend !== null) return wet(fluid, wetStateOfQuality(fluid.blend, t, q));
  let sat = fluid.saturationAtBubble(t);
  for (let i = 0; i < 50; i++) {
    const error = t - (sat.tBubble + q * (sat.tDew - sat.tBubble));
    if (Math.abs(error) < 1e-11 * t) break;
    const slope = sat.tBubbleSlope + q * (sat.tDewSlope - sat.tBubbleSlope);
    sat = fluid.saturationAtPressure(sat.p + error / slope);
  }
  return { ...mixture(fluid, sat, q), t };
}

function fromTemperature(fluid: FluidEos, p: number, t: number): FluidPoint {
  requireTemperature(fluid, t);
  const { tCritical, pCritical } = fluid.data;
  if (p >= pCritical) return single(fluid, t, dense(fluid, p, t), p);
  const sat = saturationBelowCritical(fluid, p);
  if (!fluid.glides && Math.abs(t - sat.tDew) < ON_THE_LINE) {
    throw badInput(fluid, `p ${p} Pa and t ${t} K lie on the saturation line and do not fix a state: give q or h`);
  }
  if (t > sat.tDew) return single(fluid, t, gas(fluid, p, t, sat), p);
  if (t < sat.tBubble) return single(fluid, t, liquid(fluid, p, t, sat), p);
  if (t > tCritical) throw outOfRange(fluid, 't', t, fluid.data.validRange.tMin, tCritical, 'K');
  if (fluid.blend !== null) return wet(fluid, wetStateAt(fluid.blend, sat, 't', t));
  return mixture(fluid, sat, (t - sat.tBubble) / (sat.tDew - sat.tBubble));
}

function fromEnthalpy(fluid: FluidEos, p: number, h: number): FluidPoint {
  const { pCritical, validRange } = fluid.data;
  const { tMin, tMax } = validRange;
  if (p >= pCritical) return isobar(fluid, p, h, tMin, tMax, (t) => dense(fluid, p, t));
  const sat = saturationBelowCritical(fluid, p);
  const hl = fluid.enthalpy(sat.tBubble, sat.rhoLiquid);
  const hv = fluid.enthalpy(sat.tDew, sat.rhoVapour);
  if (h > hv) return isobar(fluid, p, h, sat.tDew, tMax, (t) => gas(fluid, p, t, sat));
  if (h < hl) return isobar(fluid, p, h, tMin, sat.tBubble, (t) => liquid(fluid, p, t, sat));
  if (fluid.blend !== null) return wet(fluid, wetStateAt(fluid.blend, sat, 'h', h - fluid.hOffset));
  return mixture(fluid, sat, (h - hl) / (hv - hl));
}

/** The temperature on an isobar that has a given enthalpy: Newton on h(T), kept inside its bracket. */
function isobar(
  fluid: FluidEos,
  p: number,
  h: number,
  tLow: number,
  tHigh: number,
  density: (t: number) => number,
): FluidPoint {
  const o = fluid.eos.out;
  const hLow = fluid.enthalpy(tLow, density(tLow));
  const hHigh = fluid.enthalpy(tHigh, density(tHigh));
  if (!(h >= hLow && h <= hHigh)) throw outOfRange(fluid, 'h', h, hLow, hHigh, `J/kg at ${p} Pa`);
  let low = tLow;
  let high = tHigh;
  let t = tLow + ((tHigh - tLow) * (h - hLow)) / (hHigh - hLow);
  for (let i = 0; i < 100; i++) {
    const rho = density(t);
    const error = h - fluid.enthalpy(t, rho);
    if (error > 0) low = t;
    else high = t;
    const step = error / o[EOS.CP];
    if (Math.abs(step) < 1e-12 * t || high - low < 1e-12 * t) return single(fluid, t, rho, p);
    t = t + step > low && t + step < high ? t + step : 0.5 * (low + high);
  }
  throw new PhysicsError('no-convergence', `${fluid.data.id}: no temperature found for h ${h} J/kg at p ${p} Pa`, {
    fluid: fluid.data.id,
    pressure: p,
    enthalpy: h,
  });
}

function gas(fluid: FluidEos, p: number, t: number, sat: Saturation): number {
  const ideal = (p * fluid.data.molarMass) / (fluid.data.gasConstant * t);
  return densityBetween(fluid, p, t, 0.2 * ideal, sat.rhoVapour * (1 + 1e-9), ideal);
}

function liquid(fluid: FluidEos, p: number, t: number, sat: Saturation): number {
  if (t > COLD * fluid.data.tCritical) {
    const saturated = fluid.massDensity(fluid.data.ancillaries.rhoL, t);
    // The second bound keeps clear of false roots inside the dome, which the equation of R-744 has close to its top.
    const low = Math.max(sat.rhoLiquid * (1 - 1e-9), 0.93 * saturated);
    return densityBetween(fluid, p, t, low, densest(fluid), Math.max(sat.rhoLiquid, saturated));
  }
  return cold(fluid, p, t);
}

/** Liquid well below the critical temperature: near its saturated density, clear of false roots of the equation. */
function cold(fluid: FluidEos, p: number, t: number): number {
  const saturated = fluid.massDensity(fluid.data.ancillaries.rhoL, t);
  return densityBetween(fluid, p, t, 0.9 * saturated, densest(fluid), saturated);
}

/** Above the critical pressure there is one density only. */
function dense(fluid: FluidEos, p: number, t: number): number {
  if (t < COLD * fluid.data.tCritical) return cold(fluid, p, t);
  const ideal = (p * fluid.data.molarMass) / (fluid.data.gasConstant * t);
  const high = densest(fluid);
  return densityBetween(fluid, p, t, Math.min(0.2 * ideal, 0.1 * high), high, Math.min(ideal, 0.8 * high));
}

/** A density that no accepted state reaches, kg/m3: the equations turn unphysical not far above it. */
function densest(fluid: FluidEos): number {
  return 1.08 * fluid.massDensity(fluid.data.ancillaries.rhoL, fluid.data.validRange.tMin);
}

/** Density between two that hold it, by Newton, halving where that would leave the bracket. */
function densityBetween(fluid: FluidEos, p: number, t: number, from: number, to: number, start: number): number {
  let low = from;
  let high = to;
  let rho = start;
  for (let i = 0; i < 200; i++) {
    const o = fluid.eos.evaluate(t, rho);
    const error = p - o[EOS.P];
    if (error > 0) low = rho;
    else high = rho;
    const next = rho + error / o[EOS.P_RHO];
    const step = next > low && next < high ? next - rho : 0.5 * (low + high) - rho;
    rho += step;
    if (Math.abs(step) < 1e-13 * rho) return rho;
  }
  throw new PhysicsError('no-convergence', `${fluid.data.id}: no density found at ${t} K, ${p} Pa`, {
    fluid: fluid.data.id,
    temperature: t,
    pressure: p,
  });
}

function single(fluid: FluidEos, t: number, rho: number, p: number): FluidPoint {
  const o = fluid.eos.evaluate(t, rho);
  const { tCritical, pCritical } = fluid.data;
  const dense = t < tCritical && (p >= pCritical || rho > fluid.data.rhoReducing * fluid.data.molarMass);
  const phase = dense ? 'liquid' : p >= pCritical ? 'supercritical' : 'vapour';
  return { t, p, h: o[EOS.H] + fluid.hOffset, s: o[EOS.S] + fluid.sOffset, rho, q: null, phase };
}

function wet(fluid: FluidEos, { t, p, h, s, rho, q }: WetState): FluidPoint {
  return { t, p, h: h + fluid.hOffset, s: s + fluid.sOffset, rho, q, phase: 'two-phase' };
}

function mixture(fluid: FluidEos, sat: Saturation, q: number): FluidPoint {
  const { sOffset, hOffset, eos } = fluid;
  eos.evaluate(sat.tBubble, sat.rhoLiquid);
  const hl = eos.out[EOS.H] + hOffset;
  const sl = eos.out[EOS.S] + sOffset;
  eos.evaluate(sat.tDew, sat.rhoVapour);
  const hv = eos.out[EOS.H] + hOffset;
  const sv = eos.out[EOS.S] + sOffset;
  return {
    t: sat.tBubble + q * (sat.tDew - sat.tBubble),
    p: sat.p,
    h: hl + q * (hv - hl),
    s: sl + q * (sv - sl),
    rho: 1 / ((1 - q) / sat.rhoLiquid + q / sat.rhoVapour),
    q,
    phase: 'two-phase',
  };
}

const highest = new WeakMap<FluidEos, Saturation>();

function highestSaturation(fluid: FluidEos): Saturation {
  let top = highest.get(fluid);
  if (top === undefined) {
    top = fluid.saturationAtPressure(SATURATION_LIMIT * fluid.data.pCritical);
    highest.set(fluid, top);
  }
  return top;
}

function saturationBelowCritical(fluid: FluidEos, p: number): Saturation {
  const limit = SATURATION_LIMIT * fluid.data.pCritical;
  if (p > limit)
    throw outOfRange(fluid, 'p', p, 0, limit, 'Pa (saturation is not solved closer to the critical point)');
  return fluid.saturationAtPressure(p);
}

function requirePressure(fluid: FluidEos, p: number): void {
  const { pMax, tMin } = fluid.data.validRange;
  const low = fluid.ancillaryDew(tMin);
  const high = Math.min(pMax, P_LIMIT);
  if (!(p >= low && p <= high)) throw outOfRange(fluid, 'p', p, low, high, 'Pa');
}

function requireTemperature(fluid: FluidEos, t: number): void {
  const { tMin, tMax } = fluid.data.validRange;
  if (!(t >= tMin && t <= tMax)) throw outOfRange(fluid, 't', t, tMin, tMax, 'K');
}

function badInput(fluid: FluidEos, message: string): PhysicsError {
  return new PhysicsError('bad-input', `${fluid.data.id}: ${message}`, { fluid: fluid.data.id });
}

function outOfRange(
  fluid: FluidEos,
  name: string,
  value: number,
  low: number,
  high: number,
  unit: string,
): PhysicsError {
  return new PhysicsError('range', `${fluid.data.id}: ${name} ${value} is outside ${low} to ${high} ${unit}`, {
    fluid: fluid.data.id,
    [name]: value,
    low,
    high,
  });
}
