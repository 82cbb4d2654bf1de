/** Ways to practise, played on the real page: by mouse, by keys, at three sizes, in both languages. */
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { decode, encode } from '../../src/attempt/codes';
import { addTexts, createText, type Language } from '../../src/i18n';
import { practiceTexts } from '../../src/i18n/practice';
import { toppedUpJob } from '../support/closed-job';
import { layoutFindings } from './support/layout-check';
import { Person, shippedPack } from './support/moves';
import { launchBrowser, openBench } from './support/page';

addTexts(practiceTexts);

const SHOTS = fileURLToPath(new URL('./.artifacts/', import.meta.url));
const SIZES = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
] as const;
const PAIR = 'orifice-split/drier-restriction+undercharge';
const DAY = 86_400_000;

let browser: Browser;
beforeAll(async () => {
  mkdirSync(SHOTS, { recursive: true });
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

/** A person who learned this pair three days ago. */
function learned(level: number): string {
  const at = Date.now() - 4 * DAY;
  const sides = ['undercharge', 'drier-restriction'];
  const base = { kind: 'round', at, edge: PAIR, pick: 'settles', right: true, hint: false };
  const entries = [
    { ...base, way: 'contrast', truth: null, pick: null },
    ...sides.map((truth) => ({ ...base, way: 'completion', truth })),
    ...Array.from({ length: level }, (_, i) => ({ ...base, way: i < 2 ? 'solo' : 'mixed', truth: sides[i % 2] })),
  ];
  return JSON.stringify({ format: 1, entries });
}

function context(language: Language, viewport: (typeof SIZES)[number], record: string | null = null) {
  return {
    viewport,
    locale: language,
    storageState: {
      cookies: [],
      origins: [
        {
          origin: '',
          localStorage: [
            { name: 'coldbench.preferences', value: JSON.stringify({ language, units: 'si' }) },
            ...(record === null ? [] : [{ name: 'coldbench.practice', value: record }]),
          ],
        },
      ],
    },
  };
}

async function openWay(
  hash: string,
  language: Language,
  viewport: (typeof SIZES)[number],
  record: string | null = null,
) {
  const { storageState, ...rest } = context(language, viewport, record);
  const made = await browser.newContext({ reducedMotion: 'reduce', ...rest });
  await made.addInitScript((pairs) => {
    for (const { name, value } of pairs) if (localStorage.getItem(name) === null) localStorage.setItem(name, value);
  }, storageState.origins[0]!.localStorage);
  return openBench(browser, { path: hash, into: made });
}

const entriesOf = (page: Page) =>
  page.evaluate(() => (JSON.parse(localStorage.getItem('coldbench.practice') ?? '{}').entries ?? []) as unknown[]);

/** Sound to look at and to hear. */
async function inspect(page: Page, name: string): Promise<void> {
  await page.screenshot({ path: `${SHOTS}practice-${name}.png`, fullPage: true });
  expect(await layoutFindings(page), name).toEqual([]);
  await page.evaluate(axe.source);
  const found = await page.evaluate(async () => {
    const { violations } = await (globalThis as unknown as { axe: typeof axe }).axe.run();
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
  });
  expect(found, name).toEqual([]);
}

describe('the path', () => {
  test('from the first screen: side by side, then cases until both sides are told, then alone', async () => {
    const bench = await openBench(browser);
    const { page } = bench;
    await page.getByRole('link', { name: /Path by look-alike pairs/ }).click();
    const first = page.locator('.pairs li').first();
    await first.waitFor();
    expect(await first.locator('h3').textContent()).toBe('Too little refrigerant – or blocked filter-drier?');
    await first.getByRole('link').click();
    await page.locator('.contrast').first().waitFor();
    expect(await page.locator('.contrast').first().textContent()).toContain('Subcooling');
    await page.getByRole('button', { name: 'Now a case of this pair' }).click();
    // Whoever guesses needs some cases; whoever always names the same cause would get only one side.
    for (let i = 0; i < 40; i++) {
      const title = page.locator('h1').filter({ hasText: /Finish the case|Tell them apart/ });
      await title.waitFor();
      if ((await title.textContent()) === 'Tell them apart') break;
      await page
        .locator('section[aria-labelledby=answer] button')
        .nth(i % 2)
        .click();
      // What was taken last is the reading that tells.
      await page.locator('section[aria-labelledby=because] button').last().click();
      await page.locator('.told').waitFor();
      expect(await page.locator('.told').textContent()).toContain('And you named the reading that shows it.');
      await page.getByRole('button', { name: 'Next case' }).click();
      await page.locator('.told').waitFor({ state: 'detached' });
    }
    await page.locator('h1').filter({ hasText: 'Tell them apart' }).waitFor();
    expect(await page.locator('section[aria-labelledby=pick] .picks button').count()).toBe(6);
    await page.locator('section[aria-labelledby=pick] .picks button').first().click();
    expect(await page.locator('section[aria-labelledby=answer] button').count()).toBe(3);
    await page.locator('section[aria-labelledby=answer] button').first().click();
    await page.locator('.told').waitFor();
    await page.getByRole('link', { name: 'Back to the path' }).click();
    await page.locator('.pair-state').first().waitFor();
    expect(await page.locator('.pair-state').first().textContent()).toContain('Step 3 of 4');
    const kept = (await entriesOf(page)).length;
    await page.reload();
    await page.locator('.pair-state').first().waitFor();
    expect((await entriesOf(page)).length).toBe(kept);
    await bench.finish();
  });

  test('with all help gone the sum is one’s own and every place is offered', async () => {
    const bench = await openWay(`#practise=path/${PAIR}`, 'en', SIZES[0], learned(7));
    const { page } = bench;
    await page.locator('section[aria-labelledby=pick]').waitFor();
    expect(await page.locator('.picks button').count()).toBeGreaterThan(20);
    expect(await page.locator('.readings thead th').count()).toBe(2);
    // which of the sums lie on the table already is the luck of the deal
    const sum = page
      .locator('.picks button')
      .filter({ hasText: /^(Subcooling|Superheat|Indoor air drop|Outdoor air rise|Liquid line over outdoor air)/ })
      .first();
    await sum.click();
    await page.locator('form input').fill('not a number');
    await page.getByRole('button', { name: 'Check' }).click();
    await page.getByText('One number, please.').waitFor();
    for (const wrong of ['99', '-99']) {
      if ((await page.getByRole('button', { name: 'Check' }).count()) === 0) break;
      await page.locator('form input').fill(wrong);
      await page.getByRole('button', { name: 'Check' }).click();
    }
    const answers = page.locator('section[aria-labelledby=answer] button');
    await answers.first().waitFor();
    // all that the work order of the dealt machine names: more than the pair
    expect(await answers.count()).toBeGreaterThan(2);
    await bench.finish();
  });
});

describe('the quarrel', () => {
  test('a due review is played by keys alone, and is due later afterwards', async () => {
    const bench = await openWay('#practise=path', 'en', SIZES[0], learned(2));
    const { page } = bench;
    const due = page.getByRole('link', { name: '1 review is due: 90 seconds' });
    await due.waitFor();
    await due.focus();
    await page.keyboard.press('Enter');
    await page.locator('.colleagues').waitFor();
    const pick = page.locator('section[aria-labelledby=pick] button').first();
    await pick.waitFor();
    for (let i = 0; i < 12 && !(await pick.evaluate((element) => element === document.activeElement)); i++) {
      await page.keyboard.press('Tab');
    }
    await page.keyboard.press('Enter');
    await page.locator('section[aria-labelledby=answer]').waitFor();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.locator('.told').waitFor();
    expect(await page.locator('.told h2').evaluate((element) => element === document.activeElement)).toBe(true);
    expect(await page.locator('.told').textContent()).toMatch(/Next review: \w+ \d+/);
    const [last] = (await entriesOf(page)).slice(-1) as { way: string; edge: string }[];
    expect(last).toMatchObject({ way: 'quarrel', edge: PAIR });
    await page.getByRole('link', { name: 'Back to the path' }).click();
    await page.locator('.pairs').first().waitFor();
    expect(await page.getByRole('link', { name: /due: 90 seconds/ }).count()).toBe(0);
    await bench.finish();
  });

  test('a hint names the reading and is counted', async () => {
    const bench = await openWay('#practise=quarrel', 'en', SIZES[0], learned(2));
    const { page } = bench;
    await page.getByRole('button', { name: /A hint/ }).click();
    await page.getByText(/Take what tells the two apart/).waitFor();
    await page.locator('section[aria-labelledby=pick] .picks button').first().click();
    await page.locator('section[aria-labelledby=answer] button').first().click();
    await page.locator('.told').waitFor();
    const [last] = (await entriesOf(page)).slice(-1) as { hint: boolean }[];
    expect(last?.hint).toBe(true);
    await bench.finish();
  });
});

describe('jobs with less in the bag', () => {
  test('three instruments are chosen, and only they are in the bag at the machine; the job is found again', async () => {
    const bench = await openBench(browser);
    const { page } = bench;
    await page.getByRole('link', { name: /Short bag/ }).click();
    const go = page.getByRole('button', { name: 'Drive there' });
    await go.waitFor();
    expect(await go.isDisabled()).toBe(true);
    for (const name of ['Pipe clamp', 'Air probe', 'Low-side gauge']) {
      await page.getByRole('button', { name: new RegExp(name, 'i') }).click();
    }
    await go.click();
    const person = new Person(page);
    await person.arrive();
    await person.place('suction-line').click({ force: true });
    await page.locator('.place-sheet').waitFor();
    await page.locator('.options button').first().click();
    await person.untilNotes(1);
    await person.place('liquid-port').click({ force: true });
    await page.locator('.place-sheet').waitFor();
    expect(await page.locator('.options').textContent()).toMatch(/low-side/i);
    expect(await page.locator('.options').textContent()).not.toMatch(/high-side/i);
    await page.goto(page.url().replace(/#.*/, ''));
    await page.getByRole('link', { name: 'Go on' }).click();
    await person.arrive();
    await person.untilNotes(1);
    await bench.finish();
  });

  test('on a closed circuit no gauge is offered', async () => {
    const bench = await openBench(browser, { path: '#practise=closed-circuit' });
    const { page } = bench;
    await page.locator('.carried').first().waitFor();
    expect(await page.locator('.carried').allTextContents()).toHaveLength(3);
    await page.getByRole('button', { name: 'Drive there' }).click();
    const person = new Person(page);
    await person.arrive();
    await person.place('suction-port').click({ force: true });
    await page.locator('.place-sheet').waitFor();
    expect(await page.locator('.place-sheet').textContent()).not.toMatch(/gauge/i);
    await bench.finish();
  });
});

test('three readings go over the radio, and the answer is the examiner’s belief', async () => {
  const bench = await openBench(browser, { path: '#practise=radio' });
  const { page } = bench;
  const rows = page.locator('.readings tbody button');
  await rows.first().waitFor();
  for (const i of [0, 1, 2]) await rows.nth(i).click();
  await page.getByRole('button', { name: 'Tell these: 3 of 3' }).click();
  await page.locator('.told').waitFor();
  const shares = await page.locator('.heard .number').allTextContents();
  expect(shares).toHaveLength(3);
  const [, yours, best] = shares.map((share) => Number.parseInt(share, 10));
  expect(best!).toBeGreaterThanOrEqual(yours!);
  const [last] = (await entriesOf(page)).slice(-1) as { kind: string; told: string[] }[];
  expect(last?.kind).toBe('radio');
  expect(last?.told).toHaveLength(3);
  await inspect(page, 'radio');
  await bench.finish();
});

test('chalk it: one tap before the clamp settles is kept in the attempt', async () => {
  const bench = await openBench(browser, { path: '#callout=old-wharf/fish-hall-office&seed=chalk' });
  const { page } = bench;
  const person = new Person(page);
  await person.arrive();
  await person.place('suction-line').click({ force: true });
  await page.locator('.place-sheet').waitFor();
  await page.getByLabel('Chalk it: predict before it settles').check();
  await page
    .locator('.options button')
    .filter({ hasText: /pipe clamp/i })
    .first()
    .click();
  const question = page.locator('.chalk');
  await question.waitFor();
  expect(await question.textContent()).toContain('If it is too little refrigerant');
  expect(await person.noteCount()).toBe(0);
  await inspect(page, 'chalk');
  await page.getByRole('button', { name: 'higher', exact: true }).click();
  await person.untilNotes(1);
  const kinds = decode(await person.code()).actions.map(({ action }) => action.kind);
  expect(kinds).toEqual(['chalk', 'read']);
  await bench.finish();
});

test('a repair that does not hold: the debrief shows the machine in the head, and the van comes back', async () => {
  const pack = shippedPack('old-wharf');
  const home = pack.callouts.find(({ faults }) => 'drier-restriction' in faults)!;
  const bench = await openBench(browser);
  const { page } = bench;
  await page.getByText('Open an attempt').click();
  await page.getByLabel('Attempt code').fill(encode(toppedUpJob(pack, home.id, 'van').attempt));
  await page.getByRole('button', { name: 'Open the code' }).click();
  await page.getByRole('button', { name: 'Your machine in the head' }).click({ timeout: 60_000 });
  const head = page.locator('.points').first();
  await head.waitFor();
  expect(await head.textContent()).toContain('With too little refrigerant you expected: higher.');
  await inspect(page, 'head');
  await page.goto(page.url().replace(/#.*/, '#home'));
  const visit = page.locator('section[aria-labelledby=van] a');
  await visit.waitFor();
  await visit.click();
  const person = new Person(page);
  await person.arrive();
  await person.openSheet('job');
  expect(await page.locator('.sheet-body').first().textContent()).toContain('Our own visit, last time.');
  await bench.finish();
});

test('every third job is looked back on before it is closed, and the debrief lays the model beside it', async () => {
  const pack = shippedPack('old-wharf');
  const home = pack.callouts.find(({ faults }) => 'drier-restriction' in faults)!;
  const bench = await openBench(browser, { context: { viewport: SIZES[2] } });
  const { page } = bench;
  const lay = async (code: string) => {
    await page.goto(page.url().replace(/#.*/, '#home'));
    await page.getByText('Open an attempt').click();
    await page.getByLabel('Attempt code').fill(code);
    await page.getByRole('button', { name: 'Open the code' }).click();
  };
  for (const seed of ['first', 'second']) {
    await lay(encode(toppedUpJob(pack, home.id, seed).attempt));
    await page.locator('.debrief-verdict').waitFor({ timeout: 60_000 });
  }
  const { actions, ...head } = toppedUpJob(pack, home.id, 'third').attempt;
  const open = actions.filter(({ action }) => action.kind !== 'reflect' && action.kind !== 'verified');
  await lay(encode({ ...head, actions: open }));
  const person = new Person(page);
  await person.arrive();
  await person.openSheet('finish');
  const form = page.locator('fieldset').filter({ hasText: 'Look back (never scored)' });
  await form.waitFor();
  await form.locator('select').nth(0).selectOption('verdict');
  await form.locator('select').nth(1).selectOption('rival');
  await form.locator('select').last().selectOption({ index: 1 });
  await inspect(page, 'look-back');
  await form.getByRole('button', { name: 'Keep my look back' }).click();
  await page.getByText('Your look back is kept.').first().waitFor();
  await person.openSheet('notebook');
  const kept = decode(await person.code()).actions.map(({ action }) => action);
  expect(kept.at(-1)).toMatchObject({ kind: 'reflect', forVerdict: [0], forRival: [1] });
  await lay(encode(toppedUpJob(pack, home.id, 'told').attempt));
  await page.getByRole('button', { name: 'Your machine in the head' }).click({ timeout: 60_000 });
  const told = page.locator('section[aria-labelledby=look-back]');
  await told.waitFor();
  expect(await told.textContent()).toContain('You: for blocked filter-drier. The model:');
  await inspect(page, 'look-back-told');
  await bench.finish();
});

test('a trap is checked, sent and played; a broken one says so', async () => {
  const bench = await openBench(browser, { path: '#practise=trap' });
  const { page } = bench;
  await page.getByLabel('What is wrong with it').selectOption('drier-restriction');
  await page.getByLabel('What it shall be taken for').selectOption('undercharge');
  await page.getByRole('button', { name: 'Check the trap' }).click();
  await page.getByText('A good trap: it takes in, and it is fair.').waitFor();
  await inspect(page, 'trap');
  await page.getByRole('button', { name: 'Copy a link' }).click();
  const link = await page.getByLabel('Send this link:').inputValue();
  expect(link).not.toMatch(/drier|undercharge/);
  await page.goto('about:blank');
  await page.goto(link);
  await new Person(page).arrive();
  expect(page.url()).not.toMatch(/drier|undercharge/);
  await page.goto(page.url().replace(/#.*/, '#practise=trap/nonsense'));
  await page.getByText('This trap cannot be opened').waitFor();
  await bench.finish();
});

test('a record that cannot be read is set aside, said so, and can be saved', async () => {
  const bench = await openWay('#practise=path', 'en', SIZES[0], '{"format":1,"entries":[{"kind":"nonsense"}]');
  const { page } = bench;
  await page.getByText(/cannot be read. It is set aside/).waitFor();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save what was set aside' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('practice-aside.txt');
  await bench.finish();
});

// Spanish words are the longer ones.
describe.each(['es'] as const)('looks, %s', (language) => {
  const text = createText(language, 'si');
  // between the two nothing else is laid out
  test.each([SIZES[0], SIZES[2]])('nothing overlaps, clips or speaks in keys at $width px', async (size) => {
    const name = (screen: string) => `${screen}-${language}-${size.width}`;
    const bench = await openWay('#practise=path', language, size, learned(2));
    const { page } = bench;
    await page.locator('.pairs li').first().waitFor();
    await inspect(page, name('path'));
    await page.locator('.pairs li').nth(1).getByRole('link').click();
    await page.locator('.contrast').first().waitFor();
    await inspect(page, name('contrast'));
    await page.goto(page.url().replace(/#.*/, '#practise=quarrel'));
    await page.locator('.colleagues').waitFor();
    await inspect(page, name('quarrel'));
    await page.locator('section[aria-labelledby=pick] .picks button').first().click();
    await page.locator('section[aria-labelledby=answer] button').first().click();
    await page.getByRole('button', { name: text.t('practice.round.next') }).waitFor();
    await inspect(page, name('told'));
    await page.goto(page.url().replace(/#.*/, '#practise=short-bag'));
    await page.getByRole('button', { name: text.t('practice.jobs.go') }).waitFor();
    await inspect(page, name('short-bag'));
    await page.goto(page.url().replace(/#.*/, '#practise=radio'));
    await page.locator('.readings tbody tr').first().waitFor();
    await inspect(page, name('radio'));
    await page.goto(page.url().replace(/#.*/, '#practise=trap'));
    await page.getByRole('button', { name: text.t('practice.trap.check') }).waitFor();
    await inspect(page, name('trap'));
    await bench.finish();
  });
});
