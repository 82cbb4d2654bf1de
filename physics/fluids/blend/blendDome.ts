import { PhysicsError } from '../../errors';
import type { Saturation } from '../saturation';
import type { BlendLines } from './blendLines';
import type { PhasePair } from './equilibrium';

/** A mixture of both phases, mass basis; h and s with the reference constants of the components' equations. */
export interface WetState {
  readonly t: number;
  readonly p: number;
  readonly h: number;
  readonly s: number;
  readonly rho: number;
  /** Vapour quality by mass. */
  readonly q: number;
}

const MAX_ITERATIONS = 80;

/** State of a liquid and a vapour in equilibrium. */
export function wetState(lines: BlendLines, pair: PhasePair): WetState {
  const { mixture } = lines;
  const { t, p, vapourShare: share, rhoLiquid, rhoVapour } = pair;
  const liquid = mixture.caloric(t, rhoLiquid, pair.liquid);
  const vapour = mixture.caloric(t, rhoVapour, pair.vapour);
  let massLiquid = 0;
  let massVapour = 0;
  for (let i = 0; i < mixture.count; i++) {
    massLiquid += (1 - share) * pair.liquid[i] * mixture.molarMasses[i];
    massVapour += share * pair.vapour[i] * mixture.molarMasses[i];
  }
  const mass = massLiquid + massVapour;
  return {
    t,
    p,
    h: ((1 - share) * liquid.h + share * vapour.h) / mass,
    s: ((1 - share) * liquid.s + share * vapour.s) / mass,
    rho: mass / ((1 - share) / rhoLiquid + share / rhoVapour),
    q: massVapour / mass,
  };
}

/**
 * The state on an isobar inside the dome at which a property (growing with the vapour share) takes a value. Values beyond
 * the lines give the state on the line. Throws `no-convergence`.
 */
export function wetStateAt(lines: BlendLines, sat: Saturation, name: 'h' | 't' | 'q', value: number): WetState {
  if (sat.pairs === undefined) throw new PhysicsError('bad-input', 'a saturation without its phases');
  const { pairs } = sat;
  return root(
    (share) => wetState(lines, lines.inside(pairs, share)),
    (state) => state[name] - value,
    0,
    1,
  );
}

/** The state at a temperature and a quality by mass: between the dew and the bubble pressure of that temperature. */
export function wetStateOfQuality(lines: BlendLines, t: number, q: number): WetState {
  const low = lines.atTemperature(t, 1).p;
  const high = lines.atTemperature(t, 0).p;
  return root(
    (p) => wetStateAt(lines, lines.atPressure(p), 'q', q),
    (state) => state.t - t,
    low,
    high,
  );
}

/** Where `error` of a state, negative at `from` and positive at `to`, changes its sign: the Illinois method. */
function root(state: (x: number) => WetState, error: (state: WetState) => number, from: number, to: number): WetState {
  const first = state(from);
  const last = state(to);
  let a = from;
  let b = to;
  let fa = error(first);
  let fb = error(last);
  if (fa >= 0) return first;
  if (fb <= 0) return last;
  let before = Number.NaN;
  let side = 0;
  for (let i = 0; i < MAX_ITERATIONS; i++) {
    const x = b - (fb * (b - a)) / (fb - fa);
    const here = state(x);
    const f = error(here);
    if (f === 0 || Math.abs(x - before) < 1e-12 * to) return here;
    before = x;
    if (f > 0) {
      b = x;
      fb = f;
      if (side > 0) fa *= 0.5;
      side = 1;
    } else {
      a = x;
      fa = f;
      if (side < 0) fb *= 0.5;
      side = -1;
    }
  }
  throw new PhysicsError('no-convergence', `no state found between ${from} and ${to}`);
}
