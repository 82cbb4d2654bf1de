/** What the examiner says while a job is open: hints in three steps, and one more reading for a right verdict. */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Attempt, REAL_WORLD, replay } from '../../src/attempt';
import { decode } from '../../src/attempt/codes';
import { decodeDifferential, gradeAttempt, hintIn } from '../../src/examiner';
import { readRows, runTrial, trialOf, wouldRead } from '../../src/examiner/otherCause';
import { differentialFile } from '../../src/examiner/shipped';
import { createText } from '../../src/i18n';
import { hintText } from '../../src/panels/hints/hintText';
import { amount } from '../../src/panels/kit/message';
import { Person, shippedPack } from './support/moves';
import { type BenchPage, launchBrowser, openBench } from './support/page';

const PACK = shippedPack('old-wharf');
/** A drier that holds the liquid back: two readings at it are its proof. */
const CALLOUT = PACK.callouts.find(({ faults }) => 'drier-restriction' in faults)!;
const DIFFERENTIAL = decodeDifferential(
  JSON.parse(
    readFileSync(
      new URL(`../../scenarios/differentials/${differentialFile(PACK.id, CALLOUT.id)}`, import.meta.url),
      'utf8',
    ),
  ),
);

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

async function open(seed: string): Promise<{ bench: BenchPage; person: Person }> {
  const bench = await openBench(browser, { context: { locale: 'en-GB' } });
  await bench.page.goto(`${bench.page.url()}#callout=${PACK.id}/${CALLOUT.id}&seed=${seed}`);
  const person = new Person(bench.page);
  await person.arrive();
  return { bench, person };
}

/** What the examiner says in the terminal for every hint of this attempt, in the words of the page. */
function expectedHints(attempt: Attempt): string[][] {
  const state = replay(attempt, PACK);
  return state.hints.map(({ level, action }) => {
    const asked = { ...attempt, actions: attempt.actions.slice(0, action) };
    return hintText(createText('en', 'si'), hintIn(asked, PACK, DIFFERENTIAL, level), state.site.atmosphere);
  });
}

const newest = (page: Page) => page.locator('.hints > .hint-card');
const saidIn = (page: Page) => page.locator('p.hidden[role="status"]');

describe('hints', () => {
  test('come one a time, each after an own act, and say what the examiner computes from the record', async () => {
    const { bench, person } = await open('hints-1');
    const { page } = bench;
    const { text } = person;
    const ask = (step: 'look' | 'pair' | 'worked') =>
      page.locator('#hint', { hasText: text.t(`panels.hint.step.${step}`) });

    // Nothing done yet: the button can be reached, and says why there is none.
    await page.keyboard.press('h');
    await page.locator('#hint:focus').waitFor();
    await page.keyboard.press('Enter');
    await saidIn(page)
      .filter({ hasText: text.t('app.refusal.hint-too-soon') })
      .waitFor({ state: 'attached' });
    expect(await newest(page).count()).toBe(0);

    await person.read('filter-face', text.t('names.instrument.eyes'));
    await person.press(ask('look'));
    await newest(page)
      .locator('p')
      .first()
      .filter({ hasNotText: text.t('panels.hint.working') })
      .waitFor();
    expect(await page.locator('#hint').getAttribute('aria-disabled')).toBe('true');

    await person.read('suction-line', text.t('names.instrument.pipe-clamp'));
    await person.press(ask('pair'));
    await newest(page)
      .filter({ hasText: text.t('panels.hint.step.pair') })
      .locator('button')
      .first()
      .waitFor();
    expect(await page.locator('.hints details .hint-card').count()).toBe(1);

    await person.read('return-air', text.t('names.instrument.air-probe'));
    await person.press(ask('worked'));
    // The last step asks back first; nothing is opened by that.
    await person.press(person.button(text.t('panels.hint.costNo')));
    await person.press(ask('worked'));
    await person.press(person.button(text.t('panels.hint.costYes')));
    await newest(page).locator('a').waitFor();
    await page.locator('.hints details summary').click();

    const code = await person.code();
    const attempt = decode(code);
    const expected = expectedHints(attempt);
    expect(expected.length).toBe(3);
    const shown = (await page.locator('.hints').textContent()) ?? '';
    for (const line of expected.flat()) expect(shown).toContain(line);
    expect(expected[2].some((line) => /\d/.test(line))).toBe(true);
    expect(gradeAttempt(attempt, PACK, DIFFERENTIAL).scored).toBe(false);

    // The record holds the hints: after a reload they stand there again.
    await page.reload();
    await person.arrive();
    await newest(page).locator('a').waitFor();
    const again = (await page.locator('.hints').textContent()) ?? '';
    for (const line of expected[2]) expect(again).toContain(line);
    await bench.finish();
  });
});

