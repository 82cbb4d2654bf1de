import { PhysicsError } from '../errors';
import { exp } from '../math/elementary';
import { ancillary, invertAncillary, lnSlope } from './ancillary';
import { BlendLines } from './blend/blendLines';
import { EOS, Helmholtz } from './helmholtz';
import type { Ancillary, RefrigerantData } from './refrigerantData';
import type { Saturation } from './saturation';

export type { Saturation };

/** Temperature and density of a single-phase state. */
export interface SinglePhase {
  temperature: number;
  rho: number;
}

const RELATIVE_TOLERANCE = 1e-12;
const MAX_ITERATIONS = 60;

/**
 * A fluid's equation of state with its phase boundaries and the IIR reference state
 * (h = 200 kJ/kg and s = 1 kJ/(kg K) for saturated liquid at 0 °C; International Institute of Refrigeration).
 * Slow (microseconds) and exact: tables and single points are made from it, the solver does not call it.
 */
export class FluidEos {
  readonly data: RefrigerantData;
  readonly eos: Helmholtz;
  /** Phase equilibrium of a blend; null for a fluid that needs none. */
  readonly blend: BlendLines | null;
  readonly hOffset: number;
  readonly sOffset: number;

  constructor(data: RefrigerantData) {
    this.data = data;
    this.eos = new Helmholtz(data);
    this.blend = data.blend === undefined ? null : new BlendLines(data, data.blend);
    const reference = this.saturationAtBubble(273.15);
    const o = this.eos.evaluate(reference.tBubble, reference.rhoLiquid);
    this.hOffset = 200e3 - o[EOS.H];
    this.sOffset = 1e3 - o[EOS.S];
  }

  /** Whether bubble and dew temperature differ at one pressure. */
  get glides(): boolean {
    return this.data.pseudoPure || this.blend !== null;
  }

  /** Specific enthalpy, J/kg. */
  enthalpy(temperature: number, rho: number): number {
    return this.eos.evaluate(temperature, rho)[EOS.H] + this.hOffset;
  }

  /** Bubble pressure by the ancillary line, Pa. Only for a pseudo-pure fluid more than a start value. */
  ancillaryBubble(temperature: number): number {
    const { pL, pS } = this.data.ancillaries;
    return ancillary((pL ?? pS) as Ancillary, temperature);
  }

  /** Dew pressure by the ancillary line, Pa. */
  ancillaryDew(temperature: number): number {
    const { pV, pS } = this.data.ancillaries;
    return ancillary((pV ?? pS) as Ancillary, temperature);
  }

  /** Density (kg/m3) at T and p from a start value on the right side. Throws `no-convergence`. */
  density(temperature: number, p: number, start: number): number {
    let rho = start;
    for (let i = 0; i < MAX_ITERATIONS; i++) {
      const o = this.eos.evaluate(temperature, rho);
      // Inside the unstable loop Newton runs away: move outwards instead.
      const slope = o[EOS.P_RHO];
      const raw = slope > 0 ? (p - o[EOS.P]) / slope : (p > o[EOS.P] ? 0.1 : -0.1) * rho;
      const step = clamp(raw, -0.4 * rho, 0.4 * rho);
      rho += step;
      if (Math.abs(step) <= RELATIVE_TOLERANCE * rho) return rho;
    }
    throw this.stalled('density', { temperature, pressure: p });
  }

  /** State at p and h (J/kg, IIR) by Newton from `state`, which is changed in place. Throws `no-convergence`. */
  solvePressureEnthalpy(p: number, h: number, state: SinglePhase): SinglePhase {
    let { temperature, rho } = state;
    for (let i = 0; i < MAX_ITERATIONS; i++) {
      const o = this.eos.evaluate(temperature, rho);
      const pRho = o[EOS.P_RHO];
      const pT = o[EOS.P_T];
      const hT = o[EOS.CV] + pT / rho;
      const hRho = (pRho - (temperature * pT) / rho) / rho;
      const dp = p - o[EOS.P];
      const dh = h - this.hOffset - o[EOS.H];
      const det = pT * hRho - pRho * hT;
      const dT = clamp((dp * hRho - pRho * dh) / det, -0.2 * temperature, 0.2 * temperature);
      const dRho = clamp((pT * dh - hT * dp) / det, -0.4 * rho, 0.4 * rho);
      temperature += dT;
      rho += dRho;
      // Convergence is quadratic: after a step this small the next one would be rounding.
      if (Math.abs(dT) <= 1e-7 * temperature && Math.abs(dRho) <= 1e-7 * rho) {
        state.temperature = temperature;
        state.rho = rho;
        return state;
      }
    }
    throw this.stalled('state from pressure and enthalpy', { pressure: p, enthalpy: h });
  }

  /** Saturation whose bubble temperature is given; a pseudo-pure blend's dew point belongs to the same pressure. */
  saturationAtBubble(temperature: number): Saturation {
    if (this.blend !== null) return this.blend.atTemperature(temperature, 0);
    if (this.data.pseudoPure) return this.saturationAtPressure(this.ancillaryBubble(temperature));
    return this.pureSaturationAt(temperature);
  }

