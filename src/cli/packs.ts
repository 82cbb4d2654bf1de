/** Packs by file, by stdin, or by the id of one that ships with Coldbench. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { machineFacts } from '../attempt/pack/facts';
import { readPack } from '../attempt/pack/load';
import type { PackProblem } from '../attempt/pack/problems';
import type { Callout, Pack } from '../attempt/pack/types';
import { RefusedInput } from './exit';
import { type Io, nameOf, readText } from './io';

export const SCENARIOS = fileURLToPath(new URL('../../scenarios/', import.meta.url));
const ENDING = '.pack.json';

/** A pack that did not pass; `problems` lists everything that is wrong. */
export class RefusedPack extends RefusedInput {
  constructor(
    readonly source: string,
    readonly problems: readonly PackProblem[],
  ) {
    super(problems.map(({ message }) => `${source}: ${message}`).join('\n'));
  }
}

/** `source` is a file, `-`, or a shipped pack's id. */
export async function loadPack(source: string, io: Io): Promise<Pack> {
  const path = shippedIds().includes(source) ? join(SCENARIOS, source + ENDING) : source;
  const outcome = readPack(await readText(path, io), machineFacts);
  if (!outcome.ok) throw new RefusedPack(nameOf(source), outcome.problems);
  return outcome.pack;
}

export function shippedIds(): string[] {
  return readdirSync(SCENARIOS)
    .filter((file) => file.endsWith(ENDING))
    .map((file) => file.slice(0, -ENDING.length))
    .sort();
}

/** A callout as `pack#callout`, or the bare id of a callout in a shipped pack. */
export async function loadCallout(reference: string, io: Io): Promise<{ pack: Pack; callout: Callout }> {
  const [source, id] = reference.includes('#') ? splitAtLast(reference, '#') : [null, reference];
  const sources = source === null ? shippedIds() : [source];
  const known: string[] = [];
  for (const each of sources) {
    const pack = await loadPack(each, io);
    const callout = pack.callouts.find((one) => one.id === id);
    if (callout) return { pack, callout };
    known.push(...pack.callouts.map((one) => one.id));
  }
  throw new RefusedInput(`no callout "${id}" in ${sources.join(', ')}; there are: ${known.join(', ')}`);
}

function splitAtLast(text: string, mark: string): [string, string] {
  const at = text.lastIndexOf(mark);
  return [text.slice(0, at), text.slice(at + mark.length)];
}
