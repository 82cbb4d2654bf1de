import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough, Readable, Writable } from 'node:stream';
import { afterAll, expect, test } from 'vitest';
import { csvLine } from '../../src/cli/csv';
import { type Io, readLines, readText, write } from '../../src/cli/io';
import { textTable } from '../../src/cli/table';

const folder = mkdtempSync(join(tmpdir(), 'cli-io-'));
afterAll(() => rmSync(folder, { recursive: true }));

const ioOf = (...chunks: (string | Buffer)[]): Io => ({
  stdin: Readable.from(chunks.map((chunk) => Buffer.from(chunk))),
  stdout: new PassThrough(),
  stderr: new PassThrough(),
});
const linesOf = async (io: Io) => {
  const lines: string[] = [];
  for await (const { number, text } of readLines('-', io)) lines.push(`${number}:${text}`);
  return lines;
};

test('lines are found across chunks, with or without a last line break, blank ones skipped but counted', async () => {
  expect(await linesOf(ioOf('a\nb', 'c\n\n', 'd'))).toEqual(['1:a', '2:bc', '4:d']);
});

test('a letter that two chunks share is put together again', async () => {
  const bytes = Buffer.from('año\n');
  expect(await linesOf(ioOf(bytes.subarray(0, 2), bytes.subarray(2)))).toEqual(['1:año']);
});

test('a line without end is refused before it fills the memory', async () => {
  await expect(linesOf(ioOf('x'.repeat(1_000_001), 'y\n'))).rejects.toThrow('standard input, line 1: longer than');
});

test('a missing file, a folder and a huge file are refused by name', async () => {
  const big = join(folder, 'big.json');
  writeFileSync(big, 'x'.repeat(100));
  await expect(readText(join(folder, 'none.json'), ioOf())).rejects.toThrow('none.json: no such file');
  await expect(readText(folder, ioOf())).rejects.toThrow('a folder, not a file');
  await expect(readText(big, ioOf(), 99)).rejects.toThrow('big.json: more than 99 bytes');
  expect(await readText(big, ioOf(), 100)).toHaveLength(100);
});

test('writing waits for a slow reader', async () => {
  let taken = 0;
  const slow = new Writable({
    highWaterMark: 1,
    write(_chunk, _encoding, done) {
      setTimeout(() => {
        taken += 1;
        done();
      }, 5);
    },
  });
  for (let line = 0; line < 5; line += 1) {
    await write(slow, 'line\n');
    expect(taken).toBe(line + 1);
  }
});

test('cells that hold quotes, commas or line breaks are quoted; what looks like a formula is defused', () => {
  expect(csvLine(['a,b', 'say "x"', 'two\nlines', '=1+1', '-3', -3, null])).toBe(
    '"a,b","say ""x""","two\nlines",\'=1+1,\'-3,-3,\r\n',
  );
});

test('a table lines its columns up', () => {
  expect(
    textTable(
      ['probe', 'value'],
      [
        ['superheat', '6.1'],
        ['cop', '3.25'],
      ],
    ),
  ).toBe('probe      value\nsuperheat    6.1\ncop         3.25\n');
});
