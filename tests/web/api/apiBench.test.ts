import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { issueToken } from '../../../src/records/people/tokens.ts';
import { prepareExamples } from '../../../src/web/api/jobExamples.ts';
import { type Lan, openLan } from '../lan.ts';

/** The shelf, studies of gauges and inspection lists for scripts, where people sign in. */
let lan: Lan;
const bearer: Record<string, string> = {};
beforeAll(async () => {
  lan = await openLan({ demo: false });
  const ctx = { who: 'AK', why: 'to begin with', now: () => lan.now };
  await prepareExamples({ db: lan.shop.db, now: ctx.now });
  for (const role of ['reader', 'recorder'] as const) {
    const personId = lan.people[role].id;
    bearer[role] = await issueToken(lan.shop.db, ctx, { name: `script of ${role}`, personId, role });
  }
  const received = { familyId: 'alder-11-plain', receivedOn: '2026-11-24' };
  expect((await ask('recorder', 'POST', '/jobs', { who: 'XX', received })).status).toBe(201);
  const readings = [0, 45, 90, 135, 180, 225, 270, 315].map((angleDeg) => ({
    pass: 'before',
    kind: 'wall',
    angleDeg,
    radiusMm: 110,
    valueMm: 4.9,
    typed: '4.9 mm',
    gauge: 'micrometer M2',
  }));
  expect((await ask('recorder', 'POST', '/jobs/1001/readings', { who: 'XX', readings })).status).toBe(200);
});
afterAll(() => lan.close());

async function ask(role: 'reader' | 'recorder' | null, method: string, path: string, json?: object) {
  const headers: Record<string, string> = role === null ? {} : { authorization: `Bearer ${bearer[role]}` };
  const reply = await lan.ask(`/api${path}`, { method, headers, ...(json && { json }) });
  return { status: reply.status, body: reply.text === '' ? null : JSON.parse(reply.text) };
}
const fields = (reply: { body: { error: { fields: { path: string; message: string }[] } } }) =>
  reply.body.error.fields;

describe('who may', () => {
  it('read and write is by role; nobody without a token', async () => {
    const put = { who: 'XX', what: 'put', from: 0, lies: 'rack B' };
    for (const path of [
      '/shelf',
      '/studies?gauge=micrometer-m2',
      '/studies/1',
      '/inspection',
      '/jobs/1001/inspected',
    ]) {
      expect([path, (await ask(null, 'GET', path)).status]).toEqual([path, 401]);
      expect([path, (await ask('reader', 'GET', path)).status]).toEqual([path, 200]);
    }
    expect((await ask('reader', 'PUT', '/shelf/1001', put)).status).toBe(403);
    expect(
      (await ask('reader', 'POST', '/studies/1/readings', { who: 'XX', place: 0, valueMm: 4.9 })).status,
    ).toBe(403);
    expect((await ask('reader', 'PUT', '/jobs/1001/inspected', {})).status).toBe(403);
  });
});

