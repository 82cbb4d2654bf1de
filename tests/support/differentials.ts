/** The shipped packs with their differentials: those that ship where they are current, else computed here and now. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { REAL_WORLD } from '../../src/attempt';
import type { Callout, Pack } from '../../src/attempt/pack/types';
import { computeDifferential, type Differential, decodeDifferential, differentialInput } from '../../src/examiner';
import { differentialFile, isCurrent } from '../../src/examiner/shipped';

export interface ShippedCallout {
  readonly pack: Pack;
  readonly callout: Callout;
}

export function shippedCallouts(): ShippedCallout[] {
  const files = readdirSync('scenarios').filter((file) => file.endsWith('.pack.json'));
  return files.flatMap((file) => {
    const pack = JSON.parse(readFileSync(`scenarios/${file}`, 'utf8')) as Pack;
    return pack.callouts.map((callout) => ({ pack, callout }));
  });
}

/** The callouts on splits: a test that plays whole attempts on all of the machines would take longer than the rest together. */
export function splitCallouts(): ShippedCallout[] {
  return shippedCallouts().filter(({ callout }) => callout.plant.endsWith('-split') && callout.plant !== 'multi-split');
}

export function differentialFor({ pack, callout }: ShippedCallout): Differential {
  const path = `scenarios/differentials/${differentialFile(pack.id, callout.id)}`;
  const input = differentialInput(callout);
  if (existsSync(path)) {
    const packed = JSON.parse(readFileSync(path, 'utf8'));
    if (isCurrent(packed, input, REAL_WORLD)) return decodeDifferential(packed);
  }
  return computeDifferential(input);
}
