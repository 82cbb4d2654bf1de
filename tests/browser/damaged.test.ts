/** What this device kept of an attempt may be damaged: the page says so, keeps what can be read and lets nobody guess. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { Person, shippedPack } from './support/moves';
import { launchBrowser, openBench } from './support/page';

const PACK = shippedPack('old-wharf');
const SOLO = PACK.callouts.find(({ mode }) => mode === 'solo')!;

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

/** Alters what the page's database holds: the given fields of each record that `store` keeps from `first` on. */
function spoil(page: Page, store: 'attempts' | 'events', first: number, fields: Record<string, unknown>) {
  const job = JSON.stringify({ store, first, fields });
  return page.evaluate(`new Promise((resolve, reject) => {
    const { store, first, fields } = ${job};
    const open = indexedDB.open('coldbench');
    open.onerror = () => reject(open.error);
    open.onsuccess = () => {
      const records = open.result.transaction(store, 'readwrite').objectStore(store);
      const all = records.getAll();
      all.onsuccess = () => {
        const spoilt = all.result.slice(first);
        for (const record of spoilt) records.put({ ...record, ...fields });
        records.transaction.oncomplete = () => { open.result.close(); resolve(spoilt.length); };
      };
    };
  })`);
}

async function twoReadings(seed: string) {
  const bench = await openBench(browser, { context: { locale: 'en-GB' } });
  await bench.page.goto(`${bench.page.url()}#callout=${PACK.id}/${SOLO.id}&seed=${seed}`);
  const person = new Person(bench.page);
  await person.arrive();
  await person.read('return-air', person.text.t('names.instrument.air-probe'));
  await person.read('supply-air', person.text.t('names.instrument.air-probe'));
  return { bench, person };
}

test('a damaged log goes on from what can be read, and the page says from where', async () => {
  const { bench, person } = await twoReadings('damaged-1');
  expect(await spoil(bench.page, 'events', 1, { chain: 'no chain' })).toBe(1);
  await bench.page.reload();
  await person.arrive();
  expect(await person.noteCount()).toBe(1);
  const alert = bench.page.getByRole('alert');
  await alert.waitFor();
  expect(await alert.textContent()).toBe(person.text.t('app.error.cutShort', { actions: 1 }));
  await bench.finish();
});

test('an attempt that cannot be read at all stays where it is; a new one begins, and the page says so', async () => {
  const { bench, person } = await twoReadings('damaged-2');
  expect(await spoil(bench.page, 'attempts', 0, { header: 'no header' })).toBe(1);
  await bench.page.reload();
  await person.arrive();
  expect(await person.noteCount()).toBe(0);
  const alert = bench.page.getByRole('alert');
  await alert.waitFor();
  expect(await alert.textContent()).toBe(person.text.t('app.error.unreadable'));
  const kept = await bench.page.evaluate(`new Promise((resolve) => {
    const open = indexedDB.open('coldbench');
    open.onsuccess = () => {
      const count = open.result.transaction('events').objectStore('events').count();
      count.onsuccess = () => { open.result.close(); resolve(count.result); };
    };
  })`);
  expect(kept).toBe(2);
  await bench.finish();
});
