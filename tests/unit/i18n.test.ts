import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { createText, type Key, parseNumber, type UnitSystem } from '../../src/i18n';
import { en as shell } from '../../src/i18n/en';
import { es as spanishShell } from '../../src/i18n/es';
import { formatNumber } from '../../src/i18n/format';
import { practiceTexts } from '../../src/i18n/practice';
import { digitsForStep, fromShown, KINDS, type Kind, toShown } from '../../src/i18n/units';

const en = { ...shell, ...practiceTexts.en };
const es = { ...spanishShell, ...practiceTexts.es };
const SOURCE = fileURLToPath(new URL('../../src', import.meta.url));

type Tree = { readonly [key: string]: string | Tree };

function leaves(tree: Tree, path = ''): [string, string][] {
  return Object.entries(tree).flatMap(([key, value]) =>
    typeof value === 'string' ? [[path + key, value] as [string, string]] : leaves(value, `${path}${key}.`),
  );
}
const placeholders = (text: string) => [...text.matchAll(/\{\{(\w+)\}\}/g)].map((match) => match[1]).sort();

describe('catalogues', () => {
  const english = new Map(leaves(en as unknown as Tree));
  const spanish = new Map(leaves(es as unknown as Tree));

  test('both languages have the same keys', () => {
    expect([...spanish.keys()].sort()).toEqual([...english.keys()].sort());
  });

  test('a text has the same placeholders in both languages', () => {
    const different = [...english].filter(
      ([key, text]) => `${placeholders(text)}` !== `${placeholders(spanish.get(key) ?? '')}`,
    );
    expect(different.map(([key]) => key)).toEqual([]);
  });

  test('no text is empty but the unit of a pure number', () => {
    const empty = [...english, ...spanish].filter(([key, text]) => text.trim() === '' && key !== 'names.unit.none');
    expect(empty).toEqual([]);
  });

  test('a plural has both forms', () => {
    const lonely = [...english.keys()].filter(
      (key) =>
        (key.endsWith('_one') && !english.has(key.replace(/_one$/, '_other'))) ||
        (key.endsWith('_other') && !english.has(key.replace(/_other$/, '_one'))),
    );
    expect(lonely).toEqual([]);
  });

  test('a sentence left in English is seen: texts of three words or more differ between the languages', () => {
    const same = [...english].filter(
      ([key, text]) => text.split(/\s+/).length >= 3 && spanish.get(key) === text && !key.startsWith('names.unit.'),
    );
    expect(same.map(([key]) => key)).toEqual([]);
  });

  test('a key that no catalogue has is told on the console and does not throw', () => {
    const complaint = vi.spyOn(console, 'error').mockImplementation(() => {});
    const text = createText('es', 'si');
    expect(text.t('app.nothing.here' as Key as 'app.name')).toBe('app.nothing.here');
    expect(complaint).toHaveBeenCalledWith(expect.stringContaining('app.nothing.here'));
    expect(text.maybe('app.nothing.here')).toBeNull();
    complaint.mockRestore();
  });

  test('doubled text says every text twice', () => {
    expect(createText('en', 'si', 'double').t('app.name')).toBe('Coldbench Coldbench');
  });

  test('every text of the sheets is said somewhere', () => {
    const files = readdirSync(SOURCE, { recursive: true, encoding: 'utf8' }).filter((file) => /\.tsx?$/.test(file));
    const code = files
      .filter((file) => !/i18n.e[ns]/.test(file))
      .map((file) => readFileSync(join(SOURCE, file), 'utf8'))
      .join('\n');
    /** Written out, or made from a template that could end in this word. */
    const isSaid = (key: string) => {
      const parts = key.split('.');
      const stems = parts.map(
        (_, index) => [parts.slice(0, index).join('.'), parts.slice(index + 1).join('.')] as const,
      );
      return (
        code.includes(`'${key}'`) ||
        stems.some(
          ([head, tail]) => head !== '' && code.includes(`${head}.\${`) && code.includes(tail ? `}.${tail}` : '}'),
        )
      );
    };
    const mine = [...english.keys()].filter((key) => /^(app|panels|finish|debrief|guide|practice)\./.test(key));
    expect(mine.length).toBeGreaterThan(200);
    expect(mine.map((key) => key.replace(/_(one|other)$/, '')).filter((key) => !isSaid(key))).toEqual([]);
  });

  test('counting takes the form of the number', () => {
    const text = createText('es', 'si');
    expect(text.t('app.home.callouts', { count: 1 })).toBe('1 aviso');
    expect(text.t('app.home.callouts', { count: 6 })).toBe('6 avisos');
  });
});

