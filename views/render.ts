import type { VNode } from 'preact';
import { render } from 'preact-render-to-string';

/** A whole document, doctype included. */
export function renderPage(page: VNode): string {
  return `<!doctype html>\n${render(page)}\n`;
}

/** A part of a page, as htmx swaps it. */
export function renderPart(part: VNode): string {
  return render(part);
}
