/** From untrusted text to a pack, or to a list of everything that is wrong with it. */
import { type PackProblem, type Path, problem, schemaProblems, shown } from './problems';
import { type MachineFacts, ruleProblems } from './rules';
import { LIMITS, PACK_FORMAT, packSchema } from './schema';
import type { Pack } from './types';

export type PackOutcome =
  | { readonly ok: true; readonly pack: Pack }
  | { readonly ok: false; readonly problems: readonly PackProblem[] };

/** Words that would reach an object's prototype when a careless reader copies keys. */
const FORBIDDEN_KEYS: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

/** Reads the text of a pack file. Never throws on bad input. */
export function readPack(text: string, facts: MachineFacts): PackOutcome {
  const bytes = utf8Length(text);
  if (bytes > LIMITS.bytes) return refused('size', `at most ${LIMITS.bytes} bytes`, `${bytes} bytes`);
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    return refused('json', 'JSON text', error instanceof Error ? error.message : 'text that is not JSON');
  }
  return checkPack(value, facts);
}

/** Checks a parsed value. All problems are listed; rules between fields only once the shape is right. */
export function checkPack(value: unknown, facts: MachineFacts): PackOutcome {
  const unsafe = unsafeKey(value);
  if (unsafe) return { ok: false, problems: [unsafe] };
  const format = (value as { format?: unknown } | null)?.format;
  if (typeof format === 'number' && format !== PACK_FORMAT) {
    const expected = `format ${PACK_FORMAT}, which this version of Coldbench reads`;
    return { ok: false, problems: [problem('format', value, ['format'], expected)] };
  }
  const parsed = packSchema.safeParse(value);
  if (!parsed.success) {
    return { ok: false, problems: parsed.error.issues.flatMap((issue) => schemaProblems(packSchema, issue, value)) };
  }
  const { $schema: _address, ...pack } = parsed.data;
  const problems = ruleProblems(pack, facts);
  return problems.length > 0 ? { ok: false, problems } : { ok: true, pack };
}

function refused(rule: string, expected: string, found: string): PackOutcome {
  return { ok: false, problems: [problem(rule, undefined, [], expected, found)] };
}

/** The first forbidden key or too deep nesting, found without recursion: the input may be nested to any depth. */
function unsafeKey(root: unknown): PackProblem | null {
  const waiting: { value: unknown; path: Path }[] = [{ value: root, path: [] }];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const { value, path } = next;
    if (typeof value !== 'object' || value === null) continue;
    if (path.length > LIMITS.depth) {
      return problem('depth', root, path, `nesting of at most ${LIMITS.depth} levels`, 'deeper nesting');
    }
    for (const [name, child] of Object.entries(value)) {
      const key = Array.isArray(value) ? Number(name) : name;
      if (FORBIDDEN_KEYS.has(name))
        return problem('unsafe-key', root, [...path, key], 'another key', `key ${shown(name)}`);
      waiting.push({ value: child, path: [...path, key] });
    }
  }
  return null;
}

function utf8Length(text: string): number {
  return new TextEncoder().encode(text).length;
}
