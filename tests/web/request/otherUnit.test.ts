import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BARE_UNIT, kindOf, type TypedKind } from '../../../shared/quantity/bareUnit.ts';
import { readQuantity } from '../../../shared/quantity/readQuantity.ts';
import type { UnitName } from '../../../shared/quantity/units.ts';
import { listEntries } from '../../../src/records/catalogue.ts';
import { inOtherUnit } from '../../../src/web/request/otherUnit.ts';
import { type Box, formsIn, sentAsShown } from '../boxes.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
let stackId: string;
beforeAll(async () => {
  program = await serve({ demo: true });
  stackId = (await listEntries(program.shop.db, 'stack'))[0]!.id;
});
afterAll(() => program.close());

it('an address that says a unit says the other one; one without is left alone', () => {
  expect(inOtherUnit('/stud?unit=in&pull=4+mm', 'mm')).toBe('/stud?unit=mm&pull=4+mm');
  expect(inOtherUnit('/jobs/1001', 'in')).toBe('/jobs/1001');
});

/** Kinds whose unit goes with the person's lengths, by the unit a box is labeled with. */
const KIND_OF_UNIT = new Map<string, TypedKind>(
  (Object.entries(BARE_UNIT) as [TypedKind, { mm: string; in: string }][])
    .filter(([, units]) => units.mm !== units.in)
    .flatMap(([kind, units]) => [
      [units.mm, kind],
      [units.in, kind],
    ]),
);

/** What a box says, in the unit it is kept in. */
function meant(typed: string, unit: string): number[] {
  const kind = KIND_OF_UNIT.get(unit)!;
  return typed.split(';').map((part) => {
    const asked = { field: unit, typed: part.trim(), kind: kindOf(kind), unit: unit as UnitName };
    const read = readQuantity({ ...asked, decimalSign: 'point' });
    if (!read.ok) throw new Error(read.message);
    return read.value;
  });
}

/** The boxes of a page whose typed values lie in its address. */
function dimensional(html: string, forms: readonly string[]) {
  const seen = formsIn(html).filter(({ id, action }) => forms.includes(id) || forms.includes(action));
  const boxes = seen.flatMap((form) => form.boxes);
  return {
    sent: Object.assign({}, ...seen.map(sentAsShown)) as Record<string, string>,
    boxes: new Map<string, Box>(
      boxes
        .filter(({ kind, unit }) => kind === 'text' && KIND_OF_UNIT.has(unit ?? ''))
        .map((box) => [box.name, box]),
    ),
  };
}

describe('use inches on a page where every box with a unit is filled keeps what each one means', () => {
  it.each<[string, () => string, string[], number]>([
    [
      'a cover of its own dimensions, with a mark between stations',
      () =>
        '/cover?family=own&unit=mm&studs=4&circle=286&trackInner=214&trackOuter=264&nominal=5&ma.0=10&a.60=3',
      ['cover-form'],
      80,
    ],
    ['a cover of the catalog', () => '/cover?unit=mm', ['cover-form'], 50],
    [
      'a stack typed layer by layer, with its joint',
      () => '/stud?stack=own&unit=mm&prevailing=1&lt.0=3.2',
      ['stud-form'],
      20,
    ],
    ['a stud for a stack of the catalog', () => `/stud?stack=${stackId}&unit=mm`, ['stud-form'], 4],
    ['the stacks for a stud in the hand', () => '/stud/stacks?stud=own&unit=mm', ['/stud/stacks'], 9],
    ['which flexplate it is', () => '/stud/flexplate?unit=mm', ['/stud/flexplate'], 2],
    ['the pull-forward gap', () => '/stud/gap?unit=mm', ['/stud/gap'], 8],
    ['the studs of a job', () => `/jobs/1005?stack=${stackId}`, ['job-stack-form', 'studs-form'], 4],
  ])('%s', async (_what, address, forms, least) => {
    const path = address();
    const empty = dimensional((await program.get(path)).html, forms);
    expect(empty.boxes.size).toBeGreaterThanOrEqual(least);
    const typed = new Map([...empty.boxes.keys()].map((name, i) => [name, `${3 + i / 100}`]));
    const query = new URLSearchParams({ ...empty.sent, ...Object.fromEntries(typed) });
    const filled = await program.get(`${path.split('?')[0]}?${query}`);
    const back = formsIn(filled.html)
      .find(({ id }) => id === 'unit-form')!
      .boxes.find(({ name }) => name === 'back')!.value;
    const pressed = await program.post('/preferences', { unit: 'in', back });
    const shown = await fetch(`${program.url}${pressed.location}`, { headers: { cookie: 'unit=in' } });
    const after = dimensional(await shown.text(), forms);
    expect([...after.boxes.values()].some(({ unit }) => unit === 'in')).toBe(true);
    for (const [name, text] of typed) {
      const box = after.boxes.get(name);
      const before = empty.boxes.get(name)!;
      expect([name, box && meant(box.value, box.unit!)]).toEqual([name, meant(text, before.unit!)]);
    }
  });
});
