/** Attempts as they are handed in: codes, files, lines of either. */
import { decode, fromFile } from '../attempt/codes';
import type { Attempt } from '../attempt/types';
import { type Io, nameOf, readLines } from './io';

export interface HandedIn {
  /** where it came from, for the report: a file, `file:3` for its third line, or `code 1` */
  readonly source: string;
  /** Throws AttemptCodeError. */
  read(): Attempt;
}

/** Each argument is an attempt code, or a file (or `-`) that holds one attempt or one attempt a line. */
export async function* handedIn(args: readonly string[], io: Io): AsyncGenerator<HandedIn> {
  for (const [index, arg] of args.entries()) {
    if (/^bench\d+\./.test(arg)) yield { source: `code ${index + 1}`, read: () => decode(arg) };
    else yield* fromSource(arg, io);
  }
}

async function* fromSource(source: string, io: Io): AsyncGenerator<HandedIn> {
  const name = nameOf(source);
  let file: string[] | null = null;
  for await (const { number, text } of readLines(source, io)) {
    // A saved attempt is one object over many lines; its first line is the bare bracket.
    if (number === 1 && text.trim() === '{') file = [];
    if (file) file.push(text);
    else
      yield { source: `${name}:${number}`, read: () => (text.trimStart().startsWith('{') ? fromFile : decode)(text) };
  }
  if (file) yield { source: name, read: () => fromFile(file.join('\n')) };
}