describe('the shelf', () => {
  it('takes a cover, keeps it for a job, and signs as whoever the token belongs to', async () => {
    const put = { who: 'XX', what: 'put', from: 0, lies: 'rack B' };
    const made = await ask('recorder', 'PUT', '/shelf/1001', put);
    expect(made.status).toBe(200);
    expect(made.body).toMatchObject({
      jobNumber: '1001',
      place: 1,
      onShelf: true,
      cover: { lies: 'rack B' },
    });
    expect(made.body.changes[0].who).toBe(lan.people.recorder.initials);
    // The same once more changes nothing.
    expect((await ask('recorder', 'PUT', '/shelf/1001', put)).body.place).toBe(1);
    const stale = await ask('recorder', 'PUT', '/shelf/1001', { ...put, lies: 'rack C' });
    expect(stale.status).toBe(409);
    expect(stale.body).toMatchObject({ error: { code: 'stale' }, theirs: { lies: 'rack B', place: 1 } });
    const nobody = await ask('recorder', 'PUT', '/shelf/1001', {
      ...put,
      what: 'reserved',
      from: 1,
      forJob: '9999',
    });
    expect(nobody.status).toBe(422);
    const list = await ask('reader', 'GET', '/shelf?family=alder-11-plain&limit=1');
    expect(list.body).toMatchObject({ covers: [{ jobNumber: '1001', lies: 'rack B' }], next: null });
    const off = await ask('recorder', 'PUT', '/shelf/1001', { ...put, what: 'off', from: 1, why: 'sold' });
    expect(off.body).toMatchObject({ onShelf: false, cover: null, place: 2 });
    expect((await ask('reader', 'GET', '/shelf')).body.covers).toEqual([]);
  });

  it('refuses what it cannot read, by name', async () => {
    const wrong: readonly [query: string, path: string][] = [
      ['family=nonesuch', 'family'],
      ['stack=nonesuch', 'stack'],
      ['leastWallMm=4,3', 'leastWallMm'],
      ['leastWallMm=-1', 'leastWallMm'],
      ['sure=95', 'sure'],
      ['crankPilotMm=1e9', 'crankPilotMm'],
      ['limit=0', 'limit'],
      ['limit=1e99', 'limit'],
      ['after=nowhere', 'after'],
    ];
    for (const [query, path] of wrong) {
      const reply = await ask('reader', 'GET', `/shelf?${query}`);
      expect([query, reply.status]).toEqual([query, 422]);
      expect(fields(reply).map((one) => one.path)).toEqual([path]);
    }
    expect((await ask('reader', 'GET', '/shelf/9999')).status).toBe(404);
    for (const body of [
      {},
      { who: 'XX', what: 'burn', from: 0 },
      { who: 'XX', what: 'put', from: -1 },
      { who: 'XX', what: 'put', from: 0, lies: 'x'.repeat(81) },
      { who: 'XX', what: 'put', from: 0, lies: 'a\u0000b' },
      { who: 'XX', what: 'put', from: 2, lies: '' },
      { who: 'XX', what: 'put', from: 2, lies: 'x', extra: 1 },
    ])
      expect((await ask('recorder', 'PUT', '/shelf/1001', body)).status).toBe(422);
  });
});

describe('a study of a gauge', () => {
  it('is read place by place, nobody seeing a reading before the end; then it says what it found', async () => {
    const first = await ask('reader', 'GET', '/studies/1');
    expect(first.body).toMatchObject({ asked: 8, taken: 0, readings: null, answer: null });
    expect(first.body.next).toMatchObject({ place: 0, cover: 2, person: 'BL', round: 1 });
    const walls = [4.921, 4.95, 4.952, 4.92, 4.951, 4.922, 4.92, 4.949];
    const id = 'reading-0-of-the-study-1';
    for (const [place, valueMm] of walls.entries()) {
      const body = { who: 'XX', place, valueMm, ...(place === 0 && { id }) };
      const reply = await ask('recorder', 'POST', '/studies/1/readings', body);
      expect([place, reply.status]).toEqual([place, 200]);
      expect(reply.body.taken).toBe(place + 1);
      if (place < 7) expect(JSON.stringify(reply.body)).not.toContain(String(valueMm));
    }
    const again = await ask('recorder', 'POST', '/studies/1/readings', {
      who: 'XX',
      place: 0,
      valueMm: 4.921,
      id,
    });
    expect(again.status).toBe(200);
    const done = (await ask('reader', 'GET', '/studies/1')).body;
    expect(done).toMatchObject({ taken: 8, next: null, answer: { rounds: 2, leftOver: 0 } });
    expect(done.readings).toHaveLength(8);
    expect(done.answer.variance.repeatability.value).toBeGreaterThan(0);
    const late = await ask('recorder', 'POST', '/studies/1/readings', { who: 'XX', place: 3, valueMm: 4.9 });
    expect(late.status).toBe(409);
  });

  it('asks about a slip, and refuses what it cannot read', async () => {
    const { startStudy } = await import('../../../src/records/gauges/studies.ts');
    const plan = { covers: 1, stations: 2, people: ['BL', 'AK'], rounds: 1 };
    const order = [0, 1].flatMap((person) => [0, 1].map((station) => ({ station, person, round: 0 })));
    const ctx = { who: 'AK', now: () => lan.now };
    const study = { sentId: 'study-of-slips-01', gaugeId: 'micrometer-m2', day: '2026-11-24', plan, order };
    const number = await startStudy(lan.shop.db, ctx, study);
    const path = `/studies/${number}/readings`;
    const slip = await ask('recorder', 'POST', path, { who: 'XX', place: 0, valueMm: 49.2 });
    expect(slip.status).toBe(422);
    expect(fields(slip)[0]).toMatchObject({
      path: 'valueMm',
      message: expect.stringContaining('name valueMm in confirmed'),
    });
    const sure = { who: 'XX', place: 0, valueMm: 49.2, confirmed: ['valueMm'] };
    expect((await ask('recorder', 'POST', path, sure)).status).toBe(200);
    for (const body of [
      { who: 'XX', place: 1, valueMm: 0 },
      { who: 'XX', place: 1, valueMm: '4.9' },
      { who: 'XX', place: 99, valueMm: 49 },
      { who: 'XX', place: 1 },
    ])
      expect((await ask('recorder', 'POST', path, body)).status).toBe(422);
    for (const none of ['99', 'x', '%00', '1e3'])
      expect((await ask('reader', 'GET', `/studies/${none}`)).status).toBe(404);
    expect((await ask('reader', 'GET', '/studies')).status).toBe(422);
    expect((await ask('reader', 'GET', '/studies?gauge=micrometer-m2')).body.studies).toHaveLength(2);
  });
});

