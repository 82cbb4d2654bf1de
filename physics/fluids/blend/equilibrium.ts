import { PhysicsError } from '../../errors';
import { exp, ln } from '../../math/elementary';
import { solveLinear } from '../../math/linear';
import { GAS_CONSTANT } from './blendModel';
import type { Mixture } from './mixture';

/** A liquid and a vapour in equilibrium. Molar basis: mol/m3, mole fractions. */
export interface PhasePair {
  readonly t: number;
  readonly p: number;
  /** Share of the vapour by moles. */
  readonly vapourShare: number;
  readonly rhoLiquid: number;
  readonly rhoVapour: number;
  readonly liquid: Float64Array;
  readonly vapour: Float64Array;
  /** dT/dp at this composition and vapour share, K/Pa; 0 where the temperature was given */
  readonly tSlope: number;
}

export type PhaseStart = Omit<PhasePair, 'vapourShare' | 'tSlope'>;

/** What is given beside the vapour share. */
export type Given = 'p' | 't';

const MAX_ITERATIONS = 60;
/** The step that ends the search; Newton's next one, not taken, would be smaller by as much again. */
const TOLERANCE = 1e-7;
/** Longest step of an iteration, in logarithms. */
const LONGEST = 0.25;
/** Steps are not cut to less than this share. */
const SHORTEST = 1e-6;
/** Two phases whose densities are closer than this are one phase found twice. */
const ALIKE = 1e-3;

/**
 * Phase equilibrium of a blend at given pressure (or temperature) and vapour share: equal fugacities and pressures.
 * Newton in ln T (or ln p), ln of both densities and ln of the composition of the smaller phase, which leaves the other
 * phase's composition well defined up to the bubble and the dew line.
 */
export class Equilibrium {
  private readonly mixture: Mixture;
  private readonly z: Float64Array;
  private readonly size: number;
  private readonly u: Float64Array;
  private readonly r: Float64Array;
  private readonly jacobian: Float64Array;
  private readonly scratch: Float64Array;
  private readonly step: Float64Array;
  /** Compositions of the phase whose composition is sought, and of the other. */
  private readonly sought: Float64Array;
  private readonly other: Float64Array;

  constructor(mixture: Mixture, z: readonly number[]) {
    const n = mixture.count;
    this.mixture = mixture;
    this.z = Float64Array.from(z);
    this.size = n + 3;
    this.u = new Float64Array(this.size);
    this.r = new Float64Array(this.size);
    this.step = new Float64Array(this.size);
    this.jacobian = new Float64Array(this.size * this.size);
    this.scratch = new Float64Array(this.size * this.size);
    this.sought = new Float64Array(n);
    this.other = new Float64Array(n);
  }

  /** Throws `no-convergence`, also where both phases turn out to be one. */
  solve(given: Given, vapourShare: number, start: PhaseStart): PhasePair {
    const { u, z, size, step } = this;
    const n = this.mixture.count;
    const vapourSought = vapourShare < 0.5;
    const share = vapourSought ? vapourShare : 1 - vapourShare;
    const known = given === 'p' ? ln(start.p) : ln(start.t);
    u[0] = given === 'p' ? ln(start.t) : ln(start.p);
    u[1] = ln(vapourSought ? start.rhoLiquid : start.rhoVapour);
    u[2] = ln(vapourSought ? start.rhoVapour : start.rhoLiquid);
    const first = vapourSought ? start.vapour : start.liquid;
    for (let i = 0; i < n; i++) u[3 + i] = ln(first[i]);
    for (let k = 0; k < MAX_ITERATIONS; k++) {
      this.linearise(given, known, share);
      this.scratch.set(this.jacobian);
      for (let i = 0; i < size; i++) step[i] = -this.r[i];
      if (!solveLinear(this.scratch, step, size)) break;
      let longest = 0;
      for (let i = 0; i < size; i++) longest = Math.max(longest, Math.abs(step[i]));
      if (!(longest < 1e6)) break;
      let scale = longest > LONGEST ? LONGEST / longest : 1;
      // The other phase must keep some of everything; if that cannot be had, the next step fails and says so.
      for (let i = 0; i < n; i++) {
        while (scale > SHORTEST && share * exp(u[3 + i] + scale * step[3 + i]) > 0.999 * z[i]) scale *= 0.5;
      }
      for (let i = 0; i < size; i++) u[i] += scale * step[i];
      if (longest < TOLERANCE) {
        if (Math.abs(u[1] - u[2]) < ALIKE) break;
        return this.result(given, start, share, vapourSought, vapourShare);
      }
    }
    throw new PhysicsError('no-convergence', `phase equilibrium did not converge near ${start.t} K, ${start.p} Pa`, {
      temperature: start.t,
      pressure: start.p,
      vapourShare,
    });
  }

