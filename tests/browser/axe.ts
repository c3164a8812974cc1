import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Violation {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

/** No violation of WCAG 2.2 A and AA on this screen, as axe finds them. Put in by evaluate: the CSP blocks script tags. */
export async function expectAccessible(page: Page, screen: string): Promise<void> {
  // A press on a link is over before its page is all there: half a page has no end, and no style sheet.
  await page.waitForLoadState();
  await page.evaluate(source);
  const violations = await page.evaluate(async () => {
    const axe = (
      globalThis as unknown as { axe: { run(options: object): Promise<{ violations: Violation[] }> } }
    ).axe;
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    return (await axe.run({ resultTypes: ['violations'], runOnly: { type: 'tag', values: tags } }))
      .violations;
  });
  const said = violations.map(
    ({ id, help, nodes }) =>
      `${id}: ${help}\n    ${nodes
        .map((node) => `${node.html}\n      ${node.failureSummary ?? ''}`)
        .slice(0, 3)
        .join('\n    ')}`,
  );
  expect(said.join('\n'), `axe on ${screen}`).toBe('');
}

/** Nothing to be scrolled sideways. */
export async function expectNoSidewaysScroll(page: Page, screen: string): Promise<void> {
  await page.waitForLoadState();
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(over, `${screen} scrolls sideways by this many px`).toBeLessThanOrEqual(0);
}
