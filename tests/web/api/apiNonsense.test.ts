import { beforeEach, describe, expect, test } from 'vitest';
import { addEntry } from '../../../src/records/catalogue.ts';
import { apiExamples } from '../../../src/web/api/examples.ts';
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
  expect(told.body.error?.message).toMatch(/^Job 1001 has no cut recorded/);
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
    expect([page.status, page.text]).toEqual([422, expect.stringContaining('can’t be a job number')]);
  },
);

test.each(['/jobs', '/jobs.csv', '/api/jobs'])('%s refuses 1,100 words with a sentence', async (path) => {
  const text = Array.from({ length: 1100 }, () => 'a').join('+');
  const answer = await fetch(`${program.url}${path}?text=${text}`);
  expect(answer.status).toBe(422);
  expect(await answer.text()).toContain('The search has 1100 words; at most 40 are allowed.');
});

test('a text that does not read to the value beside it is refused, of a reading, a pass and a planned cut', async () => {
  expect(faultsOf(await addReading({ typed: 'banana' }))).toEqual([422, ['readings.0.typed']]);
  const edit = { fromRevision: 1, who: 'AK' };
  const cuts = { cuts: [{ depthMm: 0.2, typed: '0.3', note: '' }] };
  expect(faultsOf(await send('/jobs/1001/cuts', { ...edit, cuts }))).toEqual([422, ['cuts.cuts.0.typed']]);
  const planned = { plannedCutMm: 0.2, typed: 'banana' };
  expect(faultsOf(await send('/jobs/1001/plan', { ...edit, plan: planned }))).toEqual([422, ['plan.typed']]);
  expect(await revision()).toBe(1);
});

test('a place closer than 1 mm to the axis is refused, of a reading, a station and a heat mark', async () => {
  expect(faultsOf(await addReading({ radiusMm: 1e-12 }))).toEqual([422, ['readings.0.radiusMm']]);
  const { request } = apiExamples['/cover/check']!;
  const [station, ...others] = request.stations as object[];
  const stations = [{ ...station, radiusMm: 1e-12 }, ...others];
  expect(faultsOf(await send('/cover/check', { ...request, stations }))).toEqual([
    422,
    ['stations.0.radiusMm'],
  ]);
  const marks = [{ angleDeg: 10, radiusMm: 1e-12, depthMm: 0.1 }];
  expect(faultsOf(await send('/cover/check', { ...request, marks }))).toEqual([422, ['marks.0.radiusMm']]);
});

test('a planned cut as deep as the thickest wall is refused where a cover is only checked', async () => {
  const { request } = apiExamples['/cover/check']!;
  expect(faultsOf(await send('/cover/check', { ...request, plannedCutMm: 9999 }))).toEqual([
    422,
    ['plannedCutMm'],
  ]);
});

// Found by random sizes: each gave null for a number.
test.each<[string, object]>([
  ['a lining of 1e-312 MPa/mm', { liningModulusMPaPerMm: 1.2e-312, piston: 'rigid' }],
  ['a lining of 2e-310 MPa/mm under a piston that conforms', { liningModulusMPaPerMm: 2.4e-310 }],
  ['a wall of 1e-97 mm beside a track of 48 mm', { wallMm: 1.4e-97, trackWallMm: 47.8, piston: 'rigid' }],
])('the bending of a cover with %s is refused with a sentence', async (_, change) => {
  const { request } = apiExamples['/cover/stiffness']!;
  const told = await send('/cover/stiffness', { ...request, peakLimit: null, ...change });
  expect(told.status).toBe(422);
  expect(told.body.error?.message).toMatch(/^The .* cannot be worked out: these sizes are too far apart\./);
});

