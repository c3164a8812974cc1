import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { demoCovers } from '../../../data/demo/covers.ts';
import { demoFamilies } from '../../../data/demo/families.ts';
import type { Family } from '../../../shared/words/catalogue.ts';
import { getEntry, reviseEntry } from '../../../src/records/catalogue.ts';
import { findJobs } from '../../../src/records/jobs/findJobs.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { exampleQuery } from '../../../src/web/cover/example.ts';
import { goMetric } from '../metric.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
  await goMetric(program.shop.db);
});
afterAll(() => program.close());

const FIELDS = {
  name: 'Bench lining',
  liningModulus: '60',
  source: 'measured on the bench press',
  sourceOn: '2026-05-04',
  unit: 'mm',
  who: 'AK',
};

it('a lining is added by form, asked about where it looks like a slip, copied, changed and retired', async () => {
  expect((await program.post('/catalogue/lining', { ...FIELDS, source: '' })).status).toBe(422);
  const pascal = await program.post('/catalogue/lining', { ...FIELDS, liningModulus: '60000' });
  expect(pascal.text).toContain('Give the pressure in MPa for each mm it is squeezed.');
  const slip = await program.post('/catalogue/lining', { ...FIELDS, liningModulus: '600' });
  expect([slip.status, slip.text]).toEqual([422, expect.stringContaining('60')]);
  expect((await program.post('/catalogue/lining', FIELDS)).location).toBe('/catalogue?shelf=lining');
  const shelf = await program.get('/catalogue?shelf=lining');
  expect(shelf.text).toMatch(/Bench lining 60 MPa\/mm measured on the bench press May 4, 2026/);

  expect((await program.get('/catalogue/lining/new?like=bench-lining')).html).toContain('value="60"');
  const same = await program.post('/catalogue/lining', { ...FIELDS, like: 'bench-lining' });
  expect(same.text).toContain('This is the name of the lining it was copied from.');

  const change = { ...FIELDS, liningModulus: '75', from: '1', why: 'pressed again' };
  expect((await program.post('/catalogue/lining/bench-lining', change)).status).toBe(303);
  const told = (await program.get('/catalogue/lining/bench-lining')).text;
  expect(told).toContain('pressed again');
  const use = { from: '2', who: 'AK', why: 'out of stock', unit: 'mm' };
  await program.post('/catalogue/lining/bench-lining/retire', use);
  expect((await getEntry(program.shop.db, 'lining', 'bench-lining'))?.retired).toBe(true);
  await program.post('/catalogue/lining/bench-lining/reinstate', { ...use, from: '3', why: 'in again' });
});

it('goes out as CSV and JSON with its revision, and comes in again unchanged', async () => {
  const csv = await (await fetch(`${program.url}/catalogue/lining.csv`)).text();
  expect(csv).toContain('lining modulus (MPa/mm)');
  expect(csv).toMatch(/^bench-lining,Bench lining,4,no,75,measured on the bench press,2026-05-04/m);
  const answer = await fetch(`${program.url}/api/catalogue/lining`);
  const { entries } = (await answer.json()) as { entries: readonly { id: string; body: object }[] };
  expect(entries.find(({ id }) => id === 'bench-lining')).toMatchObject({
    revision: 4,
    body: { liningModulusMPaPerMm: 75, sourceOn: '2026-05-04' },
  });

  const form = new FormData();
  form.set('file', new Blob([csv.replace(',75,', ',80,')], { type: 'text/csv' }), 'linings.csv');
  const sent = await fetch(`${program.url}/import/lining`, {
    ...{ method: 'POST', body: form, redirect: 'manual', headers: { origin: program.url } },
  });
  const preview = () => program.get(sent.headers.get('location')!);
  await vi.waitUntil(async () => /75 MPa\/mm.*80 MPa\/mm/.test((await preview()).text), { timeout: 60_000 });
  expect((await getEntry(program.shop.db, 'lining', 'bench-lining'))?.revision).toBe(4);
});

it('bends the covers of the types that name it, and a job keeps the revision it was worked out with', async () => {
  const { db } = program.shop;
  const ctx = { who: 'AK', why: 'its lining is known', now: () => new Date('2026-11-24T12:00:00Z') };
  const type = (await getEntry(db, 'family', '1025-3-plain'))!;
  const { id, revision, body } = (await getEntry(db, 'lining', 'bench-lining'))!;
  const cover = demoCovers.find((one) => one.id === '1025-3-plain-faced')!;
  const { family } = demoFamilies.find((one) => one.id === cover.familyId)!;
  const writing = { lengthUnit: 'mm', decimalSign: 'point' } as const;
  const quick = () => program.get(`/cover?${exampleQuery(cover, cover.familyId, family, writing)}`);
  const peaks = (text: string) => /after the cut [\d.]+ ([\d.]+ to [\d.]+)/.exec(text)?.[1];

  const before = (await quick()).text;
  expect(before).not.toContain('Lining: ');
  const lined: Family = { ...type.body, lining: { id, revision, lining: body } };
  await reviseEntry(db, ctx, { kind: 'family', id: type.id, fromRevision: type.revision, body: lined });
  const after = (await quick()).text;
  expect(after).toContain('Lining: Bench lining, the catalog’s revision 4.');
  expect([peaks(before), peaks(after)]).toEqual(['1.27 to 3.63', expect.stringMatching(/\d to \d/)]);
  expect(peaks(after)).not.toBe(peaks(before));

  const sent = { family: type.id, receivedOn: '2026-11-24', who: 'AK' };
  const job = await program.post('/jobs', { ...sent, sentId: 'a1b2c3d4-0000-4000-8000-000000000028' });
  const number = job.location!.replace('/jobs/', '');
  const change = { ...FIELDS, liningModulus: '90', from: String(revision), why: 'pressed again' };
  await program.post('/catalogue/lining/bench-lining', change);
  const kept = (await getJob(db, number))!.sections.received!.body.family;
  expect(kept?.lining).toEqual({ id, revision, lining: body });
  expect((await program.get('/catalogue/lining/bench-lining')).text).toContain('1 cover type: 1025-3');
  const older = await findJobs(db, { familyId: type.id, limit: 9 });
  for (const one of older.jobs.filter((job) => job.number !== number))
    expect((await getJob(db, one.number))!.sections.received!.body.family).not.toHaveProperty('lining');
});
