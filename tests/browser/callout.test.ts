/** Whole callouts through the built page: by mouse, by keyboard alone, killed in the middle, with another fault inside. */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { replay } from '../../src/attempt';
import { decode } from '../../src/attempt/codes';
import { decodeDifferential, judgeAttempt } from '../../src/examiner';
import { differentialFile } from '../../src/examiner/shipped';
import { createText, type Text } from '../../src/i18n';
import { messageText } from '../../src/panels/kit/message';
import { sentence, valueText } from '../../src/panels/kit/say';
import { Person, shippedPack } from './support/moves';
import { launchBrowser, MOVING, openBench } from './support/page';

const PACK = shippedPack('old-wharf');
const GUIDED = PACK.callouts.find(({ mode }) => mode === 'guided')!;
const SOLO = PACK.callouts.find(({ mode, plant }) => mode === 'solo' && plant === 'orifice-split')!;
const link = (callout: string, seed: string) => `#callout=${PACK.id}/${callout}&seed=${seed}`;

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

/** What the examiner says of this attempt in the terminal, put into the words of the page. */
function expectedDebrief(code: string, text: Text): { verdict: string; sentences: string[] } {
  const attempt = decode(code);
  const callout = PACK.callouts.find(({ id }) => id === attempt.callout)!;
  const file = new URL(`../../scenarios/differentials/${differentialFile(PACK.id, callout.id)}`, import.meta.url);
  const { debrief } = judgeAttempt(attempt, PACK, decodeDifferential(JSON.parse(readFileSync(file, 'utf8'))));
  const { atmosphere } = replay(attempt, PACK).site;
  const say = (message: Parameters<typeof messageText>[1]) => sentence(messageText(text, message, atmosphere));
  return { verdict: say(debrief.verdict), sentences: debrief.sentences.map(say) };
}

async function shownNumbers(page: Page): Promise<string[]> {
  return page.locator('.notes .note-head strong').allTextContents();
}

