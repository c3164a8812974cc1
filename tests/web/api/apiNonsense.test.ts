import { beforeEach, describe, expect, test } from 'vitest';
import { addEntry } from '../../../src/records/catalogue.ts';
import { alder } from '../../records/samples.ts';
import { type Served, serve } from '../program.ts';

const now = () => new Date('2026-11-24T14:05:00.000Z');
let program: Served;

interface Told {
  readonly status: number;
  readonly body: {
    readonly number?: string;
    readonly revision?: number;
    readonly error?: { message: string; fields: { path: string; message: string }[] };
  };
}

async function send(path: string, body: object): Promise<Told> {
  const answer = await fetch(`${program.url}/api${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  return { status: answer.status, body: (await answer.json()) as Told['body'] };
}

const ID = 'tablet-one-0000000001';
const received = { familyId: 'alder', customerReference: 'shelf', receivedOn: '2026-11-24', note: '' };
const sent = { id: ID, who: 'MH', received };
const reading = (more: object = {}) => ({
  id: 'tablet-0000000000-a',
  pass: 'before',
  kind: 'wall',
  angleDeg: 0,
  radiusMm: 110,
  valueMm: 4.9,
  typed: '4.9',
  gauge: '',
  ...more,
});
const addReading = (more: object = {}) =>
  send('/jobs/1001/readings', { who: 'AK', readings: [reading(more)] });
const cut = (fromRevision: number, ...depths: number[]) =>
  send('/jobs/1001/cuts', {
    fromRevision,
    who: 'AK',
    cuts: { cuts: depths.map((depthMm) => ({ depthMm, typed: '', note: '' })) },
  });
const plan = (plannedCutMm: number) =>
  send('/jobs/1001/plan', { fromRevision: 1, who: 'AK', plan: { plannedCutMm, typed: '' } });
const faultsOf = ({ status, body }: Told) => [status, body.error?.fields.map(({ path }) => path)];
const revision = async () =>
  ((await (await fetch(`${program.url}/api/jobs/1001`)).json()) as { job: { revision: number } }).job
    .revision;

beforeEach(async () => {
  program = await serve({ demo: false, now });
  await addEntry(program.shop.db, { who: 'BL', now }, { kind: 'family', id: 'alder', body: alder });
  expect((await send('/jobs', sent)).status).toBe(201);
  return () => program.close();
});

describe('a cover sent again under the same id', () => {
  test('is the job that was made, once, while it says the same', async () => {
    const again = await send('/jobs', { ...sent, number: '1001' });
    expect([again.status, again.body.number]).toEqual([200, '1001']);
  });

  test.each<[string, object]>([
    ['another reference', { received: { ...received, customerReference: 'counter 3' } }],
    ['another day', { received: { ...received, receivedOn: '2026-11-23' } }],
    ['another note', { received: { ...received, note: 'bent pad' } }],
    ['another number', { number: 'J-7' }],
    ['other initials', { who: 'AK' }],
  ])('with %s is refused, and nothing is made or changed', async (_, change) => {
    const told = await send('/jobs', { ...sent, ...change });
    expect(faultsOf(told)).toEqual([409, ['id']]);
    expect(told.body.error?.message).toMatch(/^This was sent before and made job 1001, but now /);
    expect(await revision()).toBe(1);
    expect((await fetch(`${program.url}/api/jobs/J-7`)).status).toBe(404);
  });

  test('with another reference by a form is answered 409 with a sentence', async () => {
    const form = { family: 'alder', receivedOn: '2026-11-24', customer: 'shelf', who: 'MH', sentId: ID };
    expect((await program.post('/jobs', form)).location).toBe('/jobs/1001');
    const told = await program.post('/jobs', { ...form, customer: 'counter 3' });
    expect([told.status, told.text]).toEqual([
      409,
      expect.stringContaining('the customer reference is different'),
    ]);
  });
});

describe('a cut deeper than the wall', () => {
  test('is refused before anything is measured, by the wall its family has', async () => {
    expect(faultsOf(await cut(1, 9999))).toEqual([422, ['cuts.cuts.0.depthMm']]);
    expect(faultsOf(await plan(9999))).toEqual([422, ['plan.plannedCutMm']]);
    expect(await revision()).toBe(1);
  });

  test('is refused by the thickest wall that was measured, pass by pass and all together', async () => {
    await addReading();
    expect(faultsOf(await cut(2, 0.2, 4.9))).toEqual([422, ['cuts.cuts.1.depthMm']]);
    expect(faultsOf(await cut(2, 2.5, 2.5))).toEqual([422, ['cuts.cuts.1.depthMm']]);
    expect((await cut(2, 0.2, 0.1)).status).toBe(200);
  });

  test('is refused in the form too, beside its box, with what was typed', async () => {
    const page = await program.post('/jobs/1001/cuts', { from: '1', who: 'AK', depth: '9999' });
    expect(page.status).toBe(422);
    expect(page.text).toContain('Check the depth and its unit.');
    expect(page.html).toMatch(/name="depth"[^>]*aria-invalid="true"/);
  });
});

test('a reading after the cut is refused while no cut is on record, and taken once there is one', async () => {
  const told = await addReading({ pass: 'after' });
  expect(faultsOf(told)).toEqual([422, ['readings.0.pass']]);
  expect(told.body.error?.message).toMatch(/^Job 1001 has no cut on record/);
  await cut(1, 0.2);
  expect((await addReading({ pass: 'after' })).status).toBe(200);
});

test.each(['new', 'NEW', '.', '..'])(
  'the job number %s is refused, because it is no address',
  async (number) => {
    const told = await send('/jobs', { who: 'MH', number, received });
    expect(faultsOf(told)).toEqual([422, ['number']]);
    const page = await program.post('/jobs', {
      family: 'alder',
      receivedOn: '2026-11-24',
      number,
      who: 'MH',
    });
    expect([page.status, page.text]).toEqual([422, expect.stringContaining('cannot be a job number')]);
  },
);

test.each(['/jobs', '/jobs.csv', '/api/jobs'])('%s refuses 1,100 words with a sentence', async (path) => {
  const text = Array.from({ length: 1100 }, () => 'a').join('+');
  const answer = await fetch(`${program.url}${path}?text=${text}`);
  expect(answer.status).toBe(422);
  expect(await answer.text()).toContain('The search has 1100 words; at most 40 are allowed.');
});
