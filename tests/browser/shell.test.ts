import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchBrowser, openBench } from './support/page';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

test('the built page shows its name under its own security policy, without a console complaint', async () => {
  const bench = await openBench(browser);
  await bench.page.getByRole('heading', { level: 1 }).first().waitFor();
  expect(await bench.page.title()).toContain('Coldbench');
  const policy = await bench.page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content');
  expect(policy).toContain("script-src 'self'");
  await bench.finish();
});

test('the watcher of the console sees an error when there is one', async () => {
  const bench = await openBench(browser);
  await bench.page.evaluate(() => console.error('made by the test'));
  await expect(bench.finish()).rejects.toThrow('made by the test');
});