/** The guided callout from the first screen to the debrief, with the same clicks whatever is inside the machine. */
async function playByMouse(page: Page): Promise<{ numbers: string[]; code: string; sums: string[] }> {
  const person = new Person(page);
  const { text } = person;
  await person.arrive();
  await person.read('suction-line', text.t('names.instrument.hand'));
  await person.read('liquid-line', text.t('names.instrument.hand'));
  await person.press(page.getByRole('tab', { name: text.t('panels.job.safe') }));
  await person.press(
    person.button(new RegExp(`^${text.t('panels.safety.take')}: ${text.t('names.safety.eye-and-hand-protection')}`)),
  );
  await person.press(
    person.button(new RegExp(`^${text.t('panels.safety.take')}: ${text.t('names.safety.zero-gauges')}`)),
  );
  await person.read('suction-port', text.t('names.instrument.low-gauge'));
  await person.read('suction-line', text.t('names.instrument.pipe-clamp'));
  await person.read('liquid-line', text.t('names.instrument.pipe-clamp'));
  await person.read('liquid-port', text.t('names.instrument.high-gauge'));
  await person.read('return-air', text.t('names.instrument.air-probe'));
  await person.read('supply-air', text.t('names.instrument.air-probe'));

  // Superheat: the trainee picks the notes, reads the strip, subtracts.
  await person.press(page.locator('.sums-begin').getByRole('button', { name: text.t('names.sum.superheat') }));
  const form = page.locator('.sum-form');
  await person.press(
    form
      .locator('fieldset')
      .first()
      .locator('.tag')
      .filter({ hasText: text.t('bench.place.suction-port') }),
  );
  await person.press(
    form
      .locator('fieldset')
      .nth(1)
      .locator('.tag')
      .filter({ hasText: text.t('bench.place.suction-line') }),
  );
  await person.press(form.getByRole('button', { name: text.t('panels.sums.dew') }));
  const pipe = Number.parseFloat((await form.locator('.sum-inputs strong').nth(1).textContent()) ?? '');
  const boiling = Number.parseFloat(
    (await form.locator('input[inputmode]').first().inputValue()).replace('\u2212', '-'),
  );
  await person.type(form.locator('input[inputmode]').nth(1), (pipe - boiling).toFixed(1));
  await person.press(form.getByRole('button', { name: text.t('panels.sums.check') }));
  await page.locator('.sum-marked').first().waitFor();

  await person.openSheet('stakes');
  await person.press(page.locator('[data-cause="undercharge"]'));
  await person.press(person.button(text.t('panels.stakes.declare')));
  await person.press(page.locator('.note .star').first());
  await person.openSheet('finish');
  await person.press(person.button(text.t('names.size.clear')));
  await person.press(person.button(text.t('finish.verdict.commit')));
  await person.press(page.getByRole('radio', { name: text.t('names.remedy.find-leak-mend-and-weigh-in') }));
  await person.press(person.button(text.t('finish.repair.next')));
  for (const step of [
    'isolate',
    'recover',
    'nitrogen-purge',
    'new-drier',
    'pressure-test',
    'evacuate-and-hold',
    'weigh-in',
    'restart-and-settle',
    'record',
  ] as const) {
    await person.press(page.locator('button.row').filter({ hasText: new RegExp(text.t(`names.step.${step}`), 'i') }));
  }
  await person.press(person.button(text.t('finish.repair.next')));
  await person.press(page.getByRole('radio', { name: text.t('names.root.leak-at-joint') }));
  await person.press(person.button(text.t('finish.repair.commit')));
  await person.press(person.button(text.t('panels.machine.waitMinutes', { minutes: 15 })));
  await person.read('suction-port', text.t('names.instrument.low-gauge'));
  await person.read('suction-line', text.t('names.instrument.pipe-clamp'));
  await person.read('liquid-line', text.t('names.instrument.pipe-clamp'));
  const numbers = await shownNumbers(page);
  const sums = await page.locator('.sum-marked').allTextContents();
  const proof = page.locator('.sheet:not(.notebook-beside) .tag');
  for (let i = 0; i < 3; i += 1) await person.press(proof.nth(i));
  await person.press(person.button(text.t('finish.verify.commit')));
  await page.locator('.debrief-verdict').waitFor({ timeout: 90_000 });
  return { numbers, sums, code: await codeAfterwards(person) };
}

async function codeAfterwards(person: Person): Promise<string> {
  await person.press(person.button(person.text.t('debrief.machine')));
  const code = await person.code();
  await person.press(person.button(person.text.t('debrief.title')));
  return code;
}

async function shownDebrief(page: Page): Promise<{ verdict: string; sentences: string[] }> {
  return {
    verdict: (await page.locator('.debrief-verdict').textContent()) ?? '',
    sentences: await page.locator('.debrief-said li').allTextContents(),
  };
}

describe('the guided callout by mouse', () => {
  let first: Awaited<ReturnType<typeof playByMouse>>;
  let told: Awaited<ReturnType<typeof shownDebrief>>;

  test('goes from the first screen to a debrief whose numbers are those of the record, run again in the terminal', async () => {
    const bench = await openBench(browser, { context: { ...MOVING, locale: 'en-GB' } });
    await bench.page.getByRole('link', { name: createText('en', 'si').t('app.home.begin') }).waitFor();
    await bench.page.goto(`${bench.page.url()}${link(GUIDED.id, 'mouse-1')}`);
    first = await playByMouse(bench.page);
    told = await shownDebrief(bench.page);

    const attempt = decode(first.code);
    const state = replay(attempt, PACK);
    const text = createText('en', 'si');
    expect(first.numbers).toEqual([...state.notes].reverse().map((note) => valueText(text, note)));
    expect(first.numbers.length).toBe(11);
    expect(told).toEqual(expectedDebrief(first.code, text));
    await bench.finish();
  });

  test('the same clicks on another fault show other numbers and other sentences', async () => {
    // A pack that the page keeps for use without a network could not be swapped.
    const bench = await openBench(browser, { context: { ...MOVING, locale: 'en-GB', serviceWorkers: 'block' } });
    await swapFault(bench.page);
    await bench.page.goto(`${bench.page.url()}${link(GUIDED.id, 'mouse-1')}`);
    await bench.page.reload();
    const other = await playByMouse(bench.page);
    const changed = other.numbers.filter((number, index) => number !== first.numbers[index]);
    expect(changed.length).toBeGreaterThanOrEqual(8);
    const otherTold = await shownDebrief(bench.page);
    expect(otherTold.verdict).not.toBe(told.verdict);
    expect(otherTold.sentences.filter((line) => !told.sentences.includes(line)).length).toBeGreaterThanOrEqual(2);
    await bench.finish();
  });
});

