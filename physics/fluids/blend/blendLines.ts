import { exp, ln } from '../../math/elementary';
import { ancillary, invertAncillary } from '../ancillary';
import type { Ancillary, RefrigerantData } from '../refrigerantData';
import type { Saturation } from '../saturation';
import type { BlendModel } from './blendModel';
import { Equilibrium, type PhasePair, type PhaseStart } from './equilibrium';
import { Mixture } from './mixture';

/** Up to this share of the critical pressure a rough first guess converges; above it the line is walked up. */
const SURE = 0.6;
/** Each step of that walk leaves this share of ln(critical pressure/p). */
const STRIDE = 0.6;

/** Bubble and dew line of a blend, and the dome between them: phase equilibrium by the multi-fluid model. */
export class BlendLines {
  readonly mixture: Mixture;
  readonly model: BlendModel;
  private readonly data: RefrigerantData;
  private readonly equilibrium: Equilibrium;
  private latest: Saturation | undefined;

  constructor(data: RefrigerantData, model: BlendModel) {
    this.data = data;
    this.model = model;
    this.mixture = new Mixture(model);
    this.equilibrium = new Equilibrium(this.mixture, model.moleFractions);
  }

  /** Both lines at a pressure, started from a neighbour where there is one. Throws `no-convergence`. */
  atPressure(p: number, near?: Saturation): Saturation {
    const pairs = near?.pairs;
    if (pairs === undefined) {
      // Points on one isobar follow each other; what a pressure gives does not depend on what came before.
      if (this.latest?.p !== p) this.latest = this.saturation(this.line(p, 0), this.line(p, 1));
      return this.latest;
    }
    return this.saturation(this.solve(0, { ...pairs.bubble, p }), this.solve(1, { ...pairs.dew, p }));
  }

  /** Both lines at the pressure at which one of them (0 bubble, 1 dew) passes a temperature. Throws `no-convergence`. */
  atTemperature(temperature: number, side: 0 | 1): Saturation {
    const { pL, pV } = this.data.ancillaries;
    const guess = ancillary((side === 0 ? pL : pV) as Ancillary, temperature);
    const near = this.line(guess, side);
    const { p } = this.equilibrium.solve('t', side, { ...near, t: temperature });
    const here = this.solve(side, { ...near, p, t: temperature });
    const there = this.line(p, side === 0 ? 1 : 0);
    return side === 0 ? this.saturation(here, there) : this.saturation(there, here);
  }

  /** Equilibrium inside the dome, at a pressure and a share of vapour by moles. Throws `no-convergence`. */
  inside({ bubble, dew }: NonNullable<Saturation['pairs']>, vapourShare: number): PhasePair {
    const between = (a: number, b: number) => a + vapourShare * (b - a);
    return this.solve(vapourShare, {
      p: bubble.p,
      t: between(bubble.t, dew.t),
      rhoLiquid: between(bubble.rhoLiquid, dew.rhoLiquid),
      rhoVapour: between(bubble.rhoVapour, dew.rhoVapour),
      liquid: bubble.liquid.map((x, i) => between(x, dew.liquid[i])),
      vapour: bubble.vapour.map((y, i) => between(y, dew.vapour[i])),
    });
  }

  /** A point on one line: directly where that is safe, else walked up to. */
  private line(p: number, side: 0 | 1): PhasePair {
    const sure = SURE * this.data.pCritical;
    const lnCritical = ln(this.data.pCritical);
    let pair = this.solve(side, this.guess(Math.min(p, sure), side));
    let before = pair;
    while (pair.p < p * (1 - 1e-12)) {
      const next = Math.min(p, exp(lnCritical - STRIDE * (lnCritical - ln(pair.p))));
      const start = onward(before, pair, next, lnCritical);
      before = pair;
      pair = this.solve(side, start);
    }
    return pair;
  }

  private solve(vapourShare: number, start: PhaseStart): PhasePair {
    return this.equilibrium.solve('p', vapourShare, start);
  }

  /** First guess by the ancillary lines, and for the other phase by each component's own volatility. */
  private guess(p: number, side: 0 | 1): PhaseStart {
    const { id, ancillaries } = this.data;
    const { moleFractions: z, components } = this.model;
    const pressureLine = (side === 0 ? ancillaries.pL : ancillaries.pV) as Ancillary;
    const t = invertAncillary(id, pressureLine, p);
    // G.M. Wilson's rule of 1969, quoted after R.C. Reid et al., "The Properties of Gases and Liquids", 4th ed. (1987).
    const k = components.map((c) => (c.pCritical / p) * exp(5.373 * (1 + c.acentric) * (1 - c.tCritical / t)));
    const raw = z.map((share, i) => (side === 0 ? share * k[i] : share / k[i]));
    const sum = raw.reduce((a, b) => a + b, 0);
    const other = Float64Array.from(raw, (share) => share / sum);
    const own = Float64Array.from(z);
    const cold = Math.max(t, this.data.validRange.tMin);
    const liquid = side === 0 ? own : other;
    // Corresponding states: a liquid of another composition is as dense as its reducing density is.
    const shift = this.mixture.volume(own) / this.mixture.volume(liquid);
    return {
      p,
      t,
      rhoLiquid: shift * ancillary(ancillaries.rhoL, cold),
      rhoVapour: ancillary(ancillaries.rhoV, cold),
      liquid,
      vapour: side === 0 ? other : own,
    };
  }

  private saturation(bubble: PhasePair, dew: PhasePair): Saturation {
    const { molarMass } = this.data;
    return {
      p: bubble.p,
      tBubble: bubble.t,
      tDew: dew.t,
      rhoLiquid: bubble.rhoLiquid * molarMass,
      rhoVapour: dew.rhoVapour * molarMass,
      tBubbleSlope: bubble.tSlope,
      tDewSlope: dew.tSlope,
      pairs: { bubble, dew },
    };
  }
}

/** Start value further along a line, carried on in sqrt(ln(critical pressure/p)), in which the dome's top is smooth. */
function onward(a: PhasePair, b: PhasePair, p: number, lnCritical: number): PhaseStart {
  const x = (pressure: number) => Math.sqrt(Math.max(lnCritical - ln(pressure), 0));
  const ratio = a === b ? 0 : (x(p) - x(b.p)) / (x(b.p) - x(a.p));
  return {
    p,
    t: b.t + b.tSlope * (p - b.p),
    rhoLiquid: b.rhoLiquid * exp(ratio * ln(b.rhoLiquid / a.rhoLiquid)),
    rhoVapour: b.rhoVapour * exp(ratio * ln(b.rhoVapour / a.rhoVapour)),
    liquid: b.liquid,
    vapour: b.vapour,
  };
}
