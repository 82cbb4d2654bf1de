/** Every shipped callout with the differential that ships beside it, for tools that go through all of them. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { REAL_WORLD } from '../attempt';
import type { Callout, Pack } from '../attempt/pack/types';
import { type Differential, decodeDifferential } from '../examiner';
import { differentialFile, isCurrent } from '../examiner/shipped';
import { CheckFailed } from './exit';
import { loadPack, SCENARIOS, shippedIds } from './packs';

export interface ShelvedCallout {
  readonly pack: string;
  readonly callout: Callout;
  readonly differential: Differential;
}

/** In the order of packs and callouts. Throws `CheckFailed` where a differential is not that of the machine as it is. */
export async function shippedSubjects(): Promise<ShelvedCallout[]> {
  const { current, stale } = await shelf();
  if (stale.length > 0) {
    throw new CheckFailed(`${stale[0]} is not of this machine and physics: npm run differentials`);
  }
  return current;
}

/** The same with their packs; those whose differential is not that of the machine as it is by the names of their files. */
export async function shelf(): Promise<{ current: (ShelvedCallout & { packed: Pack })[]; stale: string[] }> {
  const packs = await Promise.all(shippedIds().map((id) => loadPack(id, process)));
  const current: (ShelvedCallout & { packed: Pack })[] = [];
  const stale: string[] = [];
  for (const pack of packs) {
    for (const callout of pack.callouts) {
      const file = differentialFile(pack.id, callout.id);
      const packed = JSON.parse(readFileSync(join(SCENARIOS, 'differentials', file), 'utf8'));
      if (!isCurrent(packed, callout, REAL_WORLD)) stale.push(file);
      else current.push({ pack: pack.id, packed: pack, callout, differential: decodeDifferential(packed) });
    }
  }
  return { current, stale };
}
