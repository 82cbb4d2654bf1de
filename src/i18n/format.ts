/** Numbers as a person writes them, and back. */
import { type Kind, toShown, UNITS, type UnitSymbol, type UnitSystem } from './units';

export const LANGUAGES = ['en', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];

/** A number with its unit, apart, so that a table may set them in two columns. */
export interface Shown {
  readonly number: string;
  readonly symbol: UnitSymbol;
}

/** Narrow no-break space between a number and its unit (SI brochure 5.4.3 asks for a space; it must not break). */
export const THIN = '\u202f';
/** The true minus sign: a hyphen is lost beside digits. */
const MINUS = '\u2212';

const formats = new Map<string, Intl.NumberFormat>();

function numberFormat(language: Language, digits: number): Intl.NumberFormat {
  const key = `${language}/${digits}`;
  let format = formats.get(key);
  if (!format) {
    format = new Intl.NumberFormat(language, {
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
      useGrouping: false,
    });
    formats.set(key, format);
  }
  return format;
}

/** Plain number; no grouping, since "1.250" and "1,250" mean different things in the two languages. */
export function formatNumber(value: number, digits: number, language: Language): string {
  const text = numberFormat(language, digits).format(value);
  const isZero = !/[1-9]/.test(text);
  return isZero ? text.replace('-', '') : text.replace('-', MINUS);
}

/** SI value in the unit of this system. `digits` overrides the unit's usual number of digits. */
export function formatQuantity(
  kind: Kind,
  si: number,
  system: UnitSystem,
  language: Language,
  digits: number = UNITS[kind][system].digits,
): Shown {
  return { number: formatNumber(toShown(kind, si, system), digits, language), symbol: UNITS[kind][system].symbol };
}

/**
 * What a person typed, or null if it is not one number. Both decimal signs are taken in both languages, so that a
 * keypad with the other sign still works; a second sign, or letters, is refused instead of guessed at.
 */
export function parseNumber(text: string): number | null {
  const plain = text
    .trim()
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/[\s\u00a0\u202f]/g, '');
  if (!/^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(plain)) return null;
  const value = Number(plain.replace(',', '.'));
  return Number.isFinite(value) ? value : null;
}
