/** How this person wants the page; kept on the device, never part of an attempt. */
import { computed, effect, signal } from '@preact/signals';
import { createText, LANGUAGES, type Language, type Pseudo, SYSTEMS, type UnitSystem } from '../i18n';

export const THEMES = ['auto', 'paper', 'night'] as const;
export type Theme = (typeof THEMES)[number];
export const MOTIONS = ['auto', 'on', 'off'] as const;
export type Motion = (typeof MOTIONS)[number];

const STORE = 'coldbench.preferences';

function remembered(): Record<string, unknown> {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(STORE) ?? '{}');
    return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
  } catch {
    // A blocked or spoilt store costs nothing but the choice of language.
    return {};
  }
}

function oneOf<T extends string>(list: readonly T[], value: unknown, otherwise: T): T {
  return list.find((item) => item === value) ?? otherwise;
}

const stored = remembered();
const device = navigator.languages ?? [navigator.language];
const spoken = device.map((tag) => tag.slice(0, 2)).find((code) => LANGUAGES.some((one) => one === code));
/** Inch-pound units are the trade's habit in the United States alone. */
const habit: UnitSystem = device[0]?.endsWith('-US') ? 'ip' : 'si';

export const language = signal<Language>(oneOf(LANGUAGES, stored.language, (spoken as Language) ?? 'en'));
export const units = signal<UnitSystem>(oneOf(SYSTEMS, stored.units, habit));
export const theme = signal<Theme>(oneOf(THEMES, stored.theme, 'auto'));
export const motion = signal<Motion>(oneOf(MOTIONS, stored.motion, 'auto'));

/** Predict before a reading settles. */
export const chalk = signal(stored.chalk === true);

/** `?text=double` shows every text twice, to find what clips or overlaps. For whoever works on the page. */
const pseudo: Pseudo = new URLSearchParams(location.search).get('text') === 'double' ? 'double' : 'none';

export const text = computed(() => createText(language.value, units.value, pseudo));

const dark = matchMedia('(prefers-color-scheme: dark)');
const still = matchMedia('(prefers-reduced-motion: reduce)');
const deviceDark = signal(dark.matches);
const deviceStill = signal(still.matches);
dark.addEventListener('change', () => {
  deviceDark.value = dark.matches;
});
still.addEventListener('change', () => {
  deviceStill.value = still.matches;
});

export const shownTheme = computed<'paper' | 'night'>(() =>
  theme.value === 'auto' ? (deviceDark.value ? 'night' : 'paper') : theme.value,
);
export const reducedMotion = computed(() => (motion.value === 'auto' ? deviceStill.value : motion.value === 'off'));

effect(() => {
  document.documentElement.dataset.theme = shownTheme.value;
  document.documentElement.lang = language.value;
});
effect(() => {
  const choice = {
    language: language.value,
    units: units.value,
    theme: theme.value,
    motion: motion.value,
    chalk: chalk.value,
  };
  try {
    localStorage.setItem(STORE, JSON.stringify(choice));
  } catch {
    // See `remembered`.
  }
});
