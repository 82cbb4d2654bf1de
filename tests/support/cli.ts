import { Readable, Writable } from 'node:stream';
import { runCli } from '../../src/cli/program';

export interface CliResult {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** One command line in this process, with its own streams. */
export async function cli(args: readonly string[], input = ''): Promise<CliResult> {
  const out: string[] = [];
  const err: string[] = [];
  const sink = (list: string[]) =>
    new Writable({
      write(chunk, _encoding, done) {
        list.push(String(chunk));
        done();
      },
    });
  const io = { stdin: Readable.from([Buffer.from(input)]), stdout: sink(out), stderr: sink(err) };
  const code = await runCli(args, io);
  return { code, out: out.join(''), err: err.join('') };
}

export function jsonLines<Value = Record<string, unknown>>(text: string): Value[] {
  return text
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Value);
}
