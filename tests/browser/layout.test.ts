/** Every screen at three sizes, in Spanish and with every text said twice: nothing overlaps, clips or stays a key. */
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Action, apply, start } from '../../src/attempt';
import { encode } from '../../src/attempt/codes';
import type { Language } from '../../src/i18n';
import { SHEETS } from '../../src/panels/session';
import { layoutFindings } from './support/layout-check';
import { Person, shippedPack } from './support/moves';
import { launchBrowser, openBench } from './support/page';

const PACK = shippedPack('old-wharf');
const LINKED = PACK.callouts.find(({ plant, mode }) => plant === 'inverter-split' && mode === 'solo')!;
const GUIDED = PACK.callouts.find(({ mode }) => mode === 'guided')!;

const SHOTS = fileURLToPath(new URL('./.artifacts/', import.meta.url));

let browser: Browser;
beforeAll(async () => {
  mkdirSync(SHOTS, { recursive: true });
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

/** Opens a callout and passes by all of its screens; `look` is called on each. */
async function passBy(page: Page, language: Language, look: (screen: string) => Promise<void>): Promise<void> {
  const person = new Person(page, 'mouse', language);
  await look('home');
  await page.evaluate((hash) => {
    location.hash = hash;
  }, `#callout=${PACK.id}/${GUIDED.id}&seed=layout`);
  await person.arrive();
  await look('guided');
  await page.evaluate((hash) => {
    location.hash = hash;
  }, `#callout=${PACK.id}/${LINKED.id}&seed=layout`);
  await page.locator('.callout-title h1').filter({ hasText: LINKED.text.title[language] }).waitFor();
  await person.arrive();
  await look('machine alone');
  await person.place('suction-line').click({ force: true });
  await page.locator('.place-sheet').waitFor();
  await look('place');
  await page.locator('.options button').nth(1).click();
  await person.untilNotes(1);
  await person.place('suction-port').click({ force: true });
  await page.locator('.place-sheet').waitFor();
  await page.locator('.options button').first().click();
  await person.untilNotes(2);
  const tabs = page.locator('nav.sheets button');
  const tabCount = await tabs.count();
  for (let i = 0; i < tabCount; i += 1) {
    await tabs.nth(i).click();
    await look(`sheet ${i}`);
    const leaves = page.locator('.sheet [role=tab]');
    const leafCount = await leaves.count();
    for (let leaf = 1; leaf < leafCount; leaf += 1) {
      await leaves.nth(leaf).click();
      await look(`sheet ${i} leaf ${leaf}`);
    }
    if ((await page.locator('.hint-card').count()) === 0 && (await page.locator('#hint').isVisible())) {
      await page.locator('#hint').click();
      await page.locator('.hint-card button').waitFor();
      await look('hint');
    }
    if (await page.locator('.sums-begin').isVisible()) {
      await page.locator('.sums-begin button').first().click();
      await look('sum');
    }
  }
  await page.keyboard.press('?');
  await page.locator('dialog').waitFor();
  await look('keys');
  await page.keyboard.press('Escape');
}

describe.each([
  ['desk', 1440, 900],
  ['tablet', 1024, 768],
  ['phone', 390, 844],
])('%s', (name, width, height) => {
  test.each([
    ['Spanish', ''],
    ['every text twice', '?text=double'],
  ])('in %s no screen overlaps, clips or shows a key', async (what, query) => {
    const bench = await openBench(browser, {
      path: query,
      context: { viewport: { width, height }, locale: 'es-ES' },
    });
    const wrong: string[] = [];
    let screens = 0;
    await passBy(bench.page, 'es', async (screen) => {
      screens += 1;
      for (const finding of await layoutFindings(bench.page)) wrong.push(`${screen}: ${finding}`);
      const file = `${name}-${what}-${screen}.png`.replaceAll(' ', '-');
      await bench.page.screenshot({ path: `${SHOTS}${file}` });
    });
    expect(wrong).toEqual([]);
    expect(screens).toBeGreaterThanOrEqual(SHEETS.length + 8);
    await bench.finish();
  });
});

/** A short, closed attempt as a code: what someone else sends. */
function closedAttempt(): string {
  const acts: Action[] = [
    { kind: 'safety', step: 'eye-and-hand-protection', taken: true },
    { kind: 'read', instrument: 'low-gauge', place: 'suction-port', quantity: 'pressure' },
    { kind: 'read', instrument: 'pipe-clamp', place: 'suction-line', quantity: 'temperature' },
    { kind: 'read', instrument: 'pipe-clamp', place: 'liquid-line', quantity: 'temperature' },
    { kind: 'verdict', cause: 'filter-dirty', size: 'clear', rival: 'undercharge', cites: [0, 1] },
    {
      kind: 'repair',
      remedy: 'replace-filter',
      steps: ['isolate', 'restart-and-settle', 'record'],
      root: 'no-cleaning',
    },
    { kind: 'wait', seconds: 900 },
    { kind: 'read', instrument: 'pipe-clamp', place: 'suction-line', quantity: 'temperature' },
    { kind: 'verified', notes: [3] },
  ];
  const done = acts.reduce((state, action) => apply(state, action), start(PACK, GUIDED.id, 'sent'));
  return encode(done.attempt);
}

describe.each([
  ['desk', 1440, 900],
  ['phone', 390, 844],
])('an attempt that someone sent, opened on a %s', (name, width, height) => {
  test('shows its debrief; no layer of it overlaps, clips or shows a key', async () => {
    const bench = await openBench(browser, {
      path: '?text=double',
      context: { viewport: { width, height }, locale: 'es-ES' },
    });
    const { page } = bench;
    const code = closedAttempt();
    await page.locator('summary').click();
    await page.locator('textarea').fill(`${code.slice(0, -4)}AAAA`);
    await page.locator('form button[type=submit]').click();
    expect(await page.getByRole('alert').textContent()).toContain('altered or cut');
    expect(await page.locator('textarea').inputValue()).toContain(code.slice(0, 40));
    await page.locator('textarea').fill(code);
    await page.locator('form button[type=submit]').click();
    await page.locator('.debrief-verdict').waitFor({ timeout: 90_000 });
    const wrong = (await layoutFindings(page)).map((finding) => `face: ${finding}`);
    const layers = page.locator('.debrief button[aria-expanded]');
    const count = await layers.count();
    expect(count).toBe(7);
    for (let i = 0; i < count; i += 1) {
      await layers.nth(i).click();
      if (await page.locator('.replay').isVisible()) {
        await page.locator('.replay [data-working="false"]').waitFor({ timeout: 60_000 });
      }
      wrong.push(...(await layoutFindings(page)).map((finding) => `layer ${i}: ${finding}`));
      await page.screenshot({ path: `${SHOTS}debrief-${name}-${i}.png`, fullPage: true });
    }
    expect(wrong).toEqual([]);
    await bench.finish();
  });
});

test('the check of the layout sees what it looks for', async () => {
  const bench = await openBench(browser, { context: { viewport: { width: 390, height: 844 } } });
  await bench.page.locator('.home-pack').first().waitFor();
  expect(await layoutFindings(bench.page)).toEqual([]);
  await bench.page.evaluate(() => {
    const main = document.querySelector('main')!;
    const put = (tag: 'p' | 'button', text: string, style: Partial<CSSStyleDeclaration>) => {
      const element = document.createElement(tag);
      element.textContent = text;
      Object.assign(element.style, style);
      main.append(element);
    };
    put('p', 'far too long', { width: '40px', whiteSpace: 'nowrap', overflow: 'hidden' });
    put('p', 'panels.job.order', {});
    put('button', 'a', { position: 'absolute', left: '0', top: '0', minHeight: '0', height: '20px' });
    put('button', 'b', { position: 'absolute', left: '5px', top: '5px' });
    put('p', 'wide', { width: '900px' });
  });
  const found = (await layoutFindings(bench.page)).join('\n');
  for (const kind of [
    'text wider than its box',
    'a key instead of a text',
    'target of',
    'lies over',
    'px wide in a window',
  ]) {
    expect(found).toContain(kind);
  }
  await bench.context.close();
});

test('no screen of a callout at work has a fault that an accessibility checker finds', async () => {
  const bench = await openBench(browser, { context: { locale: 'en-GB' } });
  const serious: string[] = [];
  await passBy(bench.page, 'en', async (screen) => {
    await bench.page.evaluate(axe.source);
    const violations = await bench.page.evaluate(async () => {
      const result = await (globalThis as unknown as { axe: typeof axe }).axe.run(document, {
        resultTypes: ['violations'],
      });
      return result.violations.map(
        ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 90)).join(' | ')}`,
      );
    });
    serious.push(...violations.map((line) => `${screen}: ${line}`));
  });
  expect([...new Set(serious)]).toEqual([]);
  await bench.finish();
});
