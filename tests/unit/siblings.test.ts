import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { deviations, ranked, type Sibling } from '../../src/panels/strand/siblings';

const units = (values: readonly (readonly [string, string, number])[]): Sibling[] =>
  values.map(([id, state, value]) => ({ id, state, value }));

describe('how far a unit stands from its siblings', () => {
  test('is told against the median of the others that do the same', () => {
    const all = units([
      ['unit1', 'cooling', 12],
      ['unit2', 'cooling', 12.5],
      ['unit3', 'cooling', 19],
      ['unit4', 'heating', 60],
      ['unit5', 'off', 26],
    ]);
    const off = deviations(all);
    expect(off.get('unit3')).toBeCloseTo(19 - 12.25);
    expect(off.get('unit1')).toBeCloseTo(12 - 15.75);
    // One that heats among those that cool has no sibling, and no more has the one that is off.
    expect(off.get('unit4')).toBeNull();
    expect(ranked(all).slice(0, 1)).toEqual(['unit3']);
    expect(ranked(all).slice(3)).toEqual(['unit4', 'unit5']);
  });

  test('ranks every unit once, the one that alone was moved first', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 8 }),
        fc.nat(),
        fc.double({ min: 5, max: 40, noNaN: true }),
        (n, k, far) => {
          const odd = `unit${(k % n) + 1}`;
          const all = Array.from({ length: n }, (_, i) => ({
            id: `unit${i + 1}`,
            state: 'cooling',
            value: 10 + 0.3 * i + (`unit${i + 1}` === odd ? far : 0),
          }));
          const order = ranked(all);
          expect([...order].sort()).toEqual(all.map(({ id }) => id).sort());
          expect(order[0]).toBe(odd);
        },
      ),
      { seed: 11 },
    );
  });
});
