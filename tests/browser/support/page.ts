import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { inject } from 'vitest';

export interface BenchPage {
  page: Page;
  context: BrowserContext;
  /** What the page complained of so far: console errors and warnings, uncaught exceptions, failed requests. */
  complaints: string[];
  /** Closes the context and throws if the page complained. */
  finish(): Promise<void>;
}

/** WebGL in software tells of its own slowness, and the driver of what it was told to block: no faults of the page. */
const NOISE = [/GPU stall due to ReadPixels/, /software WebGL/i, /Service Worker registration blocked by/];

export function launchBrowser(): Promise<Browser> {
  const found = inject('chromium');
  return chromium.launch({
    executablePath: found.executablePath,
    args: ['--no-sandbox', '--disable-dev-shm-usage'],
    env: { ...process.env, ...found.env },
  });
}

/**
 * Motion is drawn in software here and takes a core for itself, so only what is about motion, and the whole callouts that are
 * played as most people play them, ask for it.
 */
const AS_USUAL = { viewport: { width: 1440, height: 900 }, reducedMotion: 'reduce' } as const;

/** With everything that moves. */
export const MOVING = { reducedMotion: 'no-preference' } as const;

/** Opens the built page (at `path`, which may carry a fragment) in a context of its own and watches its console. */
export async function openBench(
  browser: Browser,
  options: { path?: string; context?: BrowserContextOptions; into?: BrowserContext } = {},
): Promise<BenchPage> {
  const context = options.into ?? (await browser.newContext({ ...AS_USUAL, ...options.context }));
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    const kind = message.type();
    if (kind !== 'error' && kind !== 'warning') return;
    if (!NOISE.some((noise) => noise.test(message.text()))) complaints.push(`${kind}: ${message.text()}`);
  });
  page.on('pageerror', (error) => complaints.push(`uncaught: ${error.message}`));
  page.on('requestfailed', (request) => {
    const reason = request.failure()?.errorText ?? 'failed';
    // Closing a page ends what it was still loading.
    if (reason !== 'net::ERR_ABORTED') complaints.push(`request: ${request.url()} ${reason}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) complaints.push(`response: ${response.status()} ${response.url()}`);
  });
  await page.goto(new URL(options.path ?? '', inject('baseUrl')).href);
  return {
    page,
    context,
    complaints,
    async finish() {
      await context.close();
      if (complaints.length > 0) throw new Error(`the page complained:\n  ${complaints.join('\n  ')}`);
    },
  };
}
