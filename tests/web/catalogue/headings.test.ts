import { afterAll, beforeAll, expect, it } from 'vitest';
import { boxesOf, inPart } from '../../../shared/quantity/fieldText.ts';
import { CRITERIA } from '../../../shared/words/fields/criteria.ts';
import { type AnyFields, entriesOf } from '../../../shared/words/fields/field.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

/** Each heading a record names, its parts' too, with the first box that belongs below it. */
function headings(fields: AnyFields, place = {}): [head: string, box: string][] {
  return entriesOf(fields).flatMap(([key, field]) => {
    const first = boxesOf({ [key]: field } as AnyFields, place)[0];
    const own: [string, string][] = field.head && first ? [[field.head, first]] : [];
    return field.kind === 'part' ? [...own, ...headings(field.fields, inPart(field, place))] : own;
  });
}

it('the page of limits shows every heading of its record, with its own boxes below it', async () => {
  const { html } = await program.get('/criteria');
  // What not every shop needs is folded: its heading is what opens it.
  const groups = html.split(/<legend>|<summary><b>/).slice(1);
  const wanted = headings(CRITERIA);
  expect(wanted.length).toBeGreaterThan(6);
  for (const [head, box] of wanted) {
    const group = groups.find((one) => one.startsWith(`${head}</`));
    expect(group, head).toBeDefined();
    expect(group, head).toContain(`name="${box}"`);
  }
});
