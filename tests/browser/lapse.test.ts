/** Minutes that pass are played: what is shown follows the model, the record holds one action, and nothing differs after. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { replay, snapshotAt } from '../../src/attempt';
import { decode } from '../../src/attempt/codes';
import { Person, shippedPack } from './support/moves';
import { launchBrowser, MOVING, openBench } from './support/page';

const PACK = shippedPack('old-wharf');
const SOLO = PACK.callouts.find(({ mode, plant }) => mode === 'solo' && plant === 'orifice-split')!;
const LINKED = PACK.callouts.find(({ mode, plant }) => mode === 'solo' && plant === 'inverter-split')!;
const at = (callout: string, seed: string) => `#callout=${PACK.id}/${callout}&seed=${seed}`;

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const minutes = (person: Person, count: number) =>
  person.button(person.text.t('panels.machine.waitMinutes', { minutes: count }));

/** Everything that one element showed, in order, from now until the playing has ended. */
async function watched(page: Page, selector: string, begin: () => Promise<void>): Promise<string[]> {
  await page.evaluate((wanted) => {
    const seen: string[] = [];
    const look = () => {
      const text = document.querySelector(wanted)?.textContent ?? '';
      if (seen.at(-1) !== text) seen.push(text);
      requestAnimationFrame(look);
    };
    look();
    Object.assign(globalThis, { seen });
  }, selector);
  await begin();
  await page.locator('.passing').waitFor();
  await page.locator('.passing').waitFor({ state: 'detached' });
  return page.evaluate(() => (globalThis as unknown as { seen: string[] }).seen.splice(0));
}

const stopOutdoorFan = async (person: Person) => {
  await person.openSheet('machine');
  await person.press(
    person.page
      .getByRole('group', { name: person.text.t('panels.machine.outdoorFanRunning') })
      .getByRole('button', { name: person.text.t('panels.machine.off') }),
  );
};

test('a gauge left on its port rises while the minutes are played, to what the model shows at their end', async () => {
  const bench = await openBench(browser, { path: at(SOLO.id, 'lapse'), context: { ...MOVING, locale: 'en-GB' } });
  const { page } = bench;
  const person = new Person(page);
  await person.arrive();
  await person.read('liquid-port', person.text.t('names.instrument.high-gauge'));
  const noted = await person.place('liquid-port').locator('.bench-tag').textContent();
  await stopOutdoorFan(person);
  const tag = '.bench-place[data-place="liquid-port"] .bench-tag';
  const seen = await watched(page, tag, () => person.press(minutes(person, 5)));
  const shown = seen.map((text) => Number.parseFloat(text));
  expect(shown.length).toBeGreaterThan(10);
  expect(shown[0]).toBe(Number.parseFloat(noted!));

  const state = replay(decode(await person.code()), PACK);
  expect(state.attempt.actions.filter(({ action }) => action.kind === 'wait')).toHaveLength(1);
  const path = Array.from({ length: 301 }, (_, i) => {
    const { dischargePressure } = snapshotAt(state, state.clock - 300 + i).probes;
    return (dischargePressure.value - state.site.atmosphere) / 1000;
  });
  // The gauge's own error is at most a few per cent; what was shown stays on the model's path, and arrives at its end.
  expect(Math.max(...shown)).toBeGreaterThan(Number.parseFloat(noted!) + 100);
  for (const value of shown) {
    expect(value).toBeGreaterThan(0.95 * Math.min(...path));
    expect(value).toBeLessThan(1.05 * Math.max(...path));
  }
  expect(shown.at(-1)! / path.at(-1)!).toBeCloseTo(1, 1);
  // The note stays what it was, and the name that a screen reader says is the note's.
  expect(state.notes).toHaveLength(1);
  expect(await person.place('liquid-port').getAttribute('aria-label')).toContain(noted!);
  await bench.finish();
});

test('digits after playing, after going to the end by key or tap, and without motion are the same', async () => {
  const codes: string[] = [];
  const clocks: (string | null)[] = [];
  for (const way of ['played', 'key', 'tap', 'still'] as const) {
    const bench = await openBench(browser, {
      path: at(SOLO.id, 'ways'),
      context: { locale: 'en-GB', reducedMotion: way === 'still' ? 'reduce' : 'no-preference' },
    });
    const { page } = bench;
    const person = new Person(page);
    await person.arrive();
    await stopOutdoorFan(person);
    await person.press(minutes(person, 15));
    const passing = page.locator('.passing');
    if (way === 'still') expect(await passing.count()).toBe(0);
    else await passing.waitFor();
    if (way === 'key') await page.keyboard.press('Enter');
    if (way === 'tap') await page.locator('.callout-title h1').click();
    // Well before it would have ended by itself.
    if (way !== 'played') await passing.waitFor({ state: 'detached', timeout: 1500 });
    await passing.waitFor({ state: 'detached' });
    clocks.push(await page.locator('.callout-title p').first().textContent());
    await person.read('liquid-port', person.text.t('names.instrument.high-gauge'));
    codes.push((await page.locator('.notes .note-head strong').first().textContent()) ?? '');
    codes.push(await person.code());
    await bench.finish();
  }
  expect(new Set(clocks).size).toBe(1);
  expect(new Set(codes).size).toBe(2);
});

test('the clock, the strand and the tape run with the machine', async () => {
  const bench = await openBench(browser, { path: at(LINKED.id, 'strand'), context: { ...MOVING, locale: 'en-GB' } });
  const { page } = bench;
  const person = new Person(page);
  await person.arrive();
  await person.openSheet('machine');
  await page.getByRole('tab', { name: person.text.t('panels.machine.strand') }).click();
  await person.press(person.button(person.text.t('panels.strand.tapeOn')));
  await page.getByRole('tab', { name: person.text.t('panels.machine.controls') }).click();
  await stopOutdoorFan(person);
  await page.getByRole('tab', { name: person.text.t('panels.machine.strand') }).click();
  // Five minutes by key, so that the strand stays open.
  const strand = await watched(page, '.strand', () => page.keyboard.press('w'));
  expect(strand.length).toBeGreaterThan(10);
  const rows = await page.locator('.sheet details tr').count();
  expect(rows).toBeGreaterThan(20);
  const clock = await watched(page, '.callout-title .number', () => page.keyboard.press('w'));
  expect(clock.length).toBeGreaterThanOrEqual(5);
  await bench.finish();
});

test('a screen reader hears the start and the result, and nothing between', async () => {
  const bench = await openBench(browser, { path: at(SOLO.id, 'heard'), context: { ...MOVING, locale: 'en-GB' } });
  const { page } = bench;
  const person = new Person(page);
  await person.arrive();
  await person.openSheet('machine');
  const said = await watched(page, '.callout ~ [role=status]', () => person.press(minutes(person, 5)));
  expect(said.filter(Boolean)).toEqual([
    person.text.t('app.said.passing', { minutes: 5 }),
    expect.stringContaining('5 minutes have passed'),
  ]);
  await bench.finish();
});
