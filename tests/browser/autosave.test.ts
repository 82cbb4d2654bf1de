import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { bundled } from './support/bundle';
import { launchBrowser } from './support/page';

let browser: Browser;
let script: string;
beforeAll(async () => {
  script = await bundled('autosave');
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const header = { format: 1, pack: 'p', packVersion: 1, callout: 'c', seed: 's', physics: 'x' } as const;

/** A page of the app's origin: storage belongs to an origin. */
async function openPage(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await page.goto(new URL('favicon.svg', inject('baseUrl')).href);
  await page.evaluate(script);
  return page;
}

test('actions written one by one are all there after the page is killed', async () => {
  const context = await browser.newContext();
  const page = await openPage(context);
  const saved = await page.evaluate(async (head) => {
    const autosave = await globalThis.autosave.open();
    await autosave.begin('a', head);
    for (let i = 0; i < 20; i += 1) await autosave.append({ t: i * 60, action: { kind: 'wait', seconds: 60 } });
    return autosave.saveState;
  }, header);
  expect(saved).toBe('saved');

  // Killed, not closed: no handler of the page runs.
  const session = await context.newCDPSession(page);
  const crashed = page.waitForEvent('crash');
  session.send('Page.crash').catch(() => {});
  await crashed;
  const later = await openPage(context);
  const recovered = await later.evaluate(async () => {
    const autosave = await globalThis.autosave.open();
    return { ids: await autosave.ids(), found: await autosave.resume('a') };
  });
  expect(recovered.ids).toEqual(['a']);
  expect(recovered.found?.damage).toBeNull();
  expect(recovered.found?.attempt.actions).toHaveLength(20);
  await context.close();
});

test('a second page that writes the same attempt makes the first one stop, not the log break', async () => {
  const context = await browser.newContext();
  const one = await openPage(context);
  const two = await openPage(context);
  await one.evaluate(async (head) => {
    const autosave = await globalThis.autosave.open();
    await autosave.begin('b', head);
    await autosave.append({ t: 0, action: { kind: 'wait', seconds: 60 } });
    Object.assign(globalThis, { mine: autosave });
  }, header);
  await two.evaluate(async () => {
    const autosave = await globalThis.autosave.open();
    await autosave.resume('b');
    await autosave.append({ t: 60, action: { kind: 'wait', seconds: 1 } });
  });
  const state = await one.evaluate(async () => {
    const { mine } = globalThis as unknown as { mine: Awaited<ReturnType<typeof globalThis.autosave.open>> };
    await mine.append({ t: 60, action: { kind: 'wait', seconds: 999 } });
    return mine.saveState;
  });
  expect(state).toBe('written-elsewhere');
  const found = await two.evaluate(async () => (await globalThis.autosave.open()).resume('b'));
  expect(found?.damage).toBeNull();
  expect(found?.attempt.actions.at(-1)).toEqual({ t: 60, action: { kind: 'wait', seconds: 1 } });
  await context.close();
});
