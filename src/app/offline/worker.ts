/**
 * Keeps the whole page on the device: every file of one build in one store named by the build's content. A later build
 * fills a store of its own and waits until no page of the former is open, or until a page asks for it; the former store
 * stays for whoever still works with it. Built into a file of its own (see tools/offline.ts), which puts the list in.
 */
import type { OfflineAnswer, OfflineOrder } from './messages';

interface Build {
  /** from the content of all files */
  readonly version: string;
  /** relative to the page's folder; '' is the page itself */
  readonly files: readonly string[];
}

declare const __OFFLINE_BUILD__: Build;
const build = __OFFLINE_BUILD__;
const scope = self as unknown as ServiceWorkerGlobalScope;

const PREFIX = 'coldbench-';
const STORE = PREFIX + build.version;
/** Names of built files carry their content: what another build stored under the same name is the same. */
const NAMED_BY_CONTENT = /^assets\//;
/** How many files are fetched at once: the page itself may be loading still. */
const AT_ONCE = 4;

const addressOf = (file: string) => new URL(file, scope.registration.scope).href;
const addresses = new Set(build.files.map(addressOf));

scope.addEventListener('install', (event) => event.waitUntil(fill()));

scope.addEventListener('activate', (event) => event.waitUntil(clearOut().then(() => scope.clients.claim())));

scope.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET') return;
  const address = storedAddress(request);
  if (address !== null) event.respondWith(answer(request, address));
});

scope.addEventListener('message', (event) => {
  const order = event.data as OfflineOrder;
  if (order === 'take-over') event.waitUntil(scope.skipWaiting());
  if (order !== 'check') return;
  const reply = (complete: boolean) => event.ports[0]?.postMessage({ complete } satisfies OfflineAnswer);
  event.waitUntil(
    fill().then(
      () => reply(true),
      () => reply(false),
    ),
  );
});

/** Fetches what the store lacks; rejects if anything cannot be had. */
async function fill(): Promise<void> {
  const store = await caches.open(STORE);
  const kept = new Set((await store.keys()).map(({ url }) => url));
  const missing = build.files.filter((file) => !kept.has(addressOf(file)));
  const takeNext = async (): Promise<void> => {
    for (let file = missing.shift(); file !== undefined; file = missing.shift()) {
      await store.put(addressOf(file), await obtain(file));
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, takeNext));
}

async function obtain(file: string): Promise<Response> {
  const address = addressOf(file);
  const isNamedByContent = NAMED_BY_CONTENT.test(file);
  const former = isNamedByContent ? await caches.match(address, { ignoreVary: true }) : undefined;
  if (former) return former;
  const response = await fetch(address, { cache: isNamedByContent ? 'default' : 'no-cache' });
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  // A browser refuses an answer that was redirected when it opens a page.
  if (!response.redirected) return response;
  return new Response(await response.blob(), { headers: response.headers });
}

/** Under which address this request would be stored, or null if it is none of the page's own. */
function storedAddress(request: Request): string | null {
  const url = new URL(request.url);
  url.search = '';
  url.hash = '';
  if (request.mode === 'navigate' && url.href === addressOf('index.html')) return addressOf('');
  const ours = addresses.has(url.href) || url.href.startsWith(addressOf('assets/'));
  return ours ? url.href : null;
}

/** From the own store, else from one that a page of an earlier build still needs, else from the network. */
async function answer(request: Request, address: string): Promise<Response> {
  const own = await (await caches.open(STORE)).match(address, { ignoreVary: true });
  return own ?? (await caches.match(address, { ignoreVary: true })) ?? fetch(request);
}

/** Keeps the own store and the one before it. Stores are listed in the order in which they were made. */
async function clearOut(): Promise<void> {
  const others = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== STORE);
  await Promise.all(others.slice(0, -1).map((name) => caches.delete(name)));
}
