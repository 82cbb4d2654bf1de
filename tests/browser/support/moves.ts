/**
 * Moves of a person at the bench, counted. They shorten the tests and hide nothing: each is the clicks or keys that a
 * person would make, on what a person would see.
 */
import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import type { Pack } from '../../../src/attempt/pack/types';
import { createText, type Language, type Text, type UnitSystem } from '../../../src/i18n';

export function shippedPack(id: string): Pack {
  return JSON.parse(readFileSync(new URL(`../../../scenarios/${id}.pack.json`, import.meta.url), 'utf8')) as Pack;
}

export type Hand = 'mouse' | 'touch';

export class Person {
  /** taps and clicks, and whole numbers typed (one each), so far */
  actions = 0;
  readonly text: Text;

  constructor(
    readonly page: Page,
    readonly hand: Hand = 'mouse',
    language: Language = 'en',
    system: UnitSystem = 'si',
  ) {
    this.text = createText(language, system);
  }

  /** Resolves when the machine can be worked on. */
  async arrive(): Promise<void> {
    await this.page.locator('.bench-place').first().waitFor({ state: 'attached' });
    // The buttons move once more when the picture has come; a person waits for it as well.
    await this.page.locator('.bench-canvas canvas').waitFor();
  }

  async press(target: Locator): Promise<void> {
    this.actions += 1;
    await (this.hand === 'touch' ? target.tap() : target.click());
  }

  button(name: string | RegExp): Locator {
    return this.page.getByRole('button', { name, exact: typeof name === 'string' });
  }

  async type(field: Locator, value: string): Promise<void> {
    this.actions += 1;
    await field.fill(value);
  }

  place(id: string): Locator {
    return this.page.locator(`.bench-place[data-place="${id}"]`);
  }

  /** Reads at a place: with the instrument in the hand if it fits, else from the sheet. Returns the taps it took. */
  async read(place: string, option: string): Promise<number> {
    const before = this.actions;
    const notes = await this.noteCount();
    await this.bringIntoView(place);
    await this.press(this.place(place));
    const sheet = this.page.locator('.place-sheet');
    if (await sheet.isVisible()) {
      await this.press(
        sheet
          .locator('.options button')
          .filter({ hasText: new RegExp(`^\\s*\\d?\\s*${option}`, 'i') })
          .first(),
      );
    }
    await this.untilNotes(notes + 1);
    return this.actions - before;
  }

  /** On a phone a half of the site may be out of view: the tap that turns to it counts. */
  private async bringIntoView(place: string): Promise<void> {
    const away = await this.place(place).evaluate(
      (element) => element.closest('li')?.classList.contains('away') ?? false,
    );
    if (!away) return;
    if ((await this.page.locator('.bench-views select').count()) > 0) {
      // A list of many parts: opening it and choosing the part are two taps.
      this.actions += 2;
      await this.place(place).focus();
      return;
    }
    const other = this.page.locator('.bench-views button[aria-pressed="false"]');
    await this.press(other.first());
  }

  async noteCount(): Promise<number> {
    return Number(await this.page.locator('.callout').getAttribute('data-notes'));
  }

  async untilNotes(count: number): Promise<void> {
    await this.page.locator(`.callout[data-notes="${count}"]`).waitFor();
  }

  async openSheet(sheet: 'job' | 'notebook' | 'stakes' | 'machine' | 'finish'): Promise<void> {
    const tab = this.page
      .locator('nav.sheets')
      .getByRole('button', { name: this.text.t(`panels.sheet.${sheet}`), exact: true });
    if ((await tab.getAttribute('aria-pressed')) !== 'true') await this.press(tab);
  }

  /** The code of the attempt, from the notebook. */
  async code(): Promise<string> {
    const along = this.page.locator('.take-along');
    if ((await along.getAttribute('open')) === null) await along.locator('summary').click();
    return along.locator('textarea').inputValue();
  }
}
