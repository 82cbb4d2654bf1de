import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { packSparse, unpackSparse } from '../../../src/examiner/sparse';

describe('lists told against another list', () => {
  const number = fc.oneof(fc.constant(0), fc.integer({ min: -3, max: 3 }), fc.integer());

  test('whatever goes in comes out', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(number, number), { maxLength: 300 }), (pairs) => {
        const list = pairs.map(([value]) => value);
        const base = pairs.map(([value, other]) => (other === 0 ? value : other));
        expect(unpackSparse(packSparse(list, base), base, list.length)).toEqual(list);
        expect(unpackSparse(packSparse(list, null), null, list.length)).toEqual(list);
      }),
      { seed: 7 },
    );
  });

  test('what is equal costs next to nothing', () => {
    const base = Array.from({ length: 1000 }, (_, i) => 40 * i);
    const list = base.map((value, i) => (i === 500 ? value + 3 : value));
    expect(packSparse(list, base).length).toBeLessThan(12);
  });

  test('a text cut short, too long or of other characters is refused', () => {
    const text = packSparse([1, 2, 300, 4], null);
    expect(() => unpackSparse(text.slice(0, -1), null, 4)).toThrow(TypeError);
    expect(() => unpackSparse(text, null, 5)).toThrow('4 numbers found, 5 expected');
    expect(() => unpackSparse('!', null, 1)).toThrow('"!" found at 0');
  });
});