/** Lets the page load the shipped pack with a blocked filter in the guided machine instead of its own fault. */
async function swapFault(page: Page): Promise<void> {
  await page.route(/pack-[\w-]+\.js$/, async (route) => {
    const response = await route.fetch();
    const body = await response.text();
    const own = Object.entries(GUIDED.faults)[0]!;
    const swapped = body.replace(
      new RegExp(`(\\W)["']?${own[0]}["']?:\\s*0?${String(own[1]).replace(/^0/, '').replace('.', '\\.')}`),
      '$1"filter-dirty":0.4',
    );
    if (response.url().includes(PACK.id) && swapped === body) throw new Error('the fault was not found in the pack');
    await route.fulfill({ response, body: swapped });
  });
}

test('a callout by keyboard alone, in Spanish and inch-pound, from the first screen to the debrief', async () => {
  const bench = await openBench(browser, { context: { ...MOVING, locale: 'es-US' } });
  const { page } = bench;
  const text = createText('es', 'ip');
  await page.getByRole('link', { name: text.t('app.home.begin') }).waitFor();
  // A link is followed by Tab and Enter; the seed makes the run repeatable.
  await page.evaluate(
    (hash) => {
      location.hash = hash;
    },
    link(SOLO.id, 'keys-1'),
  );
  const person = new Person(page, 'mouse', 'es', 'ip');
  await person.arrive();
  const key = (...keys: string[]) =>
    keys.reduce((done, one) => done.then(() => page.keyboard.press(one)), Promise.resolve());

  // Arrows walk the places: three keys are a reading.
  await key('p');
  await walkTo(page, 'suction-port');
  const before = await person.noteCount();
  await key('Enter', '1');
  await person.untilNotes(before + 1);
  // The instrument stays in the hand: with the place under the focus, Enter alone reads at the next one.
  await walkTo(page, 'liquid-port');
  await key('Enter');
  await person.untilNotes(before + 2);
  // The command line does the same in words.
  await key('/');
  await page.keyboard.type('pinza aislante aspiracion valvula', { delay: 5 });
  await key('Enter');
  await person.untilNotes(before + 3);
  await key('/');
  await page.keyboard.type('pinza aislante liquido antes', { delay: 5 });
  await key('Enter');
  await person.untilNotes(before + 4);

  // Stakes: the first arrows already act.
  await key('s');
  await page.locator('.stakes [data-cause]:focus').waitFor();
  await key('ArrowDown', 'ArrowRight', 'ArrowRight', 'ArrowLeft', 'ArrowRight');
  await tabTo(page, text.t('panels.stakes.declare'));
  await key('Enter');
  await page.locator('.trail li').first().waitFor();

  await key('v');
  await tabTo(page, text.t('names.size.clear'));
  await key('Enter');
  await tabTo(page, text.t('finish.verdict.commit'));
  await key('Enter');
  await page.getByRole('radio').first().waitFor();
  await tabToRemedies(page);
  await key('Space');
  await tabTo(page, text.t('finish.repair.next'));
  await key('Enter');
  await tabTo(page, text.t('names.step.isolate'));
  await key('Enter');
  await tabTo(page, text.t('finish.repair.next'));
  await key('Enter');
  await tabTo(page, text.t('finish.repair.commit'));
  await key('Enter');
  await person.button(text.t('finish.verify.without')).waitFor();
  await key('w');
  await tabTo(page, text.t('finish.verify.without'));
  const numbers = await shownNumbers(page);
  await key('Enter');
  await page.locator('.debrief-verdict').waitFor({ timeout: 90_000 });
  const told = await shownDebrief(page);
  const code = await codeAfterwards(person);
  const state = replay(decode(code), PACK);
  expect(numbers).toEqual([...state.notes].reverse().map((note) => valueText(text, note)));
  expect(numbers.every((number) => /psig|°F/.test(number))).toBe(true);
  expect(told).toEqual(expectedDebrief(code, text));
  await bench.finish();
});

