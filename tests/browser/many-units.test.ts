/** A machine with many indoor units on the page: map and parts of the site, rooms, strands ranked by siblings, a whole call. */
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Language } from '../../src/i18n';
import { layoutFindings } from './support/layout-check';
import { Person, shippedPack } from './support/moves';
import { launchBrowser, openBench } from './support/page';

const MILL = shippedPack('river-mill');
const SCHOOL = shippedPack('canal-school');
const STUDIO = MILL.callouts.find(({ id }) => id === 'weaving-studio')!;
const MUSIC = SCHOOL.callouts.find(({ id }) => id === 'music-room')!;

const SHOTS = fileURLToPath(new URL('./.artifacts/', import.meta.url));

let browser: Browser;
beforeAll(async () => {
  mkdirSync(SHOTS, { recursive: true });
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const path = (pack: string, callout: string) => `#callout=${pack}/${callout}&seed=many`;

/** Goes to a part of the site by the list. */
async function goTo(page: Page, view: string): Promise<void> {
  await page.locator('.bench-views select').selectOption(view);
}

/** Opens a leaf of the machine's sheet by its name. */
async function leaf(page: Page, person: Person, name: 'rooms' | 'strand' | 'controls'): Promise<void> {
  await person.openSheet('machine');
  await page.getByRole('tab', { name: person.text.t(`panels.machine.${name}`), exact: true }).click();
}

/** All screens that only such machines have. */
async function passBy(page: Page, language: Language, look: (screen: string) => Promise<void>): Promise<void> {
  const person = new Person(page, 'mouse', language);
  const narrow = (page.viewportSize()?.width ?? 0) < 760;
  await person.arrive();
  await look('map');
  const parts = await page
    .locator('.bench-views option:not([disabled])')
    .evaluateAll((options) => options.map((option) => (option as HTMLOptionElement).value));
  for (const part of [parts[0]!, parts.at(-1)!]) {
    await goTo(page, part);
    await look(`part ${part}`);
  }
  await page.locator('li:not(.away) .bench-place').nth(3).click();
  await page.locator('.place-sheet').waitFor();
  await look('place');
  await page.locator('.place-sheet header button').click();
  await person.openSheet('job');
  await look('work order');
  await page.getByRole('tab', { name: person.text.t('panels.job.look'), exact: true }).click();
  await page.locator('.survey-unit summary').first().click();
  await look('survey of a unit');
  await leaf(page, person, 'rooms');
  await look('rooms');
  await leaf(page, person, 'strand');
  await look('strand not read');
  await page.locator('.strand li button').first().click();
  await person.untilNotes(1);
  await page.locator('.unit-heads button').nth(1).click();
  await look('strands ranked');
  const tape = page.getByRole('button', { name: person.text.t('panels.strand.tapeOn'), exact: true });
  await tape.click();
  await leaf(page, person, 'controls');
  await page
    .getByRole('button', { name: person.text.t('panels.machine.waitMinutes', { minutes: 1 }), exact: true })
    .click();
  await page.locator('.passing').waitFor({ state: 'detached' });
  await leaf(page, person, 'strand');
  await page.locator('.tape-choice').locator('xpath=..').locator('summary').click();
  await look('tape');
  if (narrow) await page.locator('nav.sheets button[aria-pressed="true"]').click();
}

describe.each([
  ['desk', 1440, 900],
  ['tablet', 1024, 768],
  ['phone', 390, 844],
])('%s', (name, width, height) => {
  test.each([
    ['multi-split', MILL.id, STUDIO.id],
    ['heat-recovery', SCHOOL.id, MUSIC.id],
  ])('%s: no screen overlaps, clips or shows a key, in Spanish', async (plant, pack, callout) => {
    const bench = await openBench(browser, {
      path: path(pack, callout),
      context: { viewport: { width, height }, locale: 'es-ES' },
    });
    const wrong: string[] = [];
    let screens = 0;
    await passBy(bench.page, 'es', async (screen) => {
      screens += 1;
      for (const finding of await layoutFindings(bench.page)) wrong.push(`${screen}: ${finding}`);
      await bench.page.screenshot({ path: `${SHOTS}${plant}-${name}-${screen}.png`.replaceAll(' ', '-') });
    });
    expect(wrong).toEqual([]);
    expect(screens).toBe(10);
    await bench.finish();
  });
});

describe('on a phone', () => {
  test('the map leads to a room, the keyboard walks on into the next one, and both have no place of a third', async () => {
    const bench = await openBench(browser, {
      path: path(MILL.id, STUDIO.id),
      context: { viewport: { width: 390, height: 844 } },
    });
    const { page } = bench;
    await new Person(page).arrive();
    expect(await page.locator('.bench-places li:not(.away)').count()).toBe(0);
    await page.locator('.bench-regions button[data-region="room@unit5"]').click();
    const shown = () =>
      page
        .locator('.bench-places li:not(.away) .bench-place')
        .evaluateAll((all) => [...new Set(all.map((each) => (each as HTMLElement).dataset.place?.split('@')[1]))]);
    expect(await shown()).toEqual(['unit5']);
    await page.locator('.bench-place[data-place="supply-air@unit5"]').focus();
    await page.keyboard.press('ArrowRight');
    expect(await shown()).toEqual(['unit6']);
    expect(await page.evaluate(() => (document.activeElement as HTMLElement).dataset.place)).toBe('liquid-pipe@unit6');
    await bench.finish();
  });

  test('with the sheets of such a machine open nothing offends against the rules of accessibility', async () => {
    const bench = await openBench(browser, {
      path: path(MILL.id, STUDIO.id),
      context: { viewport: { width: 390, height: 844 }, bypassCSP: true },
    });
    const { page } = bench;
    const person = new Person(page);
    await person.arrive();
    await page.addScriptTag({ content: axe.source });
    const check = async () => {
      const { violations } = await page.evaluate(() => (globalThis as unknown as { axe: typeof axe }).axe.run());
      return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`);
    };
    expect(await check()).toEqual([]);
    await leaf(page, person, 'rooms');
    expect(await check()).toEqual([]);
    await leaf(page, person, 'strand');
    await page.locator('.strand li button').first().click();
    await person.untilNotes(1);
    await page.locator('.unit-heads button').nth(2).click();
    expect(await check()).toEqual([]);
    await bench.finish();
  });
});

test('a room that is switched off says so, and the machine goes on for the others', async () => {
  const bench = await openBench(browser, { path: path(MILL.id, STUDIO.id) });
  const { page } = bench;
  const person = new Person(page);
  await person.arrive();
  await leaf(page, person, 'rooms');
  const room = page.getByRole('group', { name: 'Unit 3', exact: true });
  expect(await room.textContent()).toContain(person.text.t('names.unitState.cooling'));
  await room.getByRole('button', { name: person.text.t('panels.rooms.ask.off'), exact: true }).click();
  await page.waitForFunction(
    ([name, words]) =>
      [...document.querySelectorAll('.rooms [role=group]')].some(
        (row) => row.getAttribute('aria-label') === name && row.textContent?.includes(words!),
      ),
    ['Unit 3', person.text.t('names.unitState.off')],
  );
  const code = await codeOf(page, person);
  expect(code).toMatch(/^bench1\./);
  await bench.finish();
});

async function codeOf(page: Page, person: Person): Promise<string> {
  if ((page.viewportSize()?.width ?? 0) < 1260) await person.openSheet('notebook');
  return person.code();
}

test('a whole call: system or unit, then which unit, then proof, mending and the debrief', async () => {
  const bench = await openBench(browser, { path: path(MILL.id, STUDIO.id) });
  const { page } = bench;
  const person = new Person(page);
  const { text } = person;
  await person.arrive();
  await person.press(page.getByRole('tab', { name: text.t('panels.job.safe'), exact: true }));
  await person.press(
    person.button(new RegExp(`^${text.t('panels.safety.take')}: ${text.t('names.safety.isolate-and-prove-dead')}`)),
  );
  await leaf(page, person, 'strand');
  await page.locator('.strand li button').first().click();
  await person.untilNotes(1);
  // The valve of the unit with too little air stands off its siblings': it is the first one now.
  await person.press(page.locator('.unit-heads button').first());
  expect(await page.locator('.unit-strands li p').first().textContent()).toContain('Unit 2');
  await person.press(page.locator('.unit-strands li').first().locator('.unit-beads button').first());
  await person.untilNotes(2);
  await person.press(page.locator('.unit-strands li').last().locator('.unit-beads button').first());
  await person.untilNotes(3);
  await person.read('filter-face@unit2', text.t('names.instrument.eyes'));
  await person.read('filter-drop@unit2', text.t('names.instrument.manometer'));
  await person.read('filter-drop@unit3', text.t('names.instrument.manometer'));
  await person.openSheet('stakes');
  for (let i = 0; i < 8; i += 1) await person.press(page.locator('[data-cause="filter-dirty"]'));
  await person.press(person.button(text.t('panels.stakes.declare')));
  await person.press(page.locator('.note .star').first());
  await person.openSheet('finish');
  await person.press(person.button(text.t('names.size.severe')));
  await person.press(person.button(text.t('finish.verdict.commit')));
  await person.press(page.getByRole('radio', { name: text.t('names.remedy.replace-filter') }));
  await person.press(person.button(text.t('finish.repair.next')));
  for (const step of ['isolate', 'restart-and-settle', 'record'] as const) {
    await person.press(page.locator('button.row').filter({ hasText: new RegExp(text.t(`names.step.${step}`), 'i') }));
  }
  await person.press(person.button(text.t('finish.repair.next')));
  await person.press(page.getByRole('radio', { name: text.t('names.root.no-cleaning') }));
  await person.press(person.button(text.t('finish.repair.commit')));
  await person.press(person.button(text.t('panels.machine.waitMinutes', { minutes: 15 })));
  await person.read('filter-drop@unit2', text.t('names.instrument.manometer'));
  await person.press(page.locator('.sheet:not(.notebook-beside) .tag').first());
  await person.press(person.button(text.t('finish.verify.commit')));
  await page.locator('.debrief-verdict').waitFor({ timeout: 90_000 });
  expect(await page.locator('.debrief-verdict').textContent()).toContain(text.t('names.cause.filter-dirty'));
  expect(await layoutFindings(page)).toEqual([]);
  await page.screenshot({ path: `${SHOTS}many-debrief.png`, fullPage: true });
  const layers = page.locator('.debrief button[aria-expanded]');
  for (let i = 0; i < (await layers.count()); i += 1) {
    await layers.nth(i).click();
    if (await page.locator('.replay').isVisible()) {
      await page.locator('.replay [data-working="false"]').waitFor({ timeout: 60_000 });
    }
    expect(await layoutFindings(page)).toEqual([]);
  }
  await page.screenshot({ path: `${SHOTS}many-debrief-all.png`, fullPage: true });
  await bench.finish();
});
