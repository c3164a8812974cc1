import type { VNode } from 'preact';
import { render } from 'preact-render-to-string';
import { keepTogetherIn } from '../shared/words/together.ts';

/** A whole document, doctype included. */
export function renderPage(page: VNode): string {
  return `<!doctype html>\n${keepTogetherIn(render(page))}\n`;
}

/** A part of a page, as htmx swaps it. */
export function renderPart(part: VNode): string {
  return render(part);
}