describe('a day of receipt that is later than tomorrow', () => {
  const late = { ...received, receivedOn: '9999-11-24' };

  test('is asked about, and taken once it is confirmed', async () => {
    const told = await send('/jobs', { who: 'MH', received: late });
    expect(faultsOf(told)).toEqual([422, ['received.receivedOn']]);
    expect(told.body.error?.message).toBe(
      'The day received is Nov 24, 9999, and today is Nov 24, 2026. Check the year, or confirm it.',
    );
    const confirmed = ['received.receivedOn'];
    expect((await send('/jobs', { who: 'MH', received: late, confirmed })).status).toBe(201);
  });

  test('is asked about when a job is changed to it, and not again while it stands', async () => {
    const edit = { fromRevision: 1, who: 'MH', received: late };
    expect(faultsOf(await send('/jobs/1001/received', edit))).toEqual([422, ['received.receivedOn']]);
    const confirmed = ['received.receivedOn'];
    expect((await send('/jobs/1001/received', { ...edit, confirmed })).status).toBe(200);
    const again = { fromRevision: 2, who: 'MH', received: { ...late, note: 'bent pad' } };
    expect((await send('/jobs/1001/received', again)).status).toBe(200);
  });

  test('is asked about in the form, with a box that confirms it', async () => {
    const form = { family: 'alder', receivedOn: '9999-11-24', who: 'MH' };
    const asked = await program.post('/jobs', form);
    expect([asked.status, asked.text]).toEqual([
      422,
      expect.stringContaining('Received on: Nov 24, 9999, as typed'),
    ]);
    expect(asked.html).toMatch(/<input type="checkbox"[^>]*name="ok.receivedOn" value="9999-11-24"/);
    expect((await program.post('/jobs', { ...form, 'ok.receivedOn': '9999-11-25' })).status).toBe(422);
    expect((await program.post('/jobs', { ...form, 'ok.receivedOn': '9999-11-24' })).status).toBe(303);
  });

  test('may be tomorrow, because clocks differ', async () => {
    const tomorrow = { ...received, receivedOn: '2026-11-25' };
    expect((await send('/jobs', { who: 'MH', received: tomorrow })).status).toBe(201);
    const after = { ...received, receivedOn: '2026-11-26' };
    expect((await send('/jobs', { who: 'MH', received: after })).status).toBe(422);
  });
});

describe('a form that receives a cover is read as JSON is', () => {
  test.each<[string, Record<string, string>, string, string]>([
    [
      'a reference of 200,000 characters',
      { customer: 'x'.repeat(200_000) },
      'customer',
      'at most 80 are kept',
    ],
    ['a control character in the reference', { customer: 'a\u0007b' }, 'customer', 'has a control character'],
    ['a control character in the note', { note: 'a\u0007b' }, 'note', 'has a control character'],
    ['a day that is none', { receivedOn: '2026-02-30' }, 'receivedOn', 'must be a day of the calendar'],
  ])('%s is refused beside its box, new and changed', async (_, change, field, sentence) => {
    const form = { family: 'alder', receivedOn: '2026-11-24', who: 'MH', ...change };
    for (const [path, more] of [
      ['/jobs', {}],
      ['/jobs/1001/received', { from: '1' }],
    ] as const) {
      const page = await program.post(path, { ...form, ...more });
      expect([path, page.status]).toEqual([path, 422]);
      expect(page.text).toContain(sentence);
      expect(page.html).toMatch(new RegExp(`name="${field}"[^>]*aria-invalid="true"`));
    }
    expect(await revision()).toBe(1);
    expect((await fetch(`${program.url}/api/jobs/1002`)).status).toBe(404);
  });

  test('a reference of 200,000 characters is refused on the quick page too, and not cut short', async () => {
    const typed = { family: 'alder', 'a.0': '0', 'r.0': '110', 'w.0': '4.90', initials: 'MH' };
    const page = await program.post('/cover/keep', { ...typed, customer: 'x'.repeat(200_000) });
    expect([page.status, page.text]).toEqual([422, expect.stringContaining('at most 80 are kept')]);
    expect((await program.post('/cover/keep', typed)).status).toBe(303);
  });
});
