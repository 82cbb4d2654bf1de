import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { GOLDEN_SCRIPTS } from '../golden/scripts';
import { bundled } from './support/bundle';
import { launchBrowser } from './support/page';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

test('golden replays are bit-identical in Chromium and in Node', async () => {
  const page = await browser.newPage();
  await page.evaluate(await bundled('golden'));
  for (const { callout } of GOLDEN_SCRIPTS) {
    const file = new URL(`../golden/${callout}.golden.json`, import.meta.url);
    const { attempt, result } = JSON.parse(readFileSync(file, 'utf8'));
    const replayed = await page.evaluate((given) => globalThis.replayGolden(given), attempt);
    // Numbers as text round-trip exactly, so equal values are equal bits.
    expect(JSON.parse(replayed), callout).toEqual(result);
  }
  await page.close();
});
