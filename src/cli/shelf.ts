/** Every shipped callout with the differential that ships beside it, for tools that go through all of them. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { REAL_WORLD } from '../attempt';
import type { Callout } from '../attempt/pack/types';
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
  const packs = await Promise.all(shippedIds().map((id) => loadPack(id, process)));
  return packs.flatMap((pack) =>
    pack.callouts.map((callout) => {
      const file = differentialFile(pack.id, callout.id);
      const packed = JSON.parse(readFileSync(join(SCENARIOS, 'differentials', file), 'utf8'));
      if (!isCurrent(packed, callout, REAL_WORLD)) {
        throw new CheckFailed(`${file} is not of this machine and physics: npm run differentials`);
      }
      return { pack: pack.id, callout, differential: decodeDifferential(packed) };
    }),
  );
}
