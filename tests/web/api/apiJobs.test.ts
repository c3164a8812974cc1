import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { addEntry } from '../../../src/records/catalogue.ts';
import { jobCalls } from '../../../src/web/api/jobCalls.ts';
import {
  EXAMPLE_TIME,
  jobExamples,
  playExamples,
  prepareExamples,
} from '../../../src/web/api/jobExamples.ts';
import { alder } from '../../records/samples.ts';
import { type Served, serve } from '../program.ts';

const now = () => new Date(EXAMPLE_TIME);
let program: Served;

interface Told {
  status: number;
  headers: Headers;
  // biome-ignore lint/suspicious/noExplicitAny: answers are looked into field by field.
  body: any;
}

async function send(method: string, path: string, body: unknown = null): Promise<Told> {
  const answer = await fetch(`${program.url}/api${path}`, {
    method,
    ...(body !== null && {
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    }),
  });
  return { status: answer.status, headers: answer.headers, body: await answer.json() };
}

describe('the examples in the interface document', () => {
  beforeAll(async () => {
    program = await serve({ demo: false, now });
    await prepareExamples({ db: program.shop.db, now });
  });
  afterAll(() => program.close());

  test('are each answered over HTTP as the document says, from receipt to signature', async () => {
    const said = await playExamples();
    expect(said.map((one) => one.status)).toContain(409);
    expect(said.find(({ name }) => name === 'findJobs')?.answer).toMatchObject({
      jobs: [{ number: '1001', stage: 'signed' }],
    });
    for (const example of said) {
      const query = new URLSearchParams(example.query).toString();
      const told = await send(
        example.method,
        `${example.path}${query === '' ? '' : `?${query}`}`,
        example.body,
      );
      expect({ name: example.name, status: told.status }).toEqual({
        name: example.name,
        status: example.status,
      });
      expect(told.body).toEqual(example.answer);
    }
  });

  test('save a slip once, refuse one in doubt, and its page opens', async () => {
    const said = await playExamples();
    const of = (name: string) => said.filter((one) => one.name === name);
    expect(of('saveSlip').map(({ status }) => status)).toEqual([201, 200, 409, 422]);
    expect(of('saveSlip').at(-1)?.answer).toMatchObject({
      error: {
        fields: [
          {
            path: 'joint.torqueNm',
            message: '27 N·m? Did you mean 27 lb·ft? If it is right, name joint.torqueNm in confirmed.',
          },
        ],
      },
    });
    expect(of('getSlip').map(({ status }) => status)).toEqual([200, 404]);
    expect(of('getSlip')[0]?.answer).toMatchObject({
      number: 'S-1',
      studId: 'long-3-8-24',
      gapMeasured: true,
      kit: { count: 4, nut: { id: 'hex-3-8-24' } },
    });
    expect(of('findSlips')[0]?.answer).toMatchObject({ slips: [{ number: 'S-1' }], next: null });
    expect((await program.get('/slips/S-1')).text).toContain('Long stud 3/8-24');
    expect((await program.get('/slips/S-1/printed')).text).toContain('4.20 mm, measured');
    const again = await send('POST', '/slips', { who: 'BL', stackId: 'none' });
    expect([again.status, again.body.error.fields[0].path]).toEqual([422, 'stackId']);
    expect((await send('GET', '/slips?after=x')).status).toBe(422);
    expect((await send('GET', '/slips?limit=1&after=S-2')).body.slips).toHaveLength(1);
  });

  test('are there for every call, and one of each is answered', async () => {
    const said = await playExamples();
    const answered = new Set(said.filter((one) => one.status < 300).map((one) => one.name));
    expect([...answered].sort()).toEqual([...new Set(jobCalls.map((call) => call.name))].sort());
    expect(jobExamples.length).toBe(said.length);
  });

  test('are shown in the document', async () => {
    const { body } = await send('GET', '/openapi.json');
    const examples = body.paths['/api/jobs/{number}/looked'].put.responses['409'].content['application/json'];
    const said = await playExamples();
    const late = said.find((one) => one.name === 'changeLooked' && one.status === 409);
    expect(Object.values(examples.examples)).toEqual([{ value: late?.answer }]);
    expect(Object.keys(body.paths['/api/jobs/{number}/looked'])).toEqual(['put', 'post']);
  });
});