describe('a right verdict that is not proved', () => {
  test('opens one more reading before the repair, and says what it brought', async () => {
    const { bench, person } = await open('prove-1');
    const { page } = bench;
    const { text } = person;
    for (const place of ['filter-face', 'indoor-fan', 'outdoor-coil-face', 'outdoor-fan']) {
      await person.read(place, text.t('names.instrument.eyes'));
    }
    await person.read('suction-line', text.t('names.instrument.pipe-clamp'));
    await person.read('drier-outlet-pipe', text.t('names.instrument.pipe-clamp'));
    await person.openSheet('finish');
    await page.locator('.sheet select').first().selectOption('drier-restriction');
    await person.press(person.button(text.t('names.size.severe')));
    await person.press(person.button(text.t('finish.verdict.commit')));
    const offer = page.locator('.prove');
    await offer.waitFor();
    const before = gradeAttempt(decode(await person.code()), PACK, DIFFERENTIAL).proveIt!;
    expect(before.note).toBeNull();
    expect(await offer.textContent()).toContain(text.t('finish.prove.open', { points: text.number(before.open) }));

    await person.press(offer.getByRole('button'));
    await person.read('liquid-line', text.t('names.instrument.pipe-clamp'));
    await person.openSheet('finish');
    await offer.filter({ hasNot: page.locator('button') }).waitFor();
    const attempt = decode(await person.code());
    const after = gradeAttempt(attempt, PACK, DIFFERENTIAL).proveIt!;
    expect(after.note).not.toBeNull();
    expect(after.won).toBeGreaterThan(1);
    await offer.filter({ hasText: text.t('finish.prove.won', { points: text.number(after.won) }) }).waitFor();
    const cause = (actions: Attempt['actions']) =>
      gradeAttempt({ ...attempt, actions }, PACK, DIFFERENTIAL).parts.find(({ part }) => part === 'cause')!.points!;
    expect(cause(attempt.actions)).toBeGreaterThan(cause(attempt.actions.slice(0, -1)));
    // The job is closed without more ado; the debrief lets another cause be tried in the same machine.
    await person.press(page.getByRole('radio', { name: text.t('names.remedy.clean-outdoor-coil') }));
    await person.press(person.button(text.t('finish.repair.next')));
    await person.press(person.button(text.t('finish.repair.next')));
    await person.press(person.button(text.t('finish.repair.commit')));
    await person.press(person.button(text.t('finish.verify.without')));
    await page.locator('.debrief-verdict').waitFor({ timeout: 90_000 });
    await person.press(person.button(text.t('debrief.layer.replay')));
    const replayed = page.locator('.replay');
    await replayed.locator('table').waitFor({ timeout: 60_000 });
    await replayed.locator('select').selectOption('undercharge');
    const slider = replayed.locator('input[type="range"]');
    await slider.focus();
    for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowRight');
    const severity = Number(await slider.inputValue());
    await replayed.locator('[data-working="false"]').waitFor();
    const state = replay(attempt, PACK);
    const outcome = runTrial(trialOf(state, 'undercharge', severity), REAL_WORLD);
    if (outcome.as !== 'runs') throw new Error(outcome.as);
    const { atmosphere, saturation } = state.site;
    const expected = readRows(state).map((row) => {
      const would = wouldRead(row, outcome.snapshots, saturation)!;
      return row.as === 'number' ? amount(text, row.kind, would, atmosphere) : '';
    });
    const shown = await replayed.locator('tbody td strong').allTextContents();
    expected.forEach((value, index) => {
      if (value !== '') expect(shown[index]).toBe(value);
    });
    expect(await replayed.locator('.cycle-chosen').count()).toBeGreaterThan(0);
    await bench.finish();
  });
});
