/** After the first visit nothing needs a network, and a later build never breaks what lies open. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Action, apply, replay, start } from '../../src/attempt';
import { decode, encode } from '../../src/attempt/codes';
import { stamped } from '../../tools/offline';
import { serveFolder } from './support/folder-server';
import { Person, shippedPack } from './support/moves';
import { launchBrowser, openBench } from './support/page';

const CACHE = join(import.meta.dirname, '..', '..', 'node_modules', '.cache', 'coldbench');
const NEAR = shippedPack('old-wharf');
const FAR = shippedPack('upper-town');
const UNSEEN = FAR.callouts.find(({ plant }) => plant === 'orifice-split')!;
const SOLO = NEAR.callouts.find(({ mode, plant }) => mode === 'solo' && plant === 'orifice-split')!;

let browser: Browser;
let dist: string;
const folders: string[] = [];
const newFolder = () => {
  const folder = mkdtempSync(join(CACHE, 'offline-'));
  folders.push(folder);
  return folder;
};

beforeAll(async () => {
  browser = await launchBrowser();
  dist = newFolder();
  await build({ logLevel: 'error', build: { outDir: dist, emptyOutDir: true } });
});
afterAll(async () => {
  await browser?.close();
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

const ready = (page: Page) => page.locator('[data-offline="ready"]').waitFor();

/** An attempt from the complaint to the end of the job, made without the page. */
function closedAttempt(): string {
  const rival = (Object.keys(UNSEEN.tally) as (keyof typeof UNSEEN.tally)[]).find((cause) => cause !== 'no-fault')!;
  const acts: Action[] = [
    { kind: 'read', instrument: 'pipe-clamp', place: 'suction-line', quantity: 'temperature' },
    { kind: 'verdict', cause: 'no-fault', size: 'slight', rival, cites: [0] },
    { kind: 'repair', remedy: 'nothing-to-mend', steps: [], root: null },
    { kind: 'verified', notes: [] },
  ];
  return encode(acts.reduce((state, action) => apply(state, action), start(FAR, UNSEEN.id, 'sent')).attempt);
}

test('after one visit to the first screen the network may go: a callout never opened before is played and debriefed', async () => {
  const server = await serveFolder(dist);
  const bench = await openBench(browser, { path: server.url, context: { locale: 'en-GB' } });
  const { page } = bench;
  await ready(page);
  await server.stop();
  await page.reload();
  await ready(page);
  await page.evaluate((hash) => {
    location.hash = hash;
  }, `#callout=${FAR.id}/${UNSEEN.id}&seed=offline`);
  const person = new Person(page);
  await person.arrive();
  await person.read('suction-port', person.text.t('names.instrument.low-gauge'));
  await person.read('suction-line', person.text.t('names.instrument.pipe-clamp'));
  const { notes } = replay(decode(await person.code()), FAR);
  expect(notes).toHaveLength(2);

  // The examiner and what every rival would show lie on the device as well.
  await page.goto(`${server.url}#home`);
  await page.locator('summary').first().click();
  await page.locator('textarea').fill(closedAttempt());
  await page.locator('form button[type=submit]').click();
  await page.locator('.debrief-verdict').waitFor({ timeout: 90_000 });
  await bench.finish();
});

test('every file of the build is kept, and one that the browser threw away is fetched again', async () => {
  const server = await serveFolder(dist);
  const bench = await openBench(browser, { path: server.url });
  const { page } = bench;
  await ready(page);
  const kept = () =>
    page.evaluate(async () => {
      const [name = ''] = await caches.keys();
      return (await (await caches.open(name)).keys()).map(({ url }) => new URL(url).pathname.slice(1)).sort();
    });
  const files = readdirSync(join(dist, 'assets')).map((file) => `assets/${file}`);
  const all = await kept();
  for (const file of [...files, '', 'favicon.svg']) expect(all).toContain(file);
  expect(all).toHaveLength(new Set(all).size);
  await page.evaluate(async (file) => {
    const [name = ''] = await caches.keys();
    await (await caches.open(name)).delete(file);
  }, all[3]!);
  expect(await kept()).toHaveLength(all.length - 1);
  server.asked();
  await page.reload();
  await ready(page);
  expect(await kept()).toEqual(all);
  expect(server.asked()).toContain(`/${all[3]}`);
  await bench.finish();
  await server.stop();
});

/** The same build as if released anew: another page, and the differentials of the former are gone from the server. */
function laterRelease(): string {
  const folder = newFolder();
  cpSync(dist, folder, { recursive: true });
  for (const file of readdirSync(join(folder, 'assets'))) {
    if (file.includes('.differential-')) rmSync(join(folder, 'assets', file));
  }
  const page = join(folder, 'index.html');
  writeFileSync(page, readFileSync(page, 'utf8').replace('</head>', '<meta name="release" content="later" /></head>'));
  const keeper = join(folder, 'offline.js');
  const blank = readFileSync(keeper, 'utf8').replace(/\{"version":"[^}]*\}/, '__OFFLINE_BUILD__');
  writeFileSync(keeper, stamped(blank, folder));
  return folder;
}

test('a later build waits, is offered on the first screen, and leaves an open attempt of the former alone', async () => {
  const server = await serveFolder(dist);
  const first = await openBench(browser, { path: server.url, context: { locale: 'en-GB' } });
  await ready(first.page);
  await first.page.evaluate((hash) => {
    location.hash = hash;
  }, `#callout=${NEAR.id}/${SOLO.id}&seed=open`);
  const person = new Person(first.page);
  await person.arrive();
  await person.read('suction-line', person.text.t('names.instrument.pipe-clamp'));

  server.serve(laterRelease());
  const second = await openBench(browser, { path: server.url, into: first.context });
  const release = () => second.page.locator('meta[name=release]').count();
  const take = second.page.getByRole('button', { name: person.text.t('app.offline.take') });
  await take.waitFor();
  expect(await release()).toBe(0);
  await take.click();
  await ready(second.page);
  expect(await release()).toBe(1);

  // The attempt goes on, with files that only the former build had and that were not fetched yet.
  await person.openSheet('finish');
  await first.page.evaluate(() => {
    Object.assign(globalThis, { unharmed: true });
  });
  await person.press(person.button(person.text.t('names.size.clear')));
  await person.press(person.button(person.text.t('finish.verdict.commit')));
  await first.page.getByRole('radio').first().waitFor();
  const differential = readdirSync(join(dist, 'assets')).find((file) =>
    file.startsWith(`${NEAR.id}.${SOLO.id}.differential-`),
  );
  const status = await first.page.evaluate(async (file) => (await fetch(`assets/${file}`)).status, differential);
  expect(status).toBe(200);
  expect(await first.page.evaluate(() => 'unharmed' in globalThis)).toBe(true);
  expect(await first.page.locator('meta[name=release]').count()).toBe(0);
  await second.page.close();
  await first.finish();
  await server.stop();
});
