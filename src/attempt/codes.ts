/**
 * An attempt as one line of text, and as a file. Code: `bench1.<length>.<check>.<text>`, where text is the canonical
 * JSON compressed for addresses, length its size before compression (base 36), check the CRC-32 of length and text.
 */
import lz from 'lz-string';
import { canonicalJson, checkValue } from './canonical';
import { ATTEMPT_FORMAT, shapedAttempt } from './schema';
import type { Attempt } from './types';

export const CODE_PREFIX = 'bench1';
/** Longer codes are refused unread: decompression cannot be bounded, so what goes into it must be. */
export const LONGEST_CODE = 8000;
/** Size of the JSON behind a code, and of a file, characters. */
export const LONGEST_JSON = 400_000;

export const ATTEMPT_CODE_ERRORS = [
  'empty',
  'not-a-code',
  'other-version',
  'too-long',
  'damaged',
  'not-json',
  'other-format',
  'not-an-attempt',
] as const;
export type AttemptCodeErrorCode = (typeof ATTEMPT_CODE_ERRORS)[number];

/** Says where (`where`: part of the code, or path in the attempt) and what (`code`, `what`). */
export class AttemptCodeError extends Error {
  override readonly name = 'AttemptCodeError';

  constructor(
    readonly code: AttemptCodeErrorCode,
    readonly where: string,
    readonly what: string,
  ) {
    super(`${where}: ${what}`);
  }
}

/** Throws AttemptCodeError `too-long` where the attempt has to travel as a file, `not-an-attempt` where it is none. */
export function encode(attempt: Attempt): string {
  const json = canonicalJson(checked(attempt));
  const text = lz.compressToEncodedURIComponent(json);
  const length = json.length.toString(36);
  const code = [CODE_PREFIX, length, checkValue(`${length}.${text}`), text].join('.');
  if (code.length > LONGEST_CODE) {
    throw new AttemptCodeError('too-long', 'code', `${code.length} characters, at most ${LONGEST_CODE}; use a file`);
  }
  return code;
}

/** Reads a code as it was pasted: spaces and line breaks that mail put in are dropped. Throws AttemptCodeError. */
export function decode(pasted: string): Attempt {
  if (pasted.length > 2 * LONGEST_CODE) throw tooLong('code', pasted.length, LONGEST_CODE);
  const code = pasted.replace(/\s+/g, '');
  if (code === '') throw new AttemptCodeError('empty', 'code', 'no text');
  if (code.length > LONGEST_CODE) throw tooLong('code', code.length, LONGEST_CODE);

  const [prefix, length, check, text, ...more] = code.split('.');
  if (!/^bench\d+$/.test(prefix!)) {
    throw new AttemptCodeError('not-a-code', 'start', `"${prefix!.slice(0, 20)}" found, "${CODE_PREFIX}." expected`);
  }
  if (prefix !== CODE_PREFIX) {
    throw new AttemptCodeError('other-version', 'start', `version "${prefix}" found, "${CODE_PREFIX}" expected`);
  }
  if (length === undefined || check === undefined || text === undefined || more.length > 0) {
    throw new AttemptCodeError('damaged', 'code', 'four parts between dots expected; a part is missing or too many');
  }
  if (!/^[0-9a-z]{1,6}$/.test(length)) throw new AttemptCodeError('damaged', 'length', `"${length}" is no length`);
  const declared = Number.parseInt(length, 36);
  if (declared > LONGEST_JSON) throw tooLong('length', declared, LONGEST_JSON);
  const computed = checkValue(`${length}.${text}`);
  if (check !== computed) {
    throw new AttemptCodeError(
      'damaged',
      'check',
      `"${check}" found, "${computed}" computed: the code was altered or cut`,
    );
  }
  const json = lz.decompressFromEncodedURIComponent(text);
  if (!json) throw new AttemptCodeError('damaged', 'text', 'cannot be unpacked');
  if (json.length !== declared) {
    throw new AttemptCodeError('damaged', 'text', `${json.length} characters unpacked, ${declared} declared`);
  }
  return parse(json, 'code');
}

/** The text of an `.attempt.json` file, for attempts of any length. */
export function toFile(attempt: Attempt): string {
  return `${JSON.stringify(JSON.parse(canonicalJson(checked(attempt))), null, 1)}\n`;
}

/** Reads an `.attempt.json` file. Throws AttemptCodeError. */
export function fromFile(text: string): Attempt {
  if (text.length > LONGEST_JSON) throw tooLong('file', text.length, LONGEST_JSON);
  if (text.trim() === '') throw new AttemptCodeError('empty', 'file', 'no text');
  return parse(text, 'file');
}

function parse(json: string, where: string): Attempt {
  let value: unknown;
  try {
    value = JSON.parse(json);
  } catch (error) {
    throw new AttemptCodeError('not-json', where, error instanceof Error ? error.message : 'not JSON');
  }
  const format = (value as { format?: unknown } | null)?.format;
  if (typeof format === 'number' && format !== ATTEMPT_FORMAT) {
    throw new AttemptCodeError('other-format', 'format', `${format} found, ${ATTEMPT_FORMAT} expected`);
  }
  return checked(value);
}

function checked(value: unknown): Attempt {
  const outcome = shapedAttempt(value);
  if (outcome.ok) return outcome.value;
  throw new AttemptCodeError('not-an-attempt', outcome.problem.where, outcome.problem.what);
}

function tooLong(where: string, found: number, allowed: number): AttemptCodeError {
  return new AttemptCodeError('too-long', where, `${found} characters, at most ${allowed}`);
}
