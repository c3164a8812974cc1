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

const EVERYTHING = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
/** What other colors or another width can change. */
const LOOKS_ONLY = ['color-contrast', 'link-in-text-block', 'target-size', 'scrollable-region-focusable'];

/** No violation of WCAG 2.2 A and AA on this screen, as axe finds them. Put in by evaluate: the CSP blocks script tags. */
export async function expectAccessible(page: Page, screen: string): Promise<void> {
  // A press on a link is over before its page is all there: half a page has no end, and no style sheet.
  await page.waitForLoadState();
  await page.evaluate(source);
  expect(await violations(page, { type: 'tag', values: EVERYTHING }), `axe on ${screen}`).toBe('');
}

/** Narrowest phone and desk; other tests look at every screen on a desk in light. */
const LOOKS = [
  { width: 360, colorScheme: 'light', forcedColors: 'none', rules: { type: 'tag', values: EVERYTHING } },
  { width: 360, colorScheme: 'dark', forcedColors: 'none', rules: { type: 'rule', values: LOOKS_ONLY } },
  { width: 1440, colorScheme: 'dark', forcedColors: 'none', rules: { type: 'rule', values: LOOKS_ONLY } },
  { width: 1440, colorScheme: 'dark', forcedColors: 'active', rules: { type: 'rule', values: LOOKS_ONLY } },
] as const;

/** The same page on the narrowest phone and on a desk, light, dark, and in the colors of the system. */
export async function expectAccessibleInEveryLook(page: Page, screen: string): Promise<void> {
  await page.waitForLoadState();
  await page.evaluate(source);
  const found: string[] = [];
  for (const { width, colorScheme, forcedColors, rules } of LOOKS) {
    await page.setViewportSize({ width, height: 900 });
    await page.emulateMedia({ colorScheme, forcedColors, reducedMotion: 'reduce' });
    const said = await violations(page, rules);
    if (said !== '') found.push(`${colorScheme}, forced ${forcedColors}, ${width} px: ${said}`);
  }
  expect(found, `axe on ${screen}`).toEqual([]);
}

async function violations(page: Page, runOnly: { type: string; values: readonly string[] }): Promise<string> {
  const found = await page.evaluate(async (only) => {
    const axe = (
      globalThis as unknown as { axe: { run(options: object): Promise<{ violations: Violation[] }> } }
    ).axe;
    return (await axe.run({ resultTypes: ['violations'], runOnly: only })).violations;
  }, runOnly);
  return found
    .map(
      ({ id, help, nodes }) =>
        `${id}: ${help}\n    ${nodes
          .map((node) => `${node.html}\n      ${node.failureSummary ?? ''}`)
          .slice(0, 3)
          .join('\n    ')}`,
    )
    .join('\n');
}

/** Nothing to be scrolled sideways. */
export async function expectNoSidewaysScroll(page: Page, screen: string): Promise<void> {
  await page.waitForLoadState();
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(over, `${screen} scrolls sideways by this many px`).toBeLessThanOrEqual(0);
}
