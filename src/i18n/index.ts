/**
 * Words and numbers for whoever looks: one `Text` per (language, unit system). English is the typed source of every
 * key; a key that the other language lacks does not compile.
 */
import i18next, { type i18n } from 'i18next';
import type { CatalogueTree, KeyOf, PlaceholdersOf, SameKeys } from './catalogue';
import { en } from './en';
import type { practice } from './en/practice';
import { es } from './es';
import { formatNumber, formatQuantity, type Language, THIN } from './format';
import { digitsForStep, type Kind, type UnitSystem } from './units';

export { LANGUAGES, type Language, parseNumber, THIN } from './format';
export {
  absoluteToGauge,
  digitsForStep,
  fromShown,
  gaugeToAbsolute,
  type Kind,
  SYSTEMS,
  toShown,
  UNITS,
  type UnitSystem,
} from './units';

/** Texts of practice come with its screens (`addTexts`): only their keys are known here. */
type Source = typeof en & { readonly practice: typeof practice };
export type Key = KeyOf<Source>;
type Values<K extends Key> = { readonly [P in PlaceholdersOf<Source, K>]: string | number };
type Rest<K extends Key> = [PlaceholdersOf<Source, K>] extends [never] ? [] : [values: Values<K>];

/** A value that ends in an abbreviation ("kPa man.") ends the sentence too: its stop is not written twice. */
function oneStop(text: string): string {
  return text.replace(/(\p{L})\.\.(?!\.)/gu, '$1.');
}

/** `double` says every text twice: what is clipped or overlaps then would be so in some longer language. */
export type Pseudo = 'none' | 'double';

const CATALOGUES: Record<Language, SameKeys<typeof en>> = { en, es };
const late: Record<Language, CatalogueTree>[] = [];

/** Texts that are fetched with the screens that say them, so that the first screen need not wait for them. */
export function addTexts(texts: Record<Language, CatalogueTree>): void {
  if (late.includes(texts)) return;
  late.push(texts);
  for (const words of engines.values()) put(words, texts);
}

function put(words: i18n, texts: Record<Language, CatalogueTree>): void {
  for (const [code, tree] of Object.entries(texts)) words.addResourceBundle(code, 'translation', tree, true, true);
}

export interface Text {
  readonly language: Language;
  readonly system: UnitSystem;
  readonly pseudo: Pseudo;
  t<K extends Key>(key: K, ...rest: Rest<K>): string;
  /** For keys made by other layers (examiner, bench): text, or null when no catalogue has it. */
  maybe(key: string, values?: Readonly<Record<string, string | number>>): string | null;
  /** Number with unit. `step` (SI) is the instrument's display step, which decides the digits. */
  quantity(kind: Kind, si: number, step?: number): string;
  /** The number alone, same digits as `quantity`. */
  bare(kind: Kind, si: number, step?: number): string;
  /** The unit alone. */
  unit(kind: Kind): string;
  number(value: number, digits?: number): string;
  /** Simulated clock, h:mm. */
  clock(seconds: number): string;
  /** The text of a pack in this language. */
  local(texts: { readonly en: string; readonly es: string }): string;
}

function engine(language: Language): i18n {
  const instance = i18next.createInstance();
  void instance.init({
    lng: language,
    fallbackLng: 'en',
    initAsync: false,
    nsSeparator: false,
    interpolation: { escapeValue: false },
    resources: Object.fromEntries(Object.entries(CATALOGUES).map(([code, translation]) => [code, { translation }])),
    saveMissing: true,
    missingKeyHandler: (_languages, _namespace, key) => console.error(`no text for "${key}" in ${language}`),
  });
  for (const texts of late) put(instance, texts);
  return instance;
}

const engines = new Map<Language, i18n>();
function engineOf(language: Language): i18n {
  let found = engines.get(language);
  if (!found) {
    found = engine(language);
    engines.set(language, found);
  }
  return found;
}

export function createText(language: Language, system: UnitSystem, pseudo: Pseudo = 'none'): Text {
  const words = engineOf(language);
  const say = (raw: string) => {
    const text = oneStop(raw);
    return pseudo === 'double' && text !== '' ? `${text} ${text}` : text;
  };
  const digits = (kind: Kind, step?: number) => (step === undefined ? undefined : digitsForStep(kind, step, system));
  const symbol = (name: string) => words.t(`names.unit.${name}`);
  return {
    language,
    system,
    pseudo,
    t: (key, ...rest) => say(words.t(key, rest[0] ?? {})),
    maybe: (key, values) => (words.exists(key, values) ? say(words.t(key, values ?? {})) : null),
    quantity(kind, si, step) {
      const shown = formatQuantity(kind, si, system, language, digits(kind, step));
      const unit = symbol(shown.symbol);
      return unit === '' ? shown.number : `${shown.number}${THIN}${unit}`;
    },
    bare: (kind, si, step) => formatQuantity(kind, si, system, language, digits(kind, step)).number,
    unit: (kind) => symbol(formatQuantity(kind, 0, system, language).symbol),
    number: (value, places = 0) => formatNumber(value, places, language),
    clock(seconds) {
      const minutes = Math.floor(seconds / 60);
      return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
    },
    local: (texts) => say(texts[language]),
  };
}
