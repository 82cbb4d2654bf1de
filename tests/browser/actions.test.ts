/** How much a person has to do: taps on a phone, clicks, keys. And what a screen reader hears of it. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { Person, shippedPack } from './support/moves';
import { launchBrowser, MOVING, openBench } from './support/page';

const PACK = shippedPack('old-wharf');
const SOLO = PACK.callouts.find(({ mode, plant }) => mode === 'solo' && plant === 'orifice-split')!;
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, locale: 'en-GB' } as const;

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const at = (seed: string) => `#callout=${PACK.id}/${SOLO.id}&seed=${seed}`;

/** Fills in superheat or subcooling on a phone: which notes, read the strip, subtract. */
async function workOut(person: Person, kind: 'superheat' | 'subcooling', notes: readonly string[]): Promise<void> {
  const { page, text } = person;
  await person.press(page.locator('.sums-begin').getByRole('button', { name: text.t(`names.sum.${kind}`) }));
  const form = page.locator('.sum-form');
  for (const [slot, note] of notes.entries()) {
    // An input of which there is only one note is chosen already.
    const tag = form.locator('fieldset').nth(slot).locator('.tag').filter({ hasText: note });
    if ((await tag.count()) > 0 && (await tag.getAttribute('aria-pressed')) !== 'true') await person.press(tag);
  }
  await person.press(
    form.getByRole('button', { name: text.t(kind === 'superheat' ? 'panels.sums.dew' : 'panels.sums.bubble') }),
  );
  const pipe = Number.parseFloat((await form.locator('.sum-inputs strong').nth(1).textContent()) ?? '');
  const line = Number.parseFloat((await form.locator('input[inputmode]').first().inputValue()).replace('\u2212', '-'));
  const answer = kind === 'superheat' ? pipe - line : line - pipe;
  await person.type(form.locator('input[inputmode]').nth(1), answer.toFixed(1));
  await person.press(form.getByRole('button', { name: text.t('panels.sums.check') }));
  await form.waitFor({ state: 'detached' });
}

test('on a phone a reading is at most two taps, a restake four, a verdict six, a callout of six readings forty-five', async () => {
  const bench = await openBench(browser, { path: at('taps'), context: PHONE });
  const { page } = bench;
  const person = new Person(page, 'touch');
  const { text } = person;
  await person.arrive();

  // One real choice before the hoses.
  await person.openSheet('job');
  await person.press(page.getByRole('tab', { name: text.t('panels.job.safe') }));
  await person.press(
    page.getByRole('button', {
      name: new RegExp(`^${text.t('panels.safety.take')}: ${text.t('names.safety.eye-and-hand-protection')}`),
    }),
  );
  await person.press(person.button(text.t('panels.sheet.close')));

  const readings: number[] = [];
  readings.push(await person.read('suction-port', text.t('names.instrument.low-gauge')));
  readings.push(await person.read('suction-line', text.t('names.instrument.pipe-clamp')));
  readings.push(await person.read('liquid-line', text.t('names.instrument.pipe-clamp')));
  readings.push(await person.read('drier-outlet-pipe', text.t('names.instrument.pipe-clamp')));
  readings.push(await person.read('liquid-port', text.t('names.instrument.high-gauge')));
  readings.push(await person.read('outdoor-air', text.t('names.instrument.air-probe')));
  expect(Math.max(...readings)).toBeLessThanOrEqual(2);
  // The clamp stays in the hand: its second and third place are one tap each.
  expect(readings.slice(2, 4)).toEqual([1, 1]);

  await person.openSheet('notebook');
  await workOut(person, 'superheat', [text.t('bench.place.suction-port'), text.t('bench.place.suction-line')]);
  await workOut(person, 'subcooling', [text.t('bench.place.liquid-port'), text.t('bench.place.liquid-line')]);
  await person.press(page.locator('.note .star').nth(2));

  const beforeStake = person.actions;
  await person.openSheet('stakes');
  await person.press(page.locator('[data-cause="drier-restriction"]'));
  await person.press(page.locator('[data-cause="drier-restriction"]'));
  await person.press(person.button(text.t('panels.stakes.declare')));
  expect(person.actions - beforeStake).toBeLessThanOrEqual(4);

  const beforeVerdict = person.actions;
  await person.openSheet('finish');
  await person.press(person.button(text.t('names.size.clear')));
  await person.press(person.button(text.t('finish.verdict.commit')));
  await page.getByRole('radio').first().waitFor();
  expect(person.actions - beforeVerdict).toBeLessThanOrEqual(6);
  expect(person.actions).toBeLessThanOrEqual(45);
  console.log(`taps: readings ${readings.join(' ')}, whole callout to the verdict ${person.actions}`);
  await bench.finish();
});

test('by keyboard a reading is at most three keys from one place to the next', async () => {
  const bench = await openBench(browser, { path: at('keys'), context: { locale: 'en-GB' } });
  const { page } = bench;
  const person = new Person(page);
  await person.arrive();
  await page.keyboard.press('p');
  for (const keys of [
    ['ArrowRight', 'ArrowRight', '1'],
    ['ArrowRight', 'Enter', '1'],
  ]) {
    const notes = await person.noteCount();
    for (const key of keys) await page.keyboard.press(key);
    await person.untilNotes(notes + 1);
    await page.locator('.bench-place:focus').waitFor();
  }
  await bench.finish();
});

