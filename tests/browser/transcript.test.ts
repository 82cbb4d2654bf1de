/**
 * A callout worked from what a screen reader is given alone: roles, names and texts of the page, no coordinate, no
 * picture, no selector. One script, two machines: what it finds decides its verdict.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { FamilyId } from '../../physics/types';
import { createText } from '../../src/i18n';
import { shippedPack } from './support/moves';
import { launchBrowser, openBench } from './support/page';

const PACK = shippedPack('larch-valley');
const text = createText('en', 'si');

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

/** The page as roles, names and texts. */
const transcript = (page: Page) => page.locator('body').ariaSnapshot();

const number = (shown: string) => Number.parseFloat(shown.replace('\u2212', '-'));

/** One line of the command line, typed and chosen; resolves when the transcript holds what it must bring. */
async function command(page: Page, words: string): Promise<void> {
  await page.keyboard.press('/');
  await page.getByRole('combobox', { name: text.t('app.command.label') }).fill(words);
  await page.getByRole('option').first().waitFor();
  await page.keyboard.press('Enter');
}

/** The value that the notebook tells for a place, °C or kPa. */
async function told(page: Page, place: string): Promise<number> {
  const named = new RegExp(`${place}, ([−\\d.]+)`, 'i');
  await expect.poll(() => transcript(page), { timeout: 20_000 }).toMatch(named);
  return number(named.exec(await transcript(page))![1]!);
}

/** Superheat or subcooling by the form: two notes, the line of the strip, the subtraction. K. */
async function worked(page: Page, kind: 'superheat' | 'subcooling', pressure: string, pipe: string): Promise<number> {
  const press = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' }).click();
  await press(text.t(`names.sum.${kind}`).replace(/^./, (first) => first.toUpperCase()));
  for (const place of [pressure, pipe]) {
    const note = page.getByRole('button', { name: new RegExp(`^[−\\d.]+\\s\\S+( gauge)? ${place}`, 'i') });
    if ((await note.getAttribute('aria-pressed')) !== 'true') await note.click();
  }
  await press(new RegExp(`^${text.t(kind === 'superheat' ? 'panels.sums.dew' : 'panels.sums.bubble')}`));
  const saturation = number(await page.getByRole('textbox', { name: text.t('panels.sums.saturation') }).inputValue());
  const temperature = await told(page, pipe);
  const answer = kind === 'superheat' ? temperature - saturation : saturation - temperature;
  const shown = answer.toFixed(1).replace('-', '\u2212');
  await page.getByRole('textbox', { name: text.t('panels.sums.answer') }).fill(shown);
  await press(text.t('panels.sums.check'));
  await expect.poll(() => transcript(page)).toContain(text.t('panels.sums.right', { value: `${shown} K` }));
  return answer;
}

/** What is read, with which instrument; before the reversing valve it is another pipe in each mode. */
const readings = (heating: boolean) =>
  [
    ['suctionPort', 'low-gauge', 'common-suction-port'],
    ['suction', 'pipe-clamp', 'compressor-suction'],
    ['before', 'pipe-clamp', heating ? 'coil-vapour-pipe' : 'reversing-valve-inlet'],
    ['liquidPort', 'high-gauge', 'liquid-port'],
    ['liquid', 'pipe-clamp', 'liquid-line'],
  ] as const;
type Read = ReturnType<typeof readings>[number][0];

test.each(['reversing-valve-leak', 'undercharge'] as const)(
  '%s is found, argued and closed from the transcript alone',
  async (truth: FamilyId) => {
    const callout = PACK.callouts.find(({ faults }) => Object.keys(faults)[0] === truth)!;
    const bench = await openBench(browser, {
      path: `#callout=${PACK.id}/${callout.id}&seed=transcript`,
      context: { locale: 'en-GB', reducedMotion: 'reduce' },
    });
    const { page } = bench;
    await expect.poll(() => transcript(page), { timeout: 60_000 }).toContain(text.t('panels.job.safe'));
    await page.getByRole('tab', { name: text.t('panels.job.safe') }).click();
    for (const step of [
      'eye-and-hand-protection',
      'isolate-and-prove-dead',
      'wait-for-capacitors',
      'zero-gauges',
    ] as const) {
      const name = `${text.t('panels.safety.take')}: ${text.t(`names.safety.${step}`)}`;
      await page.getByRole('button', { name, exact: true }).click();
    }
    const place = {} as Record<Read, string>;
    const values = {} as Record<Read, number>;
    for (const [key, instrument, id] of readings(callout.conditions.mode === 'heating')) {
      place[key] = text.t(`bench.place.${id}`);
      const how = instrument === 'pipe-clamp' ? 'with its insulation' : '';
      await command(page, `${text.t(`names.instrument.${instrument}`).replace('-', ' ')} ${how} ${place[key]}`);
      values[key] = await told(page, place[key]);
    }
    const superheat = await worked(page, 'superheat', place.suctionPort, place.suction);
    const subcooling = await worked(page, 'subcooling', place.liquidPort, place.liquid);
    // Common practice, no source: suction gas that is much warmer behind the reversing valve than before it was warmed
    // by hot gas in there; little subcooling with gas well superheated is too little refrigerant.
    const warmed = values.suction - values.before;
    const verdict = warmed > 8 ? 'reversing-valve-leak' : superheat > 4 && subcooling < 3 ? 'undercharge' : 'no-fault';
    const said = `warmed ${warmed.toFixed(1)} K, superheat ${superheat.toFixed(1)} K, subcooling ${subcooling.toFixed(1)} K`;
    expect(verdict, said).toBe(truth);

    await page.keyboard.press('v');
    await page
      .getByRole('combobox', { name: text.t('finish.verdict.cause') })
      .selectOption({ label: text.t(`names.cause.${verdict}`).replace(/^./, (first) => first.toUpperCase()) });
    await page.getByRole('button', { name: text.t('names.size.clear'), exact: true }).click();
    await page.getByRole('button', { name: text.t('finish.verdict.commit'), exact: true }).click();
    await expect.poll(() => transcript(page)).toContain(text.t(`names.cause.${verdict}`));
    expect(await page.getByRole('radio').count()).toBeGreaterThan(0);
    await bench.finish();
  },
);
