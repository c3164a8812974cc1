import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** A person who has a keyboard and nothing else. */
export class Keys {
  readonly page: Page;
  /** Where the focus was lost: after what. */
  readonly lost: string[] = [];

  constructor(page: Page) {
    this.page = page;
  }

  private has(selector: string): Promise<boolean> {
    return this.page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector);
  }

  /** Tab by Tab, as far as a person has patience. */
  async to(selector: string, most = 25): Promise<void> {
    for (let tabs = 0; tabs <= most; tabs++) {
      if (await this.has(selector)) return;
      await this.page.keyboard.press('Tab');
    }
    const at = await this.page.evaluate(() => document.activeElement?.outerHTML.slice(0, 120));
    throw new Error(`${selector} is more than ${most} Tabs away; the focus is at ${at}`);
  }

  async type(selector: string, text: string, most?: number): Promise<void> {
    await this.to(selector, most);
    await this.page.keyboard.type(text);
  }

  /** Chooses among radios, or in a list, with the arrows. */
  async choose(selector: string, value: string): Promise<void> {
    await this.to(selector);
    const isChosen = () =>
      this.page.evaluate((wanted) => {
        const at = document.activeElement as HTMLInputElement;
        return at.value === wanted && (at.type !== 'radio' || at.checked);
      }, value);
    for (let i = 0; i < 12 && !(await isChosen()); i++) {
      const first = selector.includes('radio') ? 'Space' : 'Home';
      await this.page.keyboard.press(i === 0 ? first : 'ArrowDown');
    }
    expect(await isChosen(), `${selector} ${value}`).toBe(true);
  }

  /** Enter on what has the focus, and whether it still is somewhere on the page that answers. */
  async enter(selector: string, what: string, most?: number): Promise<void> {
    await this.to(selector, most);
    await Promise.all([this.page.waitForEvent('load'), this.page.keyboard.press('Enter')]);
    const somewhere = await this.page.evaluate(
      () => document.activeElement !== null && document.activeElement !== document.body,
    );
    if (!somewhere) this.lost.push(what);
  }

  heading(): Promise<string | null> {
    return this.page.locator('h1').first().textContent();
  }
}