describe('two tablets and the JSON interface', () => {
  beforeEach(async () => {
    program = await serve({ demo: false, now });
    await addEntry(program.shop.db, { who: 'BL', now }, { kind: 'family', id: 'alder', body: alder });
    return () => program.close();
  });

  const received = { familyId: 'alder', customerReference: 'shelf', receivedOn: '2026-11-24', note: '' };
  const receive = (id: string | null = null) => send('POST', '/jobs', { id, who: 'MH', received });
  const wall = (id: string, valueMm: number | null, more: object = {}) => ({
    id: `tablet-0000000000-${id}`,
    pass: 'before',
    kind: 'wall',
    angleDeg: 0,
    radiusMm: 110,
    valueMm,
    typed: valueMm === null ? '' : String(valueMm),
    gauge: '',
    ...more,
  });

  test('a cover received twice with one id is one job; without an id it is two', async () => {
    const first = await receive('tablet-one-0000000001');
    expect(first.status).toBe(201);
    expect(first.headers.get('location')).toBe('/api/jobs/1001');
    const again = await receive('tablet-one-0000000001');
    expect(again.status).toBe(200);
    expect(again.body).toEqual(first.body);
    expect((await receive()).body.number).toBe('1002');
    expect((await receive()).body.number).toBe('1003');
  });

  test('ten at once with one id make one job', async () => {
    const all = await Promise.all(Array.from({ length: 10 }, () => receive('tablet-one-0000000002')));
    expect(new Set(all.map((one) => one.body.number))).toEqual(new Set(['1001']));
    expect((await send('GET', '/jobs')).body.jobs).toHaveLength(1);
  });

  test('readings sent again by either tablet are there once, and the answer says which were new', async () => {
    await receive();
    const batch = { who: 'AK', readings: [wall('a', 4.92), wall('b', 4.9, { angleDeg: 360 })] };
    const first = await send('POST', '/jobs/1001/readings', batch);
    expect(first.body).toMatchObject({
      added: batch.readings.map((one) => one.id),
      already: [],
      revision: 2,
    });
    const again = await send('POST', '/jobs/1001/readings', {
      who: 'BL',
      readings: [...batch.readings, wall('c', 4.88, { angleDeg: 90 })],
    });
    expect(again.body).toMatchObject({
      added: [wall('c', 0).id],
      already: batch.readings.map((one) => one.id),
      revision: 3,
    });
    const { job } = (await send('GET', '/jobs/1001')).body;
    expect(job.readings.map((one: { valueMm: number }) => one.valueMm)).toEqual([4.92, 4.9, 4.88]);
    expect(job.readings[1].angleDeg).toBe(0);
  });

  test('of two corrections of one reading the second is told both, and nothing is lost', async () => {
    await receive();
    await send('POST', '/jobs/1001/readings', { who: 'AK', readings: [wall('a', 4.92)] });
    const correct = (id: string, mm: number, who: string) =>
      send('POST', '/jobs/1001/readings', { who, readings: [wall(id, mm, { replaces: wall('a', 0).id })] });
    expect((await correct('one', 4.87, 'AK')).status).toBe(200);
    const late = await correct('two', 4.85, 'BL');
    expect(late.status).toBe(409);
    expect(late.body).toMatchObject({
      error: { code: 'stale', fields: [{ path: 'readings.0.replaces' }] },
      theirs: [{ valueMm: 4.87, who: 'AK' }],
      yours: { valueMm: 4.85 },
    });
    const { job } = (await send('GET', '/jobs/1001')).body;
    expect(job.readings).toHaveLength(1);
    const { revisions } = (await send('GET', '/jobs/1001/history')).body;
    expect(revisions[2]).toMatchObject({
      summary: '1 reading corrected',
      changes: [{ label: 'Wall behind stud 1', before: '4.92 mm', after: '4.87 mm' }],
    });
  });

  test('a section changed on both tablets: the second is sent both versions, and the history only what changed', async () => {
    await receive();
    const looked = { crackTest: 'none-found', crackMethod: 'dye', crackNote: '', items: [] };
    const look = (who: string, crackMethod: string) =>
      send('PUT', '/jobs/1001/looked', { fromRevision: 1, who, looked: { ...looked, crackMethod } });
    expect((await look('AK', 'dye')).body).toMatchObject({ revision: 2, stage: 'to-measure' });
    const late = await look('BL', 'by-eye');
    expect(late.status).toBe(409);
    expect(late.body).toMatchObject({
      error: { code: 'stale', fields: [] },
      theirs: { revision: 2, who: 'AK', body: { crackMethod: 'dye' } },
      yours: { crackMethod: 'by-eye' },
      currentRevision: 2,
      since: [{ revision: 2, what: 'looked' }],
    });
    const { revisions } = (await send('GET', '/jobs/1001/history')).body;
    expect(revisions).toHaveLength(2);
    expect(revisions[1].changes).toEqual([
      { label: 'Crack test', before: 'not done yet', after: 'no cracks found' },
      { label: 'Crack test method', before: 'not given', after: 'dye penetrant' },
    ]);
  });

  test('a slipped decimal is put down as doubtful until it is confirmed by name, and the record says so', async () => {
    await receive();
    const slip = wall('a', 0.49, { angleDeg: 90 });
    // That a script calls nothing doubtful does not say that anybody looked.
    const unasked = wall('b', 0.49, { angleDeg: 180, doubtful: false });
    const looked = wall('c', 0.49, { angleDeg: 270 });
    const plain = wall('d', 4.9, { angleDeg: 0 });
    const batch = { who: 'AK', readings: [slip, unasked, looked, plain], confirmed: ['readings.2'] };
    const { body } = await send('POST', '/jobs/1001/readings', batch);
    expect(body.doubts).toEqual(
      [0, 1].map((i) => ({
        path: `readings.${i}.valueMm`,
        valueMm: 0.49,
        probablyMm: 4.9,
        question: '0.49 mm? Did you mean 4.9 mm?',
      })),
    );
    const { job } = (await send('GET', '/jobs/1001')).body;
    expect(
      job.readings.map((one: { doubtful: boolean; confirmed: boolean }) => [one.doubtful, one.confirmed]),
    ).toEqual([
      [true, false],
      [true, false],
      [false, true],
      [false, false],
    ]);
    const again = await send('POST', '/jobs/1001/readings', { ...batch, confirmed: [] });
    expect([again.body.already.length, again.body.doubts]).toEqual([4, []]);
  });

  test('pages of a list follow one another without a gap or a repeat', async () => {
    for (let i = 0; i < 7; i++) await receive();
    const numbers: string[] = [];
    let after: string | null = '';
    for (let page = 0; after !== null && page < 9; page++) {
      const query: string = after === '' ? '' : `&after=${after}`;
      const { body } = await send('GET', `/jobs?limit=3${query}`);
      numbers.push(...body.jobs.map((job: { number: string }) => job.number));
      after = body.next;
    }
    expect(numbers).toEqual(['1007', '1006', '1005', '1004', '1003', '1002', '1001']);
  });

  test.each<[string, string, string, unknown, number, string]>([
    ['a state nobody knows', 'GET', '/jobs?stage=lost', null, 422, 'stage'],
    ['a day that is none', 'GET', '/jobs?from=yesterday', null, 422, 'from'],
    ['a page of none', 'GET', '/jobs?limit=0', null, 422, 'limit'],
    ['a place that is none', 'GET', '/jobs?after=here', null, 422, 'after'],
    ['a job that is not there', 'GET', '/jobs/77', null, 404, 'number'],
    ['a revision that is not there', 'GET', '/jobs/1001?revision=9', null, 404, 'revision'],
    ['words for a revision', 'GET', '/jobs/1001?revision=last', null, 404, 'revision'],
    ['nobody', 'PUT', '/jobs/1001/plan', { fromRevision: 1, plan: {} }, 422, 'who'],
    [
      'a decision on nothing',
      'PUT',
      '/jobs/1001/decision',
      { fromRevision: 1, who: 'BL', decision: { decision: 'face', criteriaRevision: 0 } },
      422,
      '',
    ],
    ['no readings', 'POST', '/jobs/1001/readings', { who: 'AK', readings: [] }, 422, 'readings'],
  ])('refuse with a sentence what cannot be used: %s', async (_name, method, path, body, status, field) => {
    await receive();
    const told = await send(method, path, body);
    expect(told.status).toBe(status);
    expect(told.body.error.fields.map((one: { path: string }) => one.path)).toContain(field);
    expect(told.body.error.message).toMatch(/^["A-Z0-9].*\.$/s);
  });

  test('a method that does nothing: 405, saying which do', async () => {
    const told = await send('DELETE', '/jobs');
    expect(told.status).toBe(405);
    expect(told.headers.get('allow')).toBe('GET, POST');
    expect((await send('GET', '/jobs/1001/looked')).headers.get('allow')).toBe('PUT, POST');
  });
});

describe('a pass by JSON', () => {
  beforeEach(async () => {
    program = await serve({ demo: true, now });
    return () => program.close();
  });

  test('far deeper than what is left of the decided cut is refused until confirmed names it', async () => {
    const { jobs } = (await send('GET', '/jobs?stage=to-verify')).body;
    const { number } = jobs[0];
    const { job } = (await send('GET', `/jobs/${number}`)).body;
    const made = job.sections.cuts.body.cuts;
    const depthMm = 0.3;
    const cut = (more: object) => ({ note: '', look: null, truedAgain: false, ...more });
    const sent = {
      fromRevision: job.revision,
      who: 'AK',
      cuts: { cuts: [...made, cut({ depthMm, typed: String(depthMm) })] },
    };
    const path = `cuts.cuts.${made.length}.depthMm`;
    const asked = await send('PUT', `/jobs/${number}/cuts`, sent);
    expect([asked.status, asked.body.error.code, asked.body.error.fields[0].path]).toEqual([
      422,
      'wrong-values',
      path,
    ]);
    expect(asked.body.error.message).toMatch(/The whole decided cut is made already/);
    expect((await send('GET', `/jobs/${number}`)).body.job.revision).toBe(job.revision);
    const sure = await send('PUT', `/jobs/${number}/cuts`, { ...sent, confirmed: [path] });
    expect(sure.status).toBe(200);
  });
});

describe('a figure of a job by JSON that looks like a slip', () => {
  beforeEach(async () => {
    program = await serve({ demo: true, now });
    return () => program.close();
  });

  const jobWith = async (number: string) => (await send('GET', `/jobs/${number}`)).body.job;
  const sections = {
    setup: {
      path: 'setup.gaugeFigures.resolutionMm',
      part: { gauge: 'M2', wallReadThrough: 'bare', stations: [], gaugeFigures: { resolutionMm: 0.2 } },
    },
    plan: { path: 'plan.plannedCutMm', part: { plannedCutMm: 3.1, typed: '3.1' } },
  };

  test.each(Object.entries(sections))(
    'of its %s is refused until confirmed names it, and not asked about again',
    async (section, { path, part }) => {
      const job = await jobWith('1005');
      const sent = { fromRevision: job.revision, who: 'AK', [section]: part };
      const asked = await send('PUT', `/jobs/1005/${section}`, sent);
      expect([asked.status, asked.body.error.code, asked.body.error.fields[0].path]).toEqual([
        422,
        'wrong-values',
        path,
      ]);
      expect(asked.body.error.message).toContain(`If it is right, name ${path} in confirmed.`);
      expect((await jobWith('1005')).revision).toBe(job.revision);
      const sure = await send('PUT', `/jobs/1005/${section}`, { ...sent, confirmed: [path] });
      expect(sure.status).toBe(200);
      const again = await send('PUT', `/jobs/1005/${section}`, { ...sent, fromRevision: sure.body.revision });
      expect(again.status).toBe(200);
    },
  );
});