/** Walks the places by arrow until this one has the focus. */
async function walkTo(page: Page, place: string): Promise<void> {
  for (let i = 0; i < 40; i += 1) {
    const here = await page.evaluate(() => (document.activeElement as HTMLElement | null)?.dataset.place ?? null);
    if (here === place) return;
    await page.keyboard.press('ArrowRight');
    if (here !== null && i === 30) break;
  }
  for (let i = 0; i < 40; i += 1) {
    const here = await page.evaluate(() => (document.activeElement as HTMLElement | null)?.dataset.place ?? null);
    if (here === place) return;
    await page.keyboard.press('ArrowLeft');
  }
  throw new Error(`no arrow leads to ${place}`);
}

/** Presses Tab until the list of remedies has the focus: what a verdict is asked for comes before it. */
async function tabToRemedies(page: Page): Promise<void> {
  for (let i = 0; i < 60; i += 1) {
    const group = await page.evaluate(() => (document.activeElement as HTMLInputElement | null)?.name ?? '');
    if (group === 'remedy') return;
    await page.keyboard.press('Tab');
  }
  throw new Error('Tab never comes to the remedies');
}

/** Presses Tab until a button of this name has the focus. */
async function tabTo(page: Page, name: string): Promise<void> {
  const wanted = name.toLocaleLowerCase();
  for (let i = 0; i < 120; i += 1) {
    const label = await page.evaluate(() => {
      const element = document.activeElement as HTMLElement | null;
      return element instanceof HTMLButtonElement
        ? (element.getAttribute('aria-label') ?? element.textContent ?? '')
        : '';
    });
    if (
      label
        .replace(/^\d+\s*/, '')
        .trim()
        .toLocaleLowerCase() === wanted
    )
      return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never comes to "${name}"`);
}

test('a page killed in the middle of an attempt loses nothing', async () => {
  const bench = await openBench(browser, { context: { ...MOVING, locale: 'en-GB' } });
  await bench.page.goto(`${bench.page.url()}${link(SOLO.id, 'killed-1')}`);
  const person = new Person(bench.page);
  await person.arrive();
  await person.read('suction-port', person.text.t('names.instrument.low-gauge'));
  await person.read('suction-line', person.text.t('names.instrument.pipe-clamp'));
  await person.openSheet('machine');
  await person.press(person.button(person.text.t('panels.machine.waitMinutes', { minutes: 5 })));
  await person.openSheet('stakes');
  await person.press(bench.page.locator('[data-cause]').first());
  const numbers = await shownNumbers(bench.page);
  const clock = await bench.page.locator('.callout-title p').first().textContent();
  const chips = await bench.page.locator('.stakes-unsure .number').textContent();
  const code = await person.code();

  const session = await bench.context.newCDPSession(bench.page);
  const crashed = bench.page.waitForEvent('crash');
  session.send('Page.crash').catch(() => {});
  await crashed;
  const later = await openBench(browser, { into: bench.context, path: link(SOLO.id, 'killed-1') });
  const again = new Person(later.page);
  await again.arrive();
  expect(await shownNumbers(later.page)).toEqual(numbers);
  expect(await later.page.locator('.callout-title p').first().textContent()).toBe(clock);
  await again.openSheet('stakes');
  expect(await later.page.locator('.stakes-unsure .number').textContent()).toBe(chips);
  expect(await again.code()).toBe(code);
  await later.finish();
});
