import fc from 'fast-check';
import { expect, test } from 'vitest';
import { overlap, placeTags, type TagToPlace } from '../../src/bench/geometry/tagPlacement';

const boxOf = (tag: TagToPlace, { dx, dy }: { dx: number; dy: number }) => ({
  x: tag.x + dx - tag.w / 2,
  y: tag.y + dy - tag.h / 2,
  w: tag.w,
  h: tag.h,
});

test('three tags on places 44 px apart or more never lie over each other, a button or the edge of a phone', () => {
  const spot = fc.record({ x: fc.integer({ min: 30, max: 360 }), y: fc.integer({ min: 30, max: 560 }) });
  const apart = (a: { x: number; y: number }, b: { x: number; y: number }) =>
    Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y)) >= 44;
  fc.assert(
    fc.property(fc.array(spot, { minLength: 3, maxLength: 3 }), fc.integer({ min: 60, max: 110 }), (spots, w) => {
      fc.pre(spots.every((a, i) => spots.slice(i + 1).every((b) => apart(a, b))));
      const tags = spots.map(({ x, y }) => ({ x, y, w, h: 22 }));
      const views = { x: 9, y: 550, w: 193, h: 47 };
      const boxes = placeTags(tags, { width: 390, height: 600, marks: spots, blocked: [views] }).map((offset, i) =>
        boxOf(tags[i]!, offset),
      );
      for (const [i, box] of boxes.entries()) {
        expect(overlap(box, views)).toBe(0);
        expect(overlap(box, { x: 0, y: 0, w: 390, h: 600 })).toBeCloseTo(w * 22, 6);
        for (const other of boxes.slice(i + 1)) expect(overlap(box, other)).toBe(0);
      }
    }),
    { seed: 11, numRuns: 400 },
  );
});

test('a tag alone hangs just under its place', () => {
  expect(
    placeTags([{ x: 200, y: 200, w: 80, h: 20 }], {
      width: 400,
      height: 400,
      marks: [{ x: 200, y: 200 }],
      blocked: [],
    }),
  ).toEqual([{ dx: 0, dy: 26 }]);
});
