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

/** The packs that came first: what takes a callout of a plant, whichever comes first, means one of these. */
const FIRST = ['canal-school', 'larch-valley', 'market-street', 'old-wharf', 'river-mill', 'upper-town'];

export function isFirst({ pack }: ShippedCallout): boolean {
  return FIRST.includes(pack.id);
}

export function shippedCallouts(): ShippedCallout[] {
  const files = readdirSync('scenarios').filter((file) => file.endsWith('.pack.json'));
  const all = files.sort().flatMap((file) => {
    const pack = JSON.parse(readFileSync(`scenarios/${file}`, 'utf8')) as Pack;
    return pack.callouts.map((callout) => ({ pack, callout }));
  });
  return [...all.filter(isFirst), ...all.filter((each) => !isFirst(each))];
}

/**
 * The callouts on splits of the packs that came first: a test that plays whole attempts on all of the machines would take
 * longer than the rest together. `npm run prove` and `check` go through all.
 */
export function splitCallouts(): ShippedCallout[] {
  return shippedCallouts()
    .filter(isFirst)
    .filter(({ callout }) => callout.plant.endsWith('-split') && callout.plant !== 'multi-split');
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