test('with the keyboard of a phone open, a sum has both its notes and its strip in view', async () => {
  const bench = await openBench(browser, { path: at('small'), context: { ...PHONE, locale: 'es-ES' } });
  const { page } = bench;
  const person = new Person(page, 'touch', 'es');
  const { text } = person;
  await person.arrive();
  await person.read('suction-port', text.t('names.instrument.low-gauge'));
  await person.read('suction-line', text.t('names.instrument.pipe-clamp'));
  await person.openSheet('notebook');
  await person.press(page.locator('.sums-begin').getByRole('button', { name: text.t('names.sum.superheat') }));
  await page.setViewportSize({ width: 390, height: 500 });
  await page.locator('.sum-form input').nth(1).focus();
  await page.waitForTimeout(200);
  for (const selector of [
    '.sum-inputs .tag >> nth=0',
    '.sum-inputs .tag >> nth=1',
    '.sum-form .strip svg',
    '.sum-form input >> nth=1',
  ]) {
    const box = await page.locator(selector).boundingBox();
    expect(box, selector).not.toBeNull();
    const tray = (await page.locator('.tray').boundingBox())!;
    expect(box!.y, `${selector} top`).toBeGreaterThanOrEqual(0);
    expect(box!.y + box!.height, `${selector} bottom`).toBeLessThanOrEqual(tray.y + 1);
  }
  await bench.finish();
});

test('each act says one thing to a screen reader, and time that passes says no more', async () => {
  const bench = await openBench(browser, { path: at('spoken'), context: { ...MOVING, locale: 'en-GB' } });
  const { page } = bench;
  const person = new Person(page);
  const { text } = person;
  await person.arrive();
  await listen(page);
  await person.read('suction-line', text.t('names.instrument.pipe-clamp'));
  expect(await heard(page)).toEqual([expect.stringMatching(/^Suction line at the service valve: .*°C, .*\.$/)]);
  await person.openSheet('machine');
  expect(await heard(page)).toEqual([]);
  // Minutes that pass are played: their start and what came of them, and nothing while they run.
  await person.press(person.button(text.t('panels.machine.waitMinutes', { minutes: 15 })));
  await page.locator('.passing').waitFor();
  expect(await heard(page)).toHaveLength(1);
  await page.locator('.passing').waitFor({ state: 'detached' });
  expect(await heard(page)).toHaveLength(1);
  await person.press(
    page
      .getByRole('group', { name: text.t('panels.machine.outdoorFanRunning') })
      .getByRole('button', { name: text.t('panels.machine.off') }),
  );
  expect(await heard(page)).toHaveLength(1);
  // The note from before the fan was stopped says so in words.
  expect(await page.locator('.note-before').allTextContents()).toEqual(['Before the last change']);
  await person.press(person.button(text.t('panels.machine.waitMinutes', { minutes: 1 })));
  await page.locator('.passing').waitFor();
  await page.locator('.passing').waitFor({ state: 'detached' });
  expect(await heard(page)).toHaveLength(2);
  await page.waitForTimeout(1500);
  expect(await heard(page)).toEqual([]);
  // Where nothing may move, one sentence tells it all.
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await person.press(person.button(text.t('panels.machine.waitMinutes', { minutes: 15 })));
  expect(await heard(page)).toHaveLength(1);
  await bench.finish();
});

async function listen(page: Page): Promise<void> {
  await page.evaluate(() => {
    const said: string[] = [];
    Object.assign(globalThis, { said });
    for (const region of document.querySelectorAll('[aria-live], [role=status], [role=alert]')) {
      new MutationObserver(() => said.push(region.textContent ?? '')).observe(region, {
        childList: true,
        characterData: true,
        subtree: true,
      });
    }
  });
}

/** What was said since the last time. */
function heard(page: Page): Promise<string[]> {
  return page.evaluate(() => (globalThis as unknown as { said: string[] }).said.splice(0));
}

test('a hazardous act needs its own sheet, and leaving that sheet does nothing', async () => {
  const bench = await openBench(browser, { path: at('hazard'), context: { locale: 'en-GB' } });
  const { page } = bench;
  const person = new Person(page);
  const { text } = person;
  await person.arrive();
  await person.press(page.getByRole('tab', { name: text.t('panels.job.safe') }));
  await page
    .locator('summary')
    .filter({ hasText: text.t('panels.safety.hazards') })
    .click();
  const act = page.locator('button.row').filter({ hasText: new RegExp(text.t('names.hazard.vent-refrigerant'), 'i') });
  await act.click();
  await page.getByRole('dialog').getByText(text.t('names.hazard.vent-refrigerant')).waitFor();
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  expect(JSON.stringify(await person.code())).not.toContain('hazard');
  const untouched = await person.code();
  await act.click();
  await person.press(page.getByRole('dialog').getByRole('button', { name: text.t('panels.safety.confirmYes') }));
  await page
    .getByRole('status')
    .filter({ hasText: text.t('names.hazard.vent-refrigerant') })
    .waitFor({ state: 'attached' });
  expect(await person.code()).not.toBe(untouched);
  await bench.finish();
});
