/** Types that make a missing or misspelt key, or a missing placeholder, an error of the compiler. */

export interface CatalogueTree {
  readonly [key: string]: string | CatalogueTree;
}

/** The same keys as the English source, any text. */
export type SameKeys<T> = { readonly [K in keyof T]: T[K] extends string ? string : SameKeys<T[K]> };

/** Plural forms are two keys in the catalogue (`notes_one`, `notes_other`) and one key for whoever asks (`notes`). */
type WithoutPlural<K extends string> = K extends `${infer Base}_one` | `${infer Base}_other` ? Base : K;

/** Every path to a text, e.g. 'app.home.title'. */
export type KeyOf<T> = {
  [K in keyof T & string]: T[K] extends string ? WithoutPlural<K> : `${K}.${KeyOf<T[K]>}`;
}[keyof T & string];

type Lookup<T, P extends string> = P extends `${infer Head}.${infer Rest}`
  ? Head extends keyof T
    ? Lookup<T[Head], Rest>
    : never
  : P extends keyof T
    ? T[P]
    : `${P}_other` extends keyof T
      ? T[`${P}_other`]
      : never;

type Placeholders<S> = S extends `${string}{{${infer Name}}}${infer Rest}` ? Name | Placeholders<Rest> : never;

/** Named placeholders of one key: `{{count}} notes` → 'count'. */
export type PlaceholdersOf<T, P extends string> = Placeholders<Lookup<T, P>>;
