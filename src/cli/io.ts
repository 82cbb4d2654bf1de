/** Streams for commands: whole inputs with a size limit, lines as they come, output that waits for its reader. */
import { createReadStream } from 'node:fs';
import type { Readable, Writable } from 'node:stream';
import { RefusedInput } from './exit';

export interface Io {
  readonly stdin: Readable;
  readonly stdout: Writable;
  readonly stderr: Writable;
}

const MAX_BYTES = 16_000_000;
const MAX_LINE = 1_000_000;

/** The whole text of a file, or of stdin for `-`. */
export async function readText(source: string, io: Io, limit = MAX_BYTES): Promise<string> {
  const chunks: Buffer[] = [];
  let size = 0;
  try {
    for await (const chunk of open(source, io)) {
      const bytes = Buffer.from(chunk);
      size += bytes.length;
      if (size > limit) throw new RefusedInput(`${nameOf(source)}: more than ${limit} bytes`);
      chunks.push(bytes);
    }
  } catch (error) {
    throw unreadable(source, error);
  }
  return Buffer.concat(chunks).toString('utf8');
}

/** Lines of a file or of stdin as they arrive, numbered from 1; blank lines are skipped. */
export async function* readLines(source: string, io: Io): AsyncGenerator<{ number: number; text: string }> {
  const decoder = new TextDecoder();
  let rest = '';
  let number = 0;
  const stream = open(source, io);
  try {
    for await (const chunk of stream) {
      const parts = (rest + decoder.decode(Buffer.from(chunk), { stream: true })).split('\n');
      rest = parts.pop() ?? '';
      for (const part of parts) {
        number += 1;
        if (part.trim() !== '') yield { number, text: part };
      }
      if (rest.length > MAX_LINE)
        throw new RefusedInput(`${nameOf(source)}, line ${number + 1}: longer than ${MAX_LINE}`);
    }
  } catch (error) {
    throw unreadable(source, error);
  }
  rest += decoder.decode();
  if (rest.trim() !== '') yield { number: number + 1, text: rest };
}

/** Writes and waits while the reader is behind, so that a long batch does not pile up in memory. */
export async function write(stream: Writable, text: string): Promise<void> {
  if (stream.write(text)) return;
  await new Promise<void>((resolve, reject) => {
    const done = () => {
      stream.off('drain', done).off('error', fail);
      resolve();
    };
    const fail = (error: Error) => {
      stream.off('drain', done).off('error', fail);
      reject(error);
    };
    stream.once('drain', done).once('error', fail);
  });
}

export function writeJsonLine(io: Io, value: unknown): Promise<void> {
  return write(io.stdout, `${JSON.stringify(value)}\n`);
}

export function nameOf(source: string): string {
  return source === '-' ? 'standard input' : source;
}

function open(source: string, io: Io): Readable {
  return source === '-' ? io.stdin : createReadStream(source);
}

function unreadable(source: string, error: unknown): unknown {
  const code = (error as NodeJS.ErrnoException | null)?.code;
  if (code === 'ENOENT') return new RefusedInput(`${source}: no such file`);
  if (code === 'EISDIR') return new RefusedInput(`${source}: a folder, not a file`);
  if (code === 'EACCES') return new RefusedInput(`${source}: may not be read`);
  return error;
}
