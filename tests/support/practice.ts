/** Shipped callouts as places to practise at. */
import type { Setting } from '../../src/practice/setting';
import { differentialFor, shippedCallouts } from './differentials';

export function settingAt(pack: string, callout: string): Setting {
  const found = shippedCallouts().find((each) => each.pack.id === pack && each.callout.id === callout)!;
  return { pack, callout: found.callout, differential: differentialFor(found) };
}
