import { describe, expect, test } from 'vitest';
import { wetState } from '../../../physics/fluids/blend/blendDome';
import type { BlendLines } from '../../../physics/fluids/blend/blendLines';
import { moleFractions } from '../../../physics/fluids/blend/blendModel';
import { blendTransport } from '../../../physics/fluids/blend/blendTransport';
import type { PhasePair } from '../../../physics/fluids/blend/equilibrium';
import { Mixture } from '../../../physics/fluids/blend/mixture';
import { R32 } from '../../../physics/fluids/data/R32';
import { R125 } from '../../../physics/fluids/data/R125';
import { R134a } from '../../../physics/fluids/data/R134a';
import { R407C } from '../../../physics/fluids/data/R407C';
import { R410A } from '../../../physics/fluids/data/R410A';
import { fluidEos } from '../../../physics/fluids/fluid';
import { EOS } from '../../../physics/fluids/helmholtz';
import { BLENDS, Worst } from './reference';

describe.each(BLENDS)('%s', (id) => {
  const fluid = fluidEos(id);
  const lines = fluid.blend as BlendLines;
  const { mixture, model } = lines;
  const { molarMass, pCritical } = fluid.data;
  const z = Float64Array.from(model.moleFractions);
  const fugacities = (t: number, rho: number, x: Float64Array) => {
    mixture.evaluate(t, rho, x);
    return { p: mixture.pressure, ln: Float64Array.from(mixture.lnFugacity) };
  };

  test('strung together as one equation, the blend is the mixture model at its own composition', () => {
    for (const [t, rho] of [
      [250, 50],
      [300, 12_000],
      [400, 5_000],
    ]) {
      const { h, s } = mixture.caloric(t, rho, z);
      const { pressure } = mixture;
      const out = fluid.eos.evaluate(t, rho * molarMass);
      expect(out[EOS.P] / pressure).toBeCloseTo(1, 11);
      expect((out[EOS.H] * molarMass) / h).toBeCloseTo(1, 12);
      expect((out[EOS.S] * molarMass) / s).toBeCloseTo(1, 12);
    }
  });

  // Independent of the formula for fugacities: the Gibbs energy of a phase is the sum of its parts' potentials.
  test('along an isotherm, fugacities change as the Gibbs energy does', () => {
    for (const t of [240, 320]) {
      const gibbs = (rho: number) => {
        const { h, s } = mixture.caloric(t, rho, z);
        return (h - t * s) / (8.31446261815324 * t);
      };
      const parts = (rho: number) => fugacities(t, rho, z).ln.reduce((sum, f, i) => sum + z[i] * f, 0);
      for (const rho of [1000, 9000, 14_000]) {
        expect(parts(rho) - parts(20)).toBeCloseTo(gibbs(rho) - gibbs(20), 10);
      }
    }
  });

  // The derivative of the total Helmholtz energy by each amount, at constant volume, taken numerically.
  test('a fugacity is the derivative of the Helmholtz energy by its amount', () => {
    const t = 290;
    const volume = 1e-4;
    const energy = (amounts: Float64Array) => {
      const total = amounts.reduce((a, b) => a + b, 0);
      const x = amounts.map((n) => n / total);
      const { h, s } = mixture.caloric(t, total / volume, x);
      return total * (h - t * s) - mixture.pressure * volume;
    };
    const slope = (amounts: Float64Array, i: number) => {
      const step = 1e-5;
      const moved = (by: number) => energy(amounts.map((n, j) => (i === j ? n + by : n)));
      return (moved(step) - moved(-step)) / (2 * step * 8.31446261815324 * t);
    };
    // Two densities: the constants of the ideal part drop out of the difference.
    const dense = z.map((x) => x * 1.1);
    const thin = z.map((x) => x * 0.2);
    for (let i = 0; i < z.length; i++) {
      const change = fugacities(t, 1.1 / volume, z).ln[i] - fugacities(t, 0.2 / volume, z).ln[i];
      expect(slope(dense, i) - slope(thin, i)).toBeCloseTo(change, 6);
    }
  });

  test('the derivatives of fugacities and pressure are those of the values themselves', () => {
    const t = 300;
    const rho = 11_000;
    const at = (lnT: number, lnRho: number, move: (x: number, i: number) => number) => {
      mixture.evaluate(t * Math.exp(lnT), rho * Math.exp(lnRho), z.map(move));
      return [mixture.z, ...mixture.lnFugacity];
    };
    const same = (x: number) => x;
    const step = 1e-5;
    const slope = (up: number[], down: number[]) => up.map((value, i) => (value - down[i]) / (2 * step));
    const n = z.length;
    mixture.evaluate(t, rho, z);
    const byT = [mixture.zT, ...mixture.fT];
    const byRho = [mixture.zRho, ...mixture.fRho];
    const byX = Array.from(z, (_, j) => [mixture.zX[j], ...z.map((_x, i) => mixture.fX[i * n + j])]);
    const close = (exact: number[], numeric: number[]) => {
      exact.forEach((value, i) => {
        expect(Math.abs(value - numeric[i])).toBeLessThan(1e-5 * (1 + Math.abs(value)));
      });
    };
    close(byT, slope(at(step, 0, same), at(-step, 0, same)));
    close(byRho, slope(at(0, step, same), at(0, -step, same)));
    byX.forEach((exact, j) => {
      const moved = (by: number) => at(0, 0, (x, i) => (i === j ? x + by : x));
      close(exact, slope(moved(step), moved(-step)));
    });
  });

  test('on both lines and between them, phases have one pressure, equal fugacities and the blend between them', () => {
    const check = ({ t, p, vapourShare, liquid, vapour, rhoLiquid, rhoVapour }: PhasePair) => {
      const below = fugacities(t, rhoLiquid, liquid);
      const above = fugacities(t, rhoVapour, vapour);
      expect(Math.abs(below.p - p) / (rhoLiquid * 8.3 * t)).toBeLessThan(1e-10);
      expect(above.p / p).toBeCloseTo(1, 9);
      for (let i = 0; i < z.length; i++) {
        expect(Math.abs(below.ln[i] - above.ln[i])).toBeLessThan(1e-9);
        expect((1 - vapourShare) * liquid[i] + vapourShare * vapour[i]).toBeCloseTo(z[i], 10);
      }
      expect(rhoLiquid).toBeGreaterThan(rhoVapour);
    };
    for (const share of [0.003, 0.1, 0.5, 0.9, 0.985]) {
      const { pairs } = fluid.saturationAtPressure(share * pCritical);
      if (pairs === undefined) throw new Error('no phases');
      for (const vapourShare of [0, 0.01, 0.3, 0.5, 0.8, 0.99, 1]) check(lines.inside(pairs, vapourShare));
      expect(lines.inside(pairs, 0).t).toBeCloseTo(pairs.bubble.t, 8);
      expect(lines.inside(pairs, 1).t).toBeCloseTo(pairs.dew.t, 8);
      // A liquid boils off its volatile part first.
      expect(pairs.dew.t).toBeGreaterThanOrEqual(pairs.bubble.t);
    }
  });

  test('the slopes of both lines are those of the lines themselves', () => {
    for (const share of [0.01, 0.3, 0.9]) {
      const p = share * pCritical;
      const here = fluid.saturationAtPressure(p);
      const [a, b] = [fluid.saturationAtPressure(p * 0.9999), fluid.saturationAtPressure(p * 1.0001)];
      expect(here.tBubbleSlope / ((b.tBubble - a.tBubble) / (b.p - a.p))).toBeCloseTo(1, 5);
      expect(here.tDewSlope / ((b.tDew - a.tDew) / (b.p - a.p))).toBeCloseTo(1, 5);
    }
  });

  test('inside the dome dh = T ds along an isobar', () => {
    const { pairs } = fluid.saturationAtPressure(0.2 * pCritical);
    if (pairs === undefined) throw new Error('no phases');
    for (const share of [0.1, 0.4, 0.7, 0.95]) {
      const [a, b] = [share - 1e-4, share + 1e-4].map((x) => wetState(lines, lines.inside(pairs, x)));
      expect((b.h - a.h) / (((b.s - a.s) * (a.t + b.t)) / 2)).toBeCloseTo(1, 6);
    }
  });

  test('a walk up the line ends where a direct search does', () => {
    const p = 0.9 * pCritical;
    const near = fluid.saturationAtPressure(0.89 * pCritical);
    const walked = fluid.saturationAtPressure(p);
    const started = fluid.saturationAtPressure(p, near);
    expect(started.tBubble).toBeCloseTo(walked.tBubble, 8);
    expect(started.tDew).toBeCloseTo(walked.tDew, 8);
    expect(started.rhoLiquid / walked.rhoLiquid).toBeCloseTo(1, 9);
  });
});

