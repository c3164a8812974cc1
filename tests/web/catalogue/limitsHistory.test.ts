import { afterAll, beforeAll, expect, test } from 'vitest';
import { formsIn, sentAsShown } from '../boxes.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: false });
});
afterAll(() => program.close());

async function save(changes: Record<string, string>) {
  const page = await program.get('/criteria');
  const form = formsIn(page.html).find(({ action }) => action === '/criteria')!;
  return program.post('/criteria', { ...sentAsShown(form), who: 'TO', ...changes });
}

/** The rows of a table by its caption, cell by cell. */
function rowsOf(html: string, caption: string): string[][] {
  const [, table = ''] = new RegExp(`<caption>${caption}</caption>(.*?)</table>`).exec(html) ?? [];
  return [...table.matchAll(/<tr>(.*?)<\/tr>/g)]
    .map(([, row]) => [...row!.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/g)].map(([, cell]) => plain(cell!)))
    .slice(1);
}
const plain = (cell: string) => cell.replace(/<[^>]*>/g, '').replaceAll('\u00a0', ' ');

const FIRST = { minimum: '4.3', allowance: '0.05', runout: '', confidence: '95' };
const THEN = { minimum: '4.5', allowance: '0.06', runout: '0.08', confidence: '99' };
const MOVED = [
  ['Minimum wall', '4.3 mm', '4.5 mm'],
  ['Clean-up allowance', '0.05 mm', '0.06 mm'],
  ['Runout allowed after the cut', 'none', '0.08 mm'],
  ['Confidence required', '95 %', '99 %'],
];

test('what a change of the limits would move, and what each revision moved, is told figure for figure', async () => {
  const units = { shopName: 'Heron Lane', lengthUnit: 'mm', decimalSign: 'point' };
  expect((await save({ ...FIRST, ...units })).status).toBe(303);
  const preview = await save({ ...THEN, why: 'thin ones burned', preview: '1' });
  expect(rowsOf(preview.html, 'Limits changed')).toEqual(MOVED);
  expect((await save({ ...THEN, why: 'thin ones burned' })).status).toBe(303);
  const { html } = await program.get('/criteria');
  expect(rowsOf(html, 'What revision 2 changed')).toEqual(MOVED);
  const first = rowsOf(html, 'What revision 1 changed');
  for (const [name, before] of MOVED) expect(first).toContainEqual([name, '—', before]);
  expect(html.indexOf('id="revision-2"')).toBeLessThan(html.indexOf('id="revision-1"'));
});
