import { afterAll, beforeAll, expect, it } from 'vitest';
import { getEntry, listEntries } from '../../../src/records/catalogue.ts';
import { goMetric } from '../metric.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
  await goMetric(program.shop.db);
});
afterAll(() => program.close());

const FIELDS = {
  name: 'Bench steel',
  young: '201000',
  poisson: '0.28',
  source: 'its certificate',
  yield: '310',
  unit: 'mm',
  who: 'AK',
};
const COVER = {
  name: 'Bench cover',
  make: 'stamped',
  sideWall: 'plain',
  studCount: '4',
  circle: '286',
  trackInner: '214',
  trackOuter: '264',
  nominal: '5',
  unit: 'mm',
  who: 'AK',
  why: 'its steel is known',
};

const coverNow = async () =>
  (await listEntries(program.shop.db, 'family')).find(({ name }) => name === 'Bench cover')!;

it('a steel is added by form, refused with half its heat, and asked about where it looks like a slip', async () => {
  const half = await program.post('/catalogue/steel', { ...FIELDS, density: '7850' });
  expect(half.status).toBe(422);
  expect(half.text).toContain('Enter conductivity, density and specific heat, or leave all three blank.');
  const giga = await program.post('/catalogue/steel', { ...FIELDS, young: '201' });
  expect([giga.status, giga.text]).toEqual([422, expect.stringContaining('a thousand times the figure')]);
  expect((await program.post('/catalogue/steel', FIELDS)).location).toBe('/catalogue?shelf=steel');
  expect((await program.get('/catalogue?shelf=steel')).text).toContain('Bench steel');
});

it('a cover type names a steel and keeps the revision it was saved with', async () => {
  await program.post('/catalogue/family', { ...COVER, steel: 'Bench steel, revision 1' });
  const first = await coverNow();
  expect(first.body.steel).toMatchObject({ id: 'bench-steel', revision: 1, steel: { youngMPa: 201_000 } });
  const used = await program.get('/catalogue/steel/bench-steel');
  expect(used.text.slice(used.text.indexOf('Where it is used'))).toContain('1 cover type: Bench cover');

  const change = { ...FIELDS, young: '205000', from: '1', why: 'a new certificate' };
  expect((await program.post('/catalogue/steel/bench-steel', change)).status).toBe(303);
  const page = await program.get(`/catalogue/family/${first.id}`);
  expect(page.html).toContain('value="Bench steel, revision 1"');
  expect(page.html).toContain('value="Bench steel, revision 2"');

  const note = { ...COVER, steel: 'Bench steel, revision 1', note: 'as it was', from: '1' };
  await program.post(`/catalogue/family/${first.id}`, note);
  expect((await coverNow()).body.steel).toEqual(first.body.steel);
  const newer = { ...note, steel: 'bench steel', from: '2' };
  expect((await program.post(`/catalogue/family/${first.id}`, newer)).status).toBe(303);
  expect((await coverNow()).body.steel).toMatchObject({ revision: 2, steel: { youngMPa: 205_000 } });
  const history = await program.get(`/catalogue/family/${first.id}`);
  expect(history.text).toContain('Bench steel, revision 2');
  expect((await getEntry(program.shop.db, 'family', first.id, 1))?.body.steel?.revision).toBe(1);
});

it('a steel that is not in use, or an earlier revision of it, is refused beside its box', async () => {
  const { id, revision } = await coverNow();
  const send = (steel: string) =>
    program.post(`/catalogue/family/${id}`, { ...COVER, steel, from: String(revision) });
  expect((await send('No such steel')).text).toContain('The catalog has no steel named "No such steel"');
  expect((await send('Bench steel, revision 1')).text).toContain('is now at revision 2. Choose it again.');
  expect((await coverNow()).revision).toBe(revision);
});
