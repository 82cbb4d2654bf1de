/** The page's side of keeping itself for use without a network: begins it, knows how far it is, changes builds. */
import { signal } from '@preact/signals';
import type { OfflineAnswer, OfflineOrder } from './messages';

/** `impossible`: the browser or the address does not allow it; `failed`: not everything could be fetched this time. */
export type Keeping = 'off' | 'storing' | 'ready' | 'failed' | 'impossible';

export const keeping = signal<Keeping>('off');
/** A later build lies on the device and waits. */
export const laterBuild = signal(false);

const FILE = 'offline.js';
let waiting: ServiceWorker | null = null;

/** Called once, when the page has loaded; only built pages have the file. */
export async function keepForLater(): Promise<void> {
  const { serviceWorker } = navigator;
  if (!serviceWorker) {
    keeping.value = 'impossible';
    return;
  }
  keeping.value = 'storing';
  try {
    const registration = await serviceWorker.register(new URL(FILE, document.baseURI), { updateViaCache: 'none' });
    watch(registration);
    const { active } = await serviceWorker.ready;
    keeping.value = active && (await isComplete(active)) ? 'ready' : 'failed';
  } catch {
    // Without a network at the first visit, or forbidden by the browser's settings: the page works as long as it lies open.
    keeping.value = 'failed';
  }
}

function watch(registration: ServiceWorkerRegistration): void {
  const offer = (worker: ServiceWorker | null) => {
    if (!worker || !navigator.serviceWorker.controller) return;
    waiting = worker;
    laterBuild.value = true;
  };
  offer(registration.waiting);
  registration.addEventListener('updatefound', () => {
    const { installing } = registration;
    installing?.addEventListener('statechange', () => {
      if (installing.state === 'installed') offer(installing);
    });
  });
}

/** Goes over to the later build and loads the page afresh. */
export function takeLaterBuild(): void {
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  waiting?.postMessage('take-over' satisfies OfflineOrder);
}

function isComplete(worker: ServiceWorker): Promise<boolean> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }: MessageEvent<OfflineAnswer>) => resolve(data.complete);
    worker.postMessage('check' satisfies OfflineOrder, [port2]);
  });
}