describe('units', () => {
  test('a unit that ends in a stop does not double the stop of its sentence', () => {
    const spanish = createText('es', 'si');
    const value = spanish.quantity('pressureGauge', 1.4e6, 1000);
    expect(value).toMatch(/man\.$/);
    expect(spanish.maybe('examiner.tells.fitsBoth', { value }) ?? '').toMatch(/kPa man\. Eso/);
    // What a person typed may end as it likes.
    expect(spanish.t('app.said.marked', { mark: 'fin ...' })).toBe('Marcado: fin ....');
  });

  // Right-hand figures: NIST SP 811 (2008) B.8, or arithmetic on its exact entries.
  test.each<[Kind, number, UnitSystem, number, number]>([
    ['pressure', 101325, 'ip', 14.6959488, 1e-6],
    ['pressureGauge', 689475.7293168, 'ip', 100, 1e-9],
    ['differentialPressure', 249.08891, 'ip', 1, 1e-12],
    ['temperature', 273.15, 'si', 0, 1e-12],
    ['temperature', 273.15, 'ip', 32, 1e-9],
    ['temperature', 233.15, 'ip', -40, 1e-9],
    ['difference', 5, 'si', 5, 1e-12],
    ['difference', 5, 'ip', 9, 1e-12],
    ['flow', 0.4719474432, 'ip', 1000, 1e-9],
    ['flow', 0.5, 'si', 1800, 1e-9],
    ['massFlow', 0.45359237, 'ip', 3600, 1e-9],
    ['mass', 0.45359237, 'ip', 1, 1e-12],
    ['power', 293.0710701722222, 'ip', 1, 1e-9],
    ['enthalpy', 232600, 'ip', 100, 1e-12],
    ['capacitance', 45e-6, 'si', 45, 1e-9],
    ['length', 3.048, 'ip', 10, 1e-12],
  ])('%s: %d SI in %s reads %d', (kind, si, system, shown, tolerance) => {
    expect(Math.abs(toShown(kind, si, system) - shown)).toBeLessThanOrEqual(tolerance);
  });

  test('to the shown unit and back is the same value, for every kind and system', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...KINDS),
        fc.constantFrom<UnitSystem>('si', 'ip'),
        fc.double({ min: -1e7, max: 1e7, noNaN: true }),
        (kind, system, value) => {
          const back = fromShown(kind, toShown(kind, value, system), system);
          return Math.abs(back - value) <= 1e-9 * Math.max(400, Math.abs(value));
        },
      ),
      { seed: 7 },
    );
  });

  test('a difference of temperatures never takes the zero of the scale with it', () => {
    expect(toShown('difference', 0, 'ip')).toBe(0);
    expect(toShown('temperature', 0, 'ip')).toBeCloseTo(-459.67, 9);
  });

  test('digits follow the display step of the instrument in either system', () => {
    expect(digitsForStep('pressureGauge', 1000, 'si')).toBe(0);
    expect(digitsForStep('pressureGauge', 1000, 'ip')).toBe(1);
    expect(digitsForStep('temperature', 0.1, 'si')).toBe(1);
    expect(digitsForStep('temperature', 0.1, 'ip')).toBe(1);
    expect(digitsForStep('capacitance', 1e-7, 'si')).toBe(1);
  });
});

describe('numbers', () => {
  test('each language has its decimal sign, and no thousands sign to mistake for it', () => {
    expect(formatNumber(2860.4, 1, 'en')).toBe('2860.4');
    expect(formatNumber(2860.4, 1, 'es')).toBe('2860,4');
    expect(formatNumber(-3.25, 1, 'en')).toBe('\u22123.3');
    expect(formatNumber(-0.04, 1, 'en')).toBe('0.0');
  });

  test.each([
    ['11.5', 11.5],
    ['11,5', 11.5],
    ['\u22123', -3],
    [' 1 250 ', 1250],
    ['.5', 0.5],
    ['1,250.5', null],
    ['12a', null],
    ['', null],
    ['1e5', null],
    ['--3', null],
  ])('"%s" is read as %s', (typed, value) => {
    expect(parseNumber(typed)).toBe(value);
  });

  test('what is shown can be typed back', () => {
    fc.assert(
      fc.property(fc.integer({ min: -99999, max: 99999 }), fc.constantFrom('en' as const, 'es' as const), (n, lang) => {
        return parseNumber(formatNumber(n / 10, 1, lang)) === n / 10;
      }),
      { seed: 11 },
    );
  });

  test('a quantity keeps its number and unit together', () => {
    expect(createText('en', 'ip').quantity('pressureGauge', 882000)).toBe('127.9\u202fpsig');
    expect(createText('es', 'si').quantity('temperature', 280.25)).toBe('7,1\u202f°C');
    expect(createText('en', 'si').clock(3725)).toBe('1:02');
  });
});
