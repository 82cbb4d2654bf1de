/** The differential of a callout: the one that ships with its pack where that is good, else computed once a run. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { REAL_WORLD } from '../attempt';
import type { Callout, Pack } from '../attempt/pack/types';
import { computeDifferential, decodeDifferential, differentialInput } from '../examiner';
import type { PackedDifferential } from '../examiner/compact';
import { differentialFile, isCurrent } from '../examiner/shipped';
import type { Differential } from '../examiner/types';
import type { Io } from './io';
import { SCENARIOS } from './packs';
import { startProgress } from './progress';

const known = new WeakMap<Callout, Differential>();

export function differentialOf(pack: Pack, callout: Callout, io: Io): Differential {
  const found = known.get(callout) ?? shipped(pack, callout) ?? computed(callout, io);
  known.set(callout, found);
  return found;
}

function shipped(pack: Pack, callout: Callout): Differential | null {
  const path = join(SCENARIOS, 'differentials', differentialFile(pack.id, callout.id));
  if (!existsSync(path)) return null;
  const packed = JSON.parse(readFileSync(path, 'utf8')) as PackedDifferential;
  return isCurrent(packed, callout, REAL_WORLD) ? decodeDifferential(packed) : null;
}

function computed(callout: Callout, io: Io): Differential {
  const progress = startProgress(io, `differential of ${callout.id}`);
  const differential = computeDifferential(differentialInput(callout), ({ done, total }) =>
    progress.at(done, total, 'nodes'),
  );
  progress.end();
  return differential;
}
