import { afterAll, beforeAll, expect, it } from 'vitest';
import { getEntry, listEntries } from '../../../src/records/catalogue.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: false });
});
afterAll(() => program.close());

const STUD = {
  name: 'Bench stud',
  thread: '3/8-24',
  threadStart: '1',
  threadEnd: '23',
  projection: '24',
  who: 'AB',
  why: 'new',
};
const added = async () => (await listEntries(program.shop.db, 'stud')).at(-1)!;

it('keeps stock and shelf place, and the strength of a marked grade (SAE J429, grade 5: 120 and 85 ksi)', async () => {
  const sent = await program.post('/catalogue/stud', { ...STUD, grade: 'grade 5', stock: '14', shelf: 'B3' });
  expect(sent.status).toBe(303);
  const { id, body } = await added();
  expect(body).toMatchObject({ stock: 14, shelf: 'B3', stud: { tensileMPa: 827, proofMPa: 586 } });
  const page = await program.get(`/catalogue/stud/${id}`);
  expect(page.html).toMatch(/name="stock"[^>]*value="14"/);
  expect(page.html).toMatch(/name="shelf"[^>]*value="B3"/);
});

it('takes a typed figure before the grade, and a measured pitch diameter', async () => {
  await program.post('/catalogue/stud', {
    ...STUD,
    name: 'Worn stud',
    grade: 'grade 5',
    tensile: '800',
    pitchDiameter: '8.70',
  });
  const { id } = await added();
  expect((await getEntry(program.shop.db, 'stud', id))?.body.stud).toMatchObject({
    tensileMPa: 800,
    proofMPa: 586,
    pitchDiameterMeasuredMm: 8.7,
  });
});

it.each([
  ['half a stud in stock', { stock: '1.5' }, 'is not a whole number'],
  [
    'a grade with no figure for the size',
    { grade: 'grade 5', thread: '#10-24 UNC' },
    'There is no strength for',
  ],
])('refuses %s', async (_what, change, sentence) => {
  const sent = await program.post('/catalogue/stud', { ...STUD, ...change });
  expect(sent.status).toBe(422);
  expect(sent.text).toContain(sentence);
});

it('checks the other studs where one has an impossible figure, and names that one', async () => {
  const bad = { ...STUD, name: 'Impossible stud', pitchDiameter: '2' };
  expect((await program.post('/catalogue/stud', bad)).status).toBe(303);
  const own = 'stack=own&unit=mm&ln.0=plate&lt.0=3.2&lh.0=10.3&nutThread=3/8-24&nutHeight=8.3&pull=4';
  const page = await program.get(`/stud?${own}`);
  expect(page.status).toBe(200);
  expect(page.html).toContain('id="slip"');
  expect(page.text).toContain('Not checked, because the catalog entry has an impossible figure');
  expect(page.text).toMatch(/Impossible stud : The measured pitch diameter is 2 mm; it must be more than/);
});