// What blendTransport.ts says of its rule, against lines fitted to the blends themselves.
test.each([
  [R410A, [R32, R125], [0.5, 0.5]],
  [R407C, [R32, R125, R134a], [0.23, 0.25, 0.52]],
])('the mixing rule of transport meets a known blend within the errors that it states', (blend, parts, shares) => {
  const x = moleFractions(
    parts.map((equation, i) => ({
      equation,
      massFraction: shares[i],
      tCritical: equation.tCritical,
      pCritical: equation.pCritical,
      acentric: 0.3,
    })),
  );
  const mixed = blendTransport(
    parts.map(({ transport }, i) => ({ transport, moleFraction: x[i], massFraction: shares[i] })),
    blend.tCritical,
  );
  const worst = new Worst();
  const line = (c: readonly number[], root: number) => Math.exp(c.reduceRight((sum, each) => sum * root + each, 0));
  for (let reduced = 0.65; reduced < 0.9501; reduced += 0.05) {
    const theta = 1 - reduced;
    for (const name of ['muLiquid', 'muVapour', 'kLiquid', 'kVapour'] as const) {
      const ratio = line(mixed[name], Math.sqrt(theta)) / line(blend.transport[name], Math.sqrt(theta));
      worst.note(name === 'kVapour' && reduced > 0.851 ? 'kVapourTop' : name, ratio - 1);
    }
    const sigma = (terms: readonly (readonly [number, number])[]) =>
      terms.reduce((sum, [a, n]) => sum + a * theta ** n, 0);
    worst.note('sigma', sigma(mixed.sigma.terms) / sigma(blend.transport.sigma.terms) - 1);
  }
  const bounds = { muLiquid: 0.07, muVapour: 0.08, kLiquid: 0.08, kVapour: 0.09, kVapourTop: 0.26, sigma: 0.022 };
  expect(worst.over(bounds)).toEqual([]);
});

test('no two components of one kind: a blend of a fluid with itself is that fluid', () => {
  const half = { equation: R134a, massFraction: 0.5, tCritical: 374.21, pCritical: 4_059_280, acentric: 0.327 };
  const pair = { betaT: 1, gammaT: 1, betaV: 1, gammaV: 1, factor: 0, departure: [] };
  const twin = new Mixture({ components: [half, half], moleFractions: [0.5, 0.5], pairs: [pair] });
  twin.evaluate(300, 11_000, Float64Array.of(0.5, 0.5));
  const out = fluidEos('R-134a').eos.evaluate(300, 11_000 * R134a.molarMass);
  // The papers' gas constants differ in the seventh digit.
  expect(twin.pressure / out[EOS.P]).toBeCloseTo(1, 5);
  expect(twin.lnFugacity[0]).toBeCloseTo(twin.lnFugacity[1], 12);
});