  /** Saturation whose dew temperature is given. */
  saturationAtDew(temperature: number): Saturation {
    if (this.blend !== null) return this.blend.atTemperature(temperature, 1);
    if (this.data.pseudoPure) return this.saturationAtPressure(this.ancillaryDew(temperature));
    return this.pureSaturationAt(temperature);
  }

  /**
   * Saturation at a pressure. `near` is a neighbouring solution to start from (needed close to the critical point).
   * Throws `no-convergence`.
   */
  saturationAtPressure(p: number, near?: Saturation): Saturation {
    if (this.blend !== null) return this.blend.atPressure(p, near);
    return this.data.pseudoPure ? this.pseudoPureSaturation(p, near) : this.pureSaturation(p, near);
  }

  /** Phase equilibrium of a pure fluid: equal pressure and Gibbs energy, Newton in (T, rho', rho''). */
  private pureSaturation(p: number, near?: Saturation): Saturation {
    const start = near ?? this.ancillaryStart(p);
    let t = start.tBubble;
    let rl = start.rhoLiquid;
    let rv = start.rhoVapour;
    for (let i = 0; i < MAX_ITERATIONS; i++) {
      const o = this.eos.evaluate(t, rl);
      const dpl = p - o[EOS.P];
      const sl = o[EOS.S];
      const gl = o[EOS.H] - t * sl + dpl / rl;
      const plRho = o[EOS.P_RHO];
      const plT = o[EOS.P_T];
      this.eos.evaluate(t, rv);
      const dpv = p - o[EOS.P];
      const sv = o[EOS.S];
      const gv = o[EOS.H] - t * sv + dpv / rv;
      const dt = clamp((gl - gv) / (sl - sv), -0.02 * t, 0.02 * t);
      const dl = clamp((dpl - plT * dt) / plRho, -0.2 * rl, 0.2 * rl);
      const dv = clamp((dpv - o[EOS.P_T] * dt) / o[EOS.P_RHO], -0.3 * rv, 0.3 * rv);
      t += dt;
      rl += dl;
      rv += dv;
      if (Math.abs(dt) <= 1e-9 * t && Math.abs(dl) <= 1e-8 * rl && Math.abs(dv) <= 1e-8 * rv) {
        const slope = (1 / rv - 1 / rl) / (sv - sl);
        return { p, tBubble: t, tDew: t, rhoLiquid: rl, rhoVapour: rv, tBubbleSlope: slope, tDewSlope: slope };
      }
    }
    throw this.stalled('saturation', { pressure: p });
  }

  /** Pure fluid at a temperature: the pressure that gives it, by Newton on the Clapeyron slope. */
  private pureSaturationAt(temperature: number): Saturation {
    let s = this.pureSaturation(this.ancillaryBubble(temperature));
    for (let i = 0; i < 20; i++) {
      const dt = temperature - s.tBubble;
      if (Math.abs(dt) <= RELATIVE_TOLERANCE * temperature) return s;
      // ln p is nearly straight in 1/T, so the step is taken there.
      const step = (dt * s.tBubble) / (temperature * s.tBubbleSlope * s.p);
      s = this.pureSaturation(s.p * exp(step), s);
    }
    throw this.stalled('saturation', { temperature });
  }

  private pseudoPureSaturation(p: number, near?: Saturation): Saturation {
    const { pL, pV, rhoL, rhoV } = this.data.ancillaries;
    const tBubble = invertAncillary(this.data.id, pL as Ancillary, p, near?.tBubble);
    const tDew = invertAncillary(this.data.id, pV as Ancillary, p, near?.tDew ?? tBubble);
    return {
      p,
      tBubble,
      tDew,
      rhoLiquid: this.density(tBubble, p, near?.rhoLiquid ?? this.massDensity(rhoL, tBubble)),
      rhoVapour: this.density(tDew, p, near?.rhoVapour ?? this.massDensity(rhoV, tDew)),
      tBubbleSlope: 1 / (p * lnSlope(pL as Ancillary, tBubble)),
      tDewSlope: 1 / (p * lnSlope(pV as Ancillary, tDew)),
    };
  }

  private ancillaryStart(p: number): Saturation {
    const { pS, rhoL, rhoV } = this.data.ancillaries;
    const t = invertAncillary(this.data.id, pS as Ancillary, p);
    return {
      p,
      tBubble: t,
      tDew: t,
      rhoLiquid: this.massDensity(rhoL, t),
      rhoVapour: this.massDensity(rhoV, t),
      tBubbleSlope: 0,
      tDewSlope: 0,
    };
  }

  /** Saturated density by its ancillary line (which runs wild below its own range), kg/m3: a start value. */
  massDensity(line: Ancillary, temperature: number): number {
    return ancillary(line, Math.max(temperature, this.data.validRange.tMin)) * this.data.molarMass;
  }

  private stalled(what: string, details: Record<string, number>): PhysicsError {
    const figures = Object.entries(details).map(([name, value]) => `${name} ${value}`);
    return new PhysicsError('no-convergence', `${this.data.id}: ${what} did not converge at ${figures.join(', ')}`, {
      fluid: this.data.id,
      ...details,
    });
  }
}

function clamp(x: number, low: number, high: number): number {
  return x < low ? low : Math.min(x, high);
}