describe('inspection lists', () => {
  const items = [
    { listId: 'hard-parts', itemId: 'hub-free-of-grooves', ok: true },
    { listId: 'hard-parts', itemId: 'end-play', value: 0.25, note: 'dial' },
  ];
  it('are told with their limits; a job answers them item by item, and what is not sent stays', async () => {
    expect((await ask('reader', 'GET', '/inspection')).body.lists).toMatchObject([
      { id: 'hard-parts', revision: 1, list: { items: [{}, { least: 0.1, most: 0.4 }] } },
    ]);
    expect((await ask('reader', 'GET', '/jobs/1001/inspected')).body).toMatchObject({ done: 0, of: 2 });
    const { revision } = (await getJob(lan.shop.db, '1001'))!;
    const sent = await ask('recorder', 'PUT', '/jobs/1001/inspected', {
      fromRevision: revision,
      who: 'XX',
      items,
    });
    expect(sent.status).toBe(200);
    const late = await ask('recorder', 'PUT', '/jobs/1001/inspected', {
      fromRevision: revision,
      who: 'XX',
      items: items.slice(1),
    });
    expect(late.status).toBe(409);
    expect(late.body).toMatchObject({ of: 'inspected', currentRevision: revision + 1 });
    const other = { ...items[1], value: 0.5 };
    const put = { fromRevision: revision + 1, who: 'XX', why: 'read again', items: [other] };
    expect((await ask('recorder', 'PUT', '/jobs/1001/inspected', put)).status).toBe(200);
    const told = (await ask('reader', 'GET', '/jobs/1001/inspected')).body;
    expect(told.items.map((one: { ok: boolean }) => one.ok)).toEqual([true, false]);
    expect(told.items[1].answer).toMatchObject({ value: 0.5, who: lan.people.recorder.initials });
  });

  it('ask about a slip, and refuse what is no answer of theirs, by name', async () => {
    const { revision } = (await getJob(lan.shop.db, '1001'))!;
    const send = async (item: object, confirmed: string[] = []) =>
      ask('recorder', 'PUT', '/jobs/1001/inspected', {
        fromRevision: revision,
        who: 'XX',
        why: 'x',
        items: [item],
        confirmed,
      });
    const wrong: readonly [item: object, path: string][] = [
      [{ ...items[1], value: 2.5 }, 'items.0.value'],
      [{ ...items[1], value: null }, 'items.0.value'],
      [{ ...items[1], ok: true }, 'items.0.ok'],
      [{ ...items[0], ok: null }, 'items.0.ok'],
      [{ ...items[0], value: 1 }, 'items.0.value'],
      [{ ...items[0], itemId: 'nonesuch' }, 'items.0.itemId'],
      [{ ...items[0], note: 'a\u0000b' }, 'items.0.note'],
    ];
    for (const [item, path] of wrong) {
      const reply = await send(item);
      expect([path, reply.status]).toEqual([path, 422]);
      expect(fields(reply).map((one) => one.path)).toContain(path);
    }
    expect((await getJob(lan.shop.db, '1001'))!.revision).toBe(revision);
    expect((await send({ ...items[1], value: 2.5 }, ['items.0.value'])).status).toBe(200);
  });
});
