import { afterAll, beforeAll, expect, it } from 'vitest';
import { boxOf, inPart, type Place } from '../../../shared/quantity/fieldText.ts';
import { CRITERIA } from '../../../shared/words/fields/criteria.ts';
import { type AnyFields, entriesOf, isFigure } from '../../../shared/words/fields/field.ts';
import { currentCriteria } from '../../../src/records/shopCriteria.ts';
import { formsIn, sentAsShown } from '../boxes.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

/** Every box of the limits that holds a figure, by its name in the form, and whether it may be left empty. */
function boxesOf(fields: AnyFields, place: Place = {}): { box: string; optional: boolean }[] {
  return entriesOf(fields).flatMap(([key, field]) => {
    if (field.kind === 'part') return boxesOf(field.fields, inPart(field, place));
    const box = boxOf(key, field, place);
    return box !== null && isFigure(field) ? [{ box, optional: field.optional === true }] : [];
  });
}

const BOXES = boxesOf(CRITERIA);

async function send(garbage: Record<string, string>) {
  const page = await program.get('/criteria');
  const form = formsIn(page.html).find(({ action }) => action === '/criteria')!;
  return program.post('/criteria', { ...sentAsShown(form), who: 'TO', why: 'tried', ...garbage });
}

function expectWrong(html: string, box: string, typed: string): void {
  const tag = new RegExp(`<input[^>]*name="${box.replaceAll('.', '\\.')}"[^>]*>`).exec(html)?.[0] ?? '';
  expect(tag, `${box} is said to be wrong`).toContain('aria-invalid="true"');
  expect(tag, `${box} is given back as typed`).toContain(`value="${typed}"`);
}

it('what is no figure is refused in every box of the limits, and nothing is saved', async () => {
  const before = await currentCriteria(program.shop.db);
  expect(BOXES.length).toBeGreaterThan(30);
  const answer = await send(Object.fromEntries(BOXES.map(({ box }) => [box, `about ${box}`])));
  expect(answer.status).toBe(422);
  for (const { box } of BOXES) expectWrong(answer.html, box, `about ${box}`);
  expect(await currentCriteria(program.shop.db)).toEqual(before);
});

it('it is refused alone in a box that may be empty, too: it never counts as nothing', async () => {
  const before = await currentCriteria(program.shop.db);
  const optional = BOXES.filter((one) => one.optional);
  expect(optional.length).toBeGreaterThan(8);
  for (const { box } of optional) {
    const answer = await send({ [box]: 'a hair' });
    expect([answer.status, box]).toEqual([422, box]);
    expectWrong(answer.html, box, 'a hair');
  }
  expect(await currentCriteria(program.shop.db)).toEqual(before);
});
