import type { Page } from 'playwright-core';

/** A person's hands: every press, choice and filled field counts as one action. */
export class Hands {
  actions = 0;
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async press(selector: string): Promise<void> {
    this.actions++;
    await this.page.locator(selector).click();
  }

  async choose(selector: string, value: string): Promise<void> {
    this.actions++;
    await this.page.locator(selector).selectOption(value);
  }

  async fill(selector: string, text: string): Promise<void> {
    this.actions++;
    await this.page.locator(selector).fill(text);
  }
}
