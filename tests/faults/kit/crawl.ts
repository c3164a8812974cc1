import { ask } from './http.ts';
import { type Page, readPage } from './page.ts';

export interface Found {
  readonly path: string;
  readonly status: number;
  readonly html: string;
  readonly page: Page;
}

/** Of pages of one kind, as of many jobs, only so many are opened. */
const OF_ONE_KIND = 3;
const MOST_PAGES = 150;

const kindOf = (path: string) =>
  path
    .replace(/\?.*/, (query) => [...new URLSearchParams(query).keys()].slice(0, 3).join('&'))
    .replace(/^\/(jobs|photos|people)\/(?!new\b)[^/?]+/, '/$1/*')
    .replace(/^\/cover\/example\/[^/?]+/, '/cover/example/*')
    .replace(/^(\/catalogue\/\w+)\/(?!new\b)[^/?]+/, '$1/*')
    .replace(/\d+/g, '#');

/** Follows the links of the program from its front page. */
export async function crawl(
  base: string,
  from: readonly string[] = ['/'],
  headers: Readonly<Record<string, string>> = {},
): Promise<Found[]> {
  const found: Found[] = [];
  const waiting = [...from];
  const seen = new Set<string>();
  const kinds = new Map<string, number>();
  while (waiting.length > 0 && found.length < MOST_PAGES) {
    const path = waiting.shift()!;
    if (seen.has(path)) continue;
    seen.add(path);
    const kind = kindOf(path);
    if (!from.includes(path) && (kinds.get(kind) ?? 0) >= OF_ONE_KIND) continue;
    kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
    const { status, headers: said, text } = await ask(base + path, { headers });
    if (status === 303) waiting.push(String(said.location));
    if (!String(said['content-type']).startsWith('text/html')) continue;
    const page = readPage(text, base + path);
    found.push({ path, status, html: text, page });
    waiting.push(...page.links);
  }
  return found;
}
