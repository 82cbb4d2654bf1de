import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CauseId } from '../../physics/types';
import { matching } from '../../src/app/callout/commands';
import { ACT_OF, KEYS } from '../../src/app/callout/keys';
import { CHIPS, unsureChips } from '../../src/attempt/chips';
import { REAL_WORLD } from '../../src/attempt/world';
import { guide as guideEn } from '../../src/i18n/en/guide';
import { guide as guideEs } from '../../src/i18n/es/guide';
import { given, takenBack } from '../../src/panels/stakes/chips';
import { ladder, pressureAt } from '../../src/panels/strip/ladder';

const CAUSES = ['undercharge', 'drier-restriction', 'filter-dirty'] as const satisfies readonly CauseId[];

describe('chips', () => {
  const move = fc.record({ cause: fc.constantFrom(...CAUSES), give: fc.boolean() });

  test('whatever is tapped, there are twenty chips and one at least on "not sure yet"', () => {
    fc.assert(
      fc.property(fc.array(move, { maxLength: 80 }), (moves) => {
        let chips: Partial<Record<CauseId, number>> = {};
        for (const { cause, give } of moves) {
          chips = give ? given(chips, cause) : takenBack(chips, cause);
          const counts = Object.values(chips);
          if (counts.some((count) => count < 0) || unsureChips(chips) < 1) return false;
          if (counts.reduce((sum, count) => sum + count, unsureChips(chips)) !== CHIPS) return false;
        }
        return true;
      }),
      { seed: 3 },
    );
  });

  test('a tap always moves a chip while any other cause or "not sure yet" has one to give', () => {
    const full = { undercharge: 12, 'drier-restriction': 6, 'filter-dirty': 1 };
    expect(given(full, 'filter-dirty')).toEqual({ undercharge: 11, 'drier-restriction': 6, 'filter-dirty': 2 });
    expect(given({ undercharge: 3 }, 'filter-dirty')).toEqual({ undercharge: 3, 'filter-dirty': 1 });
    expect(given({ undercharge: 19 }, 'undercharge')).toEqual({ undercharge: 19 });
    expect(takenBack({ undercharge: 1 }, 'undercharge')).toEqual({ undercharge: 0 });
    expect(takenBack({}, 'undercharge')).toEqual({});
  });
});

describe('pressure strip', () => {
  const r32 = REAL_WORLD.saturation('R-32');

  test('the pressure of a temperature is the inverse of the table', () => {
    for (const t of [253.15, 273.15, 283.15, 318.15, 333.15]) {
      expect(r32.tDew(pressureAt(r32, t))).toBeCloseTo(t, 6);
    }
  });

  test.each(['si', 'ip'] as const)('in %s its rungs lie where the table puts them, and the pointer on it', (system) => {
    const pressure = 1.1e6;
    const shape = ladder(r32, 'low', pressure, 0, system);
    const here = r32.tDew(pressure)!;
    expect(here).toBeGreaterThan(shape.low);
    expect(here).toBeLessThan(shape.high);
    const factor = system === 'si' ? 1000 : 6894.757293168361;
    const labelled = shape.pressures.filter(({ label }) => label !== null);
    expect(labelled.length).toBeGreaterThanOrEqual(4);
    for (const { at, label } of labelled) {
      const t = r32.tDew(label! * factor)!;
      expect(at).toBeCloseTo((t - shape.low) / (shape.high - shape.low), 9);
    }
  });

  test('on the gauge edge every label is less by the air of the site', () => {
    const air = 85e3;
    const gauge = ladder(r32, 'high', 2.8e6, air, 'si');
    const rung = gauge.pressures.find(({ label }) => label !== null)!;
    const t = gauge.low + rung.at * (gauge.high - gauge.low);
    expect(pressureAt(r32, t)).toBeCloseTo(1000 * rung.label! + air, 0);
  });

  test('a pressure far off the usual reach is still on the ladder', () => {
    const shape = ladder(r32, 'low', 2.6e6, 0, 'si');
    expect(r32.tDew(2.6e6)!).toBeLessThan(shape.high);
  });
});

describe('keys and commands', () => {
  test('no two rows claim one key', () => {
    const claimed = KEYS.flatMap(({ keys, act }) => (act ? keys : []));
    expect(new Set(claimed).size).toBe(claimed.length);
    expect(ACT_OF.size).toBe(claimed.length);
  });

  const command = (label: string) => ({ id: label, label, run: () => {} });
  const commands = [
    'Pipe clamp, with its insulation – suction line at the service valve',
    'Low-side gauge – suction service port',
    'Pinza para tubo – línea de aspiración',
  ].map(command);

  test.each([
    ['clamp suction', 0],
    ['suc cla', 0],
    ['gauge suc', 1],
    ['linea asp', 2],
    ['LÍNEA', 2],
  ])('"%s" finds what it means', (typed, index) => {
    expect(matching(commands, typed, 5)[0]).toBe(commands[index]);
  });

  test('words that nothing begins with find nothing', () => {
    expect(matching(commands, 'clamp zebra', 5)).toEqual([]);
    expect(matching(commands, '   ', 5)).toEqual([]);
  });
});

describe('the guided callout', () => {
  // At most 450 words for the first ten minutes.
  test.each([
    ['English', guideEn],
    ['Spanish', guideEs],
  ])('says what it has to say in 450 words: %s', (_name, catalogue) => {
    const words = Object.values(catalogue.say).join(' ').split(/\s+/).length;
    expect(words).toBeGreaterThan(100);
    expect(words).toBeLessThanOrEqual(450);
  });
});