  private result(
    given: Given,
    start: PhaseStart,
    share: number,
    vapourSought: boolean,
    vapourShare: number,
  ): PhasePair {
    const { u } = this;
    const t = given === 'p' ? exp(u[0]) : start.t;
    const p = given === 'p' ? start.p : exp(u[0]);
    this.compose(share);
    const sought = Float64Array.from(this.sought);
    const other = Float64Array.from(this.other);
    const rhoOther = exp(u[1]);
    const rhoSought = exp(u[2]);
    return {
      t,
      p,
      vapourShare,
      rhoLiquid: vapourSought ? rhoOther : rhoSought,
      rhoVapour: vapourSought ? rhoSought : rhoOther,
      liquid: vapourSought ? other : sought,
      vapour: vapourSought ? sought : other,
      tSlope: given === 'p' ? this.slope(t, p, rhoOther, rhoSought) : 0,
    };
  }

  /** dT/dp from the last Jacobian: of all residuals only the two pressures know p. */
  private slope(t: number, p: number, rhoOther: number, rhoSought: number): number {
    const { step, size } = this;
    step.fill(0);
    step[0] = p / (rhoOther * GAS_CONSTANT * t);
    step[1] = p / (rhoSought * GAS_CONSTANT * t);
    this.scratch.set(this.jacobian);
    solveLinear(this.scratch, step, size);
    return (step[0] * t) / p;
  }

  /** Compositions of both phases from u. */
  private compose(share: number): void {
    const { u, z, sought, other } = this;
    for (let i = 0; i < z.length; i++) {
      sought[i] = exp(u[3 + i]);
      other[i] = (z[i] - share * sought[i]) / (1 - share);
    }
  }

  /** Residuals in r, their slopes in jacobian. */
  private linearise(given: Given, known: number, share: number): void {
    const { u, r, jacobian, size, z, sought, other } = this;
    const n = z.length;
    const t = exp(given === 'p' ? u[0] : known);
    const p = exp(given === 'p' ? known : u[0]);
    this.compose(share);
    jacobian.fill(0);
    r.fill(0);
    // Both phases: fugacities count with opposite signs; an amount more of one composition is less of the other.
    this.phase(given, t, p, exp(u[1]), other, 0, 1, -share / (1 - share));
    this.phase(given, t, p, exp(u[2]), sought, 1, -1, 1);
    r[size - 1] = -1;
    for (let i = 0; i < n; i++) {
      r[size - 1] += sought[i];
      jacobian[(size - 1) * size + 3 + i] = sought[i];
    }
  }

  /** Adds one phase: its pressure is equation `row` and its density the unknown after that. */
  private phase(
    given: Given,
    t: number,
    p: number,
    rho: number,
    x: Float64Array,
    row: 0 | 1,
    sign: 1 | -1,
    share: number,
  ): void {
    const { mixture, r, jacobian, size, sought } = this;
    const n = mixture.count;
    mixture.evaluate(t, rho, x);
    const { lnFugacity, fRho, fT, fX, zX } = mixture;
    const byP = given === 'p';
    const ideal = p / (rho * GAS_CONSTANT * t);
    const place = row * size;
    r[row] = mixture.z - ideal;
    jacobian[place] = byP ? mixture.zT + ideal : -ideal;
    jacobian[place + 1 + row] = mixture.zRho + ideal;
    for (let j = 0; j < n; j++) jacobian[place + 3 + j] = zX[j] * share * sought[j];
    for (let i = 0; i < n; i++) {
      const line = (2 + i) * size;
      r[2 + i] += sign * lnFugacity[i];
      if (byP) jacobian[line] += sign * fT[i];
      jacobian[line + 1 + row] = sign * fRho[i];
      for (let j = 0; j < n; j++) jacobian[line + 3 + j] += sign * fX[i * n + j] * share * sought[j];
    }
  }
}

/** Start value of a row from the two evenly spaced rows before it. */
export function carriedOn(a: PhasePair, b: PhasePair): PhasePair {
  const ratio = (from: number, to: number) => (to * to) / from;
  return {
    ...b,
    t: 2 * b.t - a.t,
    rhoLiquid: 2 * b.rhoLiquid - a.rhoLiquid,
    rhoVapour: ratio(a.rhoVapour, b.rhoVapour),
    liquid: b.liquid.map((x, i) => ratio(a.liquid[i], x)),
    vapour: b.vapour.map((y, i) => ratio(a.vapour[i], y)),
  };
}
