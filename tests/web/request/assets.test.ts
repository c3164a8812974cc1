import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: false });
});
afterAll(() => program.close());

const folder = new URL('../../../views/assets/', import.meta.url);
const sheets = readdirSync(folder).filter((name) => name.endsWith('.css'));

it.each(sheets)('the style sheet %s is sent with every rule and without its comments', async (name) => {
  const answer = await fetch(`${program.url}/assets/${name}`);
  const sent = await answer.text();
  const written = readFileSync(new URL(name, folder), 'utf8');
  expect(answer.headers.get('content-type')).toContain('text/css');
  expect(answer.headers.get('cache-control')).toContain('max-age=3600');
  expect(sent).not.toContain('/*');
  const rules = (text: string) =>
    text
      .replaceAll(/\/\*[\s\S]*?\*\//g, '')
      .replaceAll(/\s+/g, ' ')
      .replaceAll(/ ?([{};]) ?/g, '$1')
      .replaceAll(';}', '}')
      .trim();
  expect(rules(sent)).toBe(rules(written));
});
