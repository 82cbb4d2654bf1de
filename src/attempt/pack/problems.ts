/** What is wrong with a pack, said so that its author can mend it: which callout, which field, found, expected. */
import * as z from 'zod/mini';

export interface PackProblem {
  /** stable word for the rule: `schema` or one of the rules of rules.ts */
  readonly rule: string;
  /** JSON pointer (RFC 6901) to the value */
  readonly pointer: string;
  /** id of the callout, or its number from 1 (`#3`) where it has no usable id; null outside callouts */
  readonly callout: string | null;
  /** the field within the callout or the pack, with dots */
  readonly field: string;
  readonly found: string;
  readonly expected: string;
  /** all of it in one English sentence */
  readonly message: string;
}

export type Path = readonly PropertyKey[];

export function problem(rule: string, root: unknown, path: Path, expected: string, foundText?: string): PackProblem {
  const callout = calloutName(root, path);
  const rest = callout === null ? path : path.slice(2);
  const field = rest.length > 0 ? rest.map(String).join('.') : callout === null ? 'the pack' : 'the callout';
  const found = foundText ?? shown(valueAt(root, path));
  const place = callout === null ? field : `callout ${callout}, ${field}`;
  return {
    rule,
    pointer: path.map((key) => `/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`).join(''),
    callout,
    field,
    found,
    expected,
    message: `${place}: found ${found}, expected ${expected}`,
  };
}

/** One schema issue as one problem per offending key. */
export function schemaProblems(schema: z.core.$ZodType, issue: z.core.$ZodIssue, root: unknown): PackProblem[] {
  if (issue.code === 'unrecognized_keys') {
    const known = keysAt(schema, issue.path);
    const list = known.length > 0 ? `one of ${known.join(', ')}` : 'no such key';
    return issue.keys.map((key) => problem('schema', root, [...issue.path, key], list, `unknown key ${shown(key)}`));
  }
  if (issue.code === 'invalid_key') {
    const expected = 'a key of the form family or family:target';
    return [problem('schema', root, issue.path, expected, `key ${shown(issue.path.at(-1))}`)];
  }
  return [problem('schema', root, issue.path, descriptionAt(schema, issue.path) ?? bare(issue))];
}

function bare(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.expected === 'object' ? 'an object' : `a value of type ${issue.expected}`;
    case 'too_big':
      return `at most ${issue.maximum}${issue.origin === 'string' ? ' characters' : ''}`;
    case 'too_small':
      return `at least ${issue.minimum}${issue.origin === 'string' ? ' character' : ''}`;
    default:
      return issue.message;
  }
}

/** The schema at a path, as far as objects, arrays, records and optional fields go. */
function schemaAt(schema: z.core.$ZodType, path: Path): z.core.$ZodType | undefined {
  let here: z.core.$ZodType | undefined = schema;
  for (const key of path) {
    here = here && childOf(unwrapped(here), key);
    if (!here) return undefined;
  }
  return unwrapped(here);
}

function unwrapped(schema: z.core.$ZodType): z.core.$ZodType {
  const def = (schema as z.core.$ZodTypes)._zod.def;
  return def.type === 'optional' ? unwrapped(def.innerType) : schema;
}

function childOf(schema: z.core.$ZodType, key: PropertyKey): z.core.$ZodType | undefined {
  const def = (schema as z.core.$ZodTypes)._zod.def;
  if (def.type === 'object') return Object.hasOwn(def.shape, key) ? def.shape[String(key)] : undefined;
  if (def.type === 'array') return def.element;
  return def.type === 'record' ? def.valueType : undefined;
}

function descriptionAt(schema: z.core.$ZodType, path: Path): string | undefined {
  const here = schemaAt(schema, path);
  const own = here && z.globalRegistry.get(here)?.description;
  if (own || path.length === 0) return own;
  // A plain leaf (one language of a text) is described by what holds it.
  const holder = schemaAt(schema, path.slice(0, -1));
  return holder && typeof path.at(-1) === 'string' ? z.globalRegistry.get(holder)?.description : undefined;
}

function keysAt(schema: z.core.$ZodType, path: Path): string[] {
  const here = schemaAt(schema, path);
  if (!here) return [];
  const def = (here as z.core.$ZodTypes)._zod.def;
  if (def.type === 'object') return Object.keys(def.shape);
  if (def.type !== 'record') return [];
  const keys = (def.keyType as z.core.$ZodTypes)._zod.def;
  return keys.type === 'enum' ? Object.keys(keys.entries) : [];
}

function calloutName(root: unknown, path: Path): string | null {
  if (path[0] !== 'callouts' || typeof path[1] !== 'number') return null;
  const id = valueAt(root, ['callouts', path[1], 'id']);
  return typeof id === 'string' && /^[a-z0-9-]{1,64}$/.test(id) ? id : `#${path[1] + 1}`;
}

function valueAt(root: unknown, path: Path): unknown {
  let here = root;
  for (const key of path) {
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, key)) return undefined;
    here = (here as Record<PropertyKey, unknown>)[key];
  }
  return here;
}

/** A value in at most 60 characters, harmless whatever it holds. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value);
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  const written = JSON.stringify(value) ?? String(value);
  return written.length > 60 ? `${written.slice(0, 57)}…"` : written;
}
