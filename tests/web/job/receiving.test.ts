import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { formsIn } from '../boxes.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeEach(async () => {
  program = await serve({ demo: true });
});
afterEach(() => program.close());

/** What stands in the boxes of one form of a page. */
function standing(html: string, action: string): Record<string, string> {
  const form = formsIn(html).find((one) => one.action === action);
  return Object.fromEntries(form!.boxes.map(({ name, value }) => [name, value]));
}

const COVER_TYPE = {
  name: '1099-3 trial',
  studCount: '3',
  circle: '286',
  trackInner: '214',
  trackOuter: '264',
  nominal: '5',
  who: 'AK',
  unit: 'mm',
  from: '0',
};

/** Adds a cover type from a page of the job, and answers with the page it leads back to. */
async function addType(sent: { location: string | null }) {
  const form = await program.get(sent.location!);
  const back = standing(form.html, '/catalogue/family').back!;
  const added = await program.post('/catalogue/family', { ...COVER_TYPE, back });
  return { added, page: await program.get(added.location!) };
}

describe('a cover type that is missing when a cover is received', () => {
  test('is added on the way, and what was typed stands there with the new type chosen', async () => {
    const typed = { number: '7001', customer: 'Demo customer 3', note: 'rim bent', who: 'AK' };
    const { added, page } = await addType(await program.post('/jobs', { ...typed, addType: '1' }));
    expect(added.status).toBe(303);
    expect(standing(page.html, '/jobs')).toMatchObject({ ...typed, family: '1099-3-trial' });
  });

  test('on the page of a job too, from the revision that was seen', async () => {
    const job = (await getJob(program.shop.db, '1017'))!;
    const typed = { customer: 'Demo customer 30', who: 'AK', from: String(job.revision) };
    const { page } = await addType(await program.post('/jobs/1017/received', { ...typed, addType: '1' }));
    expect(standing(page.html, '/jobs/1017/received')).toMatchObject({ ...typed, family: '1099-3-trial' });
    expect((await getJob(program.shop.db, '1017'))!.revision).toBe(job.revision);
  });
});

describe('initials', () => {
  const ask = async (cookie: string) => {
    const answer = await fetch(`${program.url}/jobs/1017`, { headers: { cookie } });
    return { html: await answer.text(), cookie: answer.headers.get('set-cookie') };
  };

  test('are asked once a sitting: half an hour without a page ends it', async () => {
    const none = await ask('');
    expect(none.html).not.toContain('Signing as');
    expect(none.cookie).toBeNull();
    const known = await ask('initials=AK');
    expect(known.html).toContain('Signing as <b>AK</b>');
    expect(known.cookie).toMatch(/^initials=AK; Max-Age=1800/);
  });

  test.each([
    ['/jobs', { receivedOn: 'yesterday' }],
    ['/jobs/1017/received', { from: '1', receivedOn: 'yesterday' }],
    ['/jobs/1017/readings', { pass: 'before', token: 'token-before-1', 'at.0': '0/110', 'w.0': 'five' }],
    ['/catalogue/family', { name: '' }],
    ['/criteria', { from: '0', minimumWall: 'five' }],
    ['/cover/keep', { family: '1125-4-plain', 'w.0': 'five' }],
  ])('are refused by %s in the first round, beside the box', async (path, fields) => {
    const refused = await program.post(path, fields);
    expect(refused.status).toBe(422);
    const said = refused.html.match(/-(?:who|initials)-error"/g);
    expect(said).not.toBeNull();
    expect(refused.text).toContain('Enter your initials, 1 to 8 characters.');
  });
});

test('a gauge of the catalog is chosen once: its name is not typed beside it', async () => {
  const [micrometer] = formsIn((await program.get('/jobs/1017')).html)
    .find(({ id }) => id === 'setup-form')!
    .boxes.find(({ name }) => name === 'wallGauge')!
    .options.filter((id) => id !== '');
  const from = String((await getJob(program.shop.db, '1017'))!.revision);
  await program.post('/jobs/1017/setup', { from, who: 'AK', wallGauge: micrometer! });
  const kept = (await getJob(program.shop.db, '1017'))!.sections.setup!.body;
  expect(kept.gauge).toBe(kept.gauges![0]!.gauge.name);
  expect(standing((await program.get('/jobs/1017')).html, '/jobs/1017/setup').gauge).toBe('');
});
