/**
 * Where the page is, in the fragment of its address: nothing of it reaches a server. `#callout=pack/callout` opens a
 * callout; `&seed=…` fixes its draws, so that a class reads the same digits. `#practise=way` opens a way to practise,
 * `#practise=way/what` with what it is about.
 */
import { signal } from '@preact/signals';

/** In the order in which a learner meets them. */
export const PRACTICE_WAYS = ['path', 'quarrel', 'closed-circuit', 'short-bag', 'radio', 'trap'] as const;
export type PracticeWay = (typeof PRACTICE_WAYS)[number];

export type Route =
  | { readonly at: 'home' }
  | { readonly at: 'practice'; readonly way: PracticeWay; readonly what: string | null }
  | { readonly at: 'callout'; readonly pack: string; readonly callout: string; readonly seed: string | null };

/** Same rule as for ids in packs. */
const ID = /^[a-z0-9-]{1,64}$/;

export function parseRoute(fragment: string): Route {
  const practice = /^#practise=([a-z-]+)(?:\/(.+))?$/.exec(fragment);
  const way = PRACTICE_WAYS.find((each) => each === practice?.[1]);
  if (way) return { at: 'practice', way, what: practice?.[2] ?? null };
  const match = /^#callout=([^/&]+)\/([^/&]+)(?:&seed=([^/&]+))?$/.exec(fragment);
  const [, pack = '', callout = '', seed] = match ?? [];
  if (!ID.test(pack) || !ID.test(callout) || (seed !== undefined && !ID.test(seed))) return { at: 'home' };
  return { at: 'callout', pack, callout, seed: seed ?? null };
}

export function calloutLink(pack: string, callout: string): string {
  return `#callout=${pack}/${callout}`;
}

export function practiceLink(way: PracticeWay, what?: string): string {
  return `#practise=${way}${what === undefined ? '' : `/${what}`}`;
}

export const route = signal<Route>(parseRoute(location.hash));

addEventListener('hashchange', () => {
  route.value = parseRoute(location.hash);
});
