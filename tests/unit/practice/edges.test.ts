import { describe, expect, test } from 'vitest';
import { Expectations, separation } from '../../../src/examiner/explain/bands';
import { contrastOf } from '../../../src/practice/contrast';
import { byNeed, edgeId, edgeOfId, edgesOf, likeness, movement } from '../../../src/practice/edges';
import { comparedOn, expectedOf, isOfUnit } from '../../../src/practice/quanta';
import { benchAt } from '../../../src/practice/setting';
import { settingAt } from '../../support/practice';

const GUIDED = settingAt('old-wharf', 'chandlery-shop');
const CANTEEN = settingAt('old-wharf', 'boatyard-canteen');

describe('which causes are taken for one another', () => {
  test('too little refrigerant is taken for a blocked drier and for a dirty filter, as the trade warns', () => {
    const found = edgesOf(GUIDED).map(({ id }) => id);
    expect(found).toContain('orifice-split/drier-restriction+undercharge');
    expect(found).toContain('orifice-split/filter-dirty+undercharge');
  });

  test('a dirty outdoor coil and a slow outdoor fan move everything alike, and a look parts them', () => {
    const [closest] = edgesOf(CANTEEN);
    expect(closest?.causes).toEqual(['condenser-dirty', 'condenser-fan-slow']);
    expect(closest?.alike).toBeGreaterThan(0.9);
    const { parting } = contrastOf(CANTEEN, closest!);
    expect(parting.map(({ compared }) => compared.id).join()).toContain('look:condenser');
  });

  test('no edge joins a cause with nothing wrong: nothing is moved alike', () => {
    expect(edgesOf(CANTEEN).some(({ causes }) => causes.includes('no-fault'))).toBe(false);
  });

  test('every edge is parted by some reading as far as it says, counted anew', () => {
    const { differential, callout } = CANTEEN;
    const expectations = new Expectations(differential, []);
    const all = comparedOn(benchAt(callout), differential).filter((one) => !isOfUnit(one));
    for (const { causes, apart } of edgesOf(CANTEEN)) {
      const [a, b] = causes;
      const most = all.reduce((best, one) => {
        const [x, y] = [expectedOf(expectations, a, one), expectedOf(expectations, b, one)];
        return x && y ? Math.max(best, separation(x, y)) : best;
      }, 0);
      expect(apart).toBeCloseTo(most, 9);
    }
  });

  test('the path begins with what is met often and looks much alike', () => {
    const order = [...edgesOf(GUIDED)].sort(byNeed);
    expect(order[0]?.causes).toEqual(['undercharge', 'drier-restriction']);
  });

  test('likeness is 1 for the same movements, 0 for opposite ones, and the common part of the larger else', () => {
    expect(likeness([1, -2, 3], [1, -2, 3])).toBe(1);
    expect(likeness([1, -2], [-1, 2])).toBe(0);
    // common: 1 of the first; all: 2 + 3 + 1
    expect(likeness([1, 3, 0], [2, -1, 1])).toBeCloseTo(1 / 6, 12);
    expect(likeness([0, 0], [0, 0])).toBe(0);
  });

  test('a movement is counted in spreads of the sound machine, three at most', () => {
    expect(movement({ mean: 4, sd: 1 }, { mean: 2, sd: 4 })).toBe(0.5);
    expect(movement({ mean: -90, sd: 1 }, { mean: 2, sd: 4 })).toBe(-3);
    expect(movement(null, { mean: 2, sd: 4 })).toBe(0);
  });

  test('an id names plant and causes whatever their order, and nothing else is one', () => {
    const id = edgeId('cold-room', ['undercharge', 'bulb-loose']);
    expect(id).toBe(edgeId('cold-room', ['bulb-loose', 'undercharge']));
    expect(edgeOfId(id)).toEqual({ plant: 'cold-room', causes: ['bulb-loose', 'undercharge'] });
    expect(edgeOfId('cold-room/undercharge')).toBeNull();
  });
});

describe('the worked contrast', () => {
  test('what both do alike lies on the same side of the sound machine, what parts them does not overlap by half', () => {
    const edge = edgesOf(GUIDED).find(({ id }) => id.includes('drier'))!;
    const { alike, parting } = contrastOf(GUIDED, edge);
    expect(alike.length).toBeGreaterThan(0);
    for (const { of, sound } of alike) {
      const sides = of.map(({ middle }) => Math.sign(middle - sound.middle));
      expect(sides[0]).toBe(sides[1]);
    }
    // Subcooling parts these two on a fixed orifice. Common practice, no source.
    expect(parting[0]?.compared.id).toBe('subcooling/running');
    const [charge, drier] = parting[0]!.of;
    expect(charge.high).toBeLessThan(drier.low);
  });
});
