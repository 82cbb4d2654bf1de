/**
 * Where the page is, in the fragment of its address: nothing of it reaches a server. `#callout=pack/callout` opens a
 * callout; `&seed=…` fixes its draws, so that a class reads the same digits.
 */
import { signal } from '@preact/signals';

export type Route =
  | { readonly at: 'home' }
  | { readonly at: 'callout'; readonly pack: string; readonly callout: string; readonly seed: string | null };

/** Same rule as for ids in packs. */
const ID = /^[a-z0-9-]{1,64}$/;

export function parseRoute(fragment: string): Route {
  const match = /^#callout=([^/&]+)\/([^/&]+)(?:&seed=([^/&]+))?$/.exec(fragment);
  const [, pack = '', callout = '', seed] = match ?? [];
  if (!ID.test(pack) || !ID.test(callout) || (seed !== undefined && !ID.test(seed))) return { at: 'home' };
  return { at: 'callout', pack, callout, seed: seed ?? null };
}

export function calloutLink(pack: string, callout: string): string {
  return `#callout=${pack}/${callout}`;
}

export const route = signal<Route>(parseRoute(location.hash));

addEventListener('hashchange', () => {
  route.value = parseRoute(location.hash);
});
