import { describe, expect, test } from 'vitest';
import { PhysicsError } from '../../../physics/errors';
import { fluidEos, refrigerantData } from '../../../physics/fluids/fluid';
import { fluidPoint, type PointInput } from '../../../physics/fluids/point';
import { FLUIDS, stream } from './reference';

function refusal(run: () => unknown): PhysicsError {
  try {
    run();
  } catch (error) {
    if (error instanceof PhysicsError) return error;
    throw error;
  }
  throw new Error('was not refused');
}

describe.each(FLUIDS)('%s', (id) => {
  const fluid = fluidEos(id);
  const { validRange, tCritical, pCritical } = fluid.data;

  test('a state found from p and t is found again from p and h, over the whole range of the equation', () => {
    const random = stream(1);
    const lowest = Math.log(fluid.ancillaryDew(validRange.tMin) * 1.01);
    const highest = Math.log(Math.min(validRange.pMax, 70e6));
    let near = 0;
    for (let i = 0; i < 400; i++) {
      const p = Math.exp(lowest + (highest - lowest) * random());
      const t = validRange.tMin + (validRange.tMax - validRange.tMin) * random();
      if (p > 0.99 * pCritical && p < pCritical) {
        near++;
        continue;
      }
      const byT = fluidPoint(fluid, { p, t });
      const byH = fluidPoint(fluid, { p, h: byT.h });
      expect(Math.abs(byH.t - t)).toBeLessThan(1e-7);
      expect(byH.phase).toBe(byT.phase);
    }
    expect(near).toBeLessThan(20);
  });

  test('a mixture found from t and q is found again from p and h', () => {
    for (const q of [0.001, 0.2, 0.5, 0.999]) {
      for (const t of [230, 273.15, 0.97 * tCritical]) {
        const wet = fluidPoint(fluid, { t, q });
        const again = fluidPoint(fluid, { p: wet.p, h: wet.h });
        expect(again.q).toBeCloseTo(q, 9);
        expect(again.t).toBeCloseTo(t, 7);
        expect(again.rho / wet.rho).toBeCloseTo(1, 9);
        expect(again.phase).toBe('two-phase');
      }
    }
  });

  test('above the critical point there is one phase', () => {
    expect(fluidPoint(fluid, { p: 1.5 * pCritical, t: 1.1 * tCritical }).phase).toBe('supercritical');
    expect(fluidPoint(fluid, { p: 1.5 * pCritical, t: 0.8 * tCritical }).phase).toBe('liquid');
  });

  test.each<[string, PointInput]>([
    ['t', { t: 40, q: 0 }],
    ['t', { t: 1.01 * tCritical, q: 1 }],
    ['t', { p: 1e6, t: validRange.tMax + 1 }],
    ['p', { p: 1e9 + 1, t: 300 }],
    ['p', { p: -1, h: 3e5 }],
    ['p', { p: 0.995 * pCritical, h: 3e5 }],
    ['h', { p: 1e6, h: 5e6 }],
    ['h', { p: 1e6, h: -5e6 }],
  ])('refuses %s outside its range, naming fluid, value and limits: %j', (name, input) => {
    const error = refusal(() => fluidPoint(fluid, input));
    expect(error.code).toBe('range');
    expect(error.details).toMatchObject({ fluid: id, [name]: (input as Record<string, number>)[name] });
    expect(error.message).toContain(id);
    expect(Number(error.details.low)).toBeLessThan(Number(error.details.high));
  });

  test.each<[string, PointInput]>([
    ['p is not a finite number', { p: Number.NaN, h: 1 }],
    ['t is not a finite number', { p: 1e5, t: Infinity }],
    ['q 1.2 is outside 0 to 1', { t: 300, q: 1.2 }],
  ])('refuses: %s', (message, input) => {
    const error = refusal(() => fluidPoint(fluid, input));
    expect(error.code).toBe('bad-input');
    expect(error.message).toContain(message);
  });
});

test('p and t on the saturation line of a pure fluid do not fix a state', () => {
  const fluid = fluidEos('R-32');
  const { p } = fluidPoint(fluid, { t: 300, q: 0 });
  expect(refusal(() => fluidPoint(fluid, { p, t: 300 })).message).toContain('give q or h');
});

test('between bubble and dew of a blend, p and t do fix the quality', () => {
  const fluid = fluidEos('R-410A');
  const wet = fluidPoint(fluid, { t: 300, q: 0.3 });
  expect(fluidPoint(fluid, { p: wet.p, t: 300 }).q).toBeCloseTo(0.3, 6);
});

test('an unknown refrigerant is refused with the known ones', () => {
  const error = refusal(() => refrigerantData('R-999'));
  expect(error.code).toBe('bad-input');
  expect(error.message).toBe(
    'unknown refrigerant "R-999": one of R-32, R-410A, R-134a, R-290, R-22, R-1234yf, R-125, R-744, R-407C, R-404A, R-454B, R-448A, R-513A',
  );
});
