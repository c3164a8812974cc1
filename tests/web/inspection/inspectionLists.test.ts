import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { goMetric } from '../metric.ts';
import { type Served, serve } from '../program.ts';
import { saveLimits } from '../steps.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
  await goMetric(program.shop.db);
});
afterAll(() => program.close());

const LIST = {
  listName: 'Hard parts',
  'for.1125-4-billet': '1',
  'name.0': 'Hub free of grooves',
  'kind.0': 'yes-no',
  'name.1': 'End play',
  'kind.1': 'length',
  'least.1': '0.1',
  'most.1': '0.4',
  'name.2': 'Stud torque test',
  'kind.2': 'torque',
  'least.2': '40',
  'how.2': 'nut on a spacer',
  unit: 'mm',
  who: 'AA',
};
const add = (more: Readonly<Record<string, string>> = {}) =>
  program.post('/inspection', { ...LIST, ...more });
const at = (item: string) => `f.hard-parts.${item}`;
const revision = async (number = '1005') => (await getJob(program.shop.db, number))!.revision;
const inspect = async (fields: Readonly<Record<string, string>>, from?: number) =>
  program.post('/jobs/1005/inspected', {
    from: String(from ?? (await revision())),
    unit: 'mm',
    who: 'BB',
    why: 'from the list',
    ...fields,
  });
const FOUND = { [at('hub-free-of-grooves')]: 'yes', [at('end-play')]: '0.25' };

describe('an inspection list', () => {
  it('is entered with its items and limits; what can’t be is said at its box', async () => {
    expect((await program.get('/inspection')).text).toContain('No inspection list yet');
    expect((await add({ 'most.1': '4' })).text).toContain('Did you mean 0.4');
    expect((await add({ 'most.1': '0.05' })).text).toContain('the most is below the least');
    expect((await add({ 'most.0': '1' })).text).toContain('is answered with yes or no');
    expect((await add({ 'least.2': '' })).text).toContain('Stud torque test has no limit');
    expect((await add({ 'name.2': 'end play' })).text).toContain('is in this list twice');
    expect((await add({ listName: '' })).text).toContain('The name of the list');
    const nothing = await program.post('/inspection', { listName: 'Empty', who: 'AA' });
    expect(nothing.status).toBe(422);
    expect(nothing.text).toContain('The list has no item');
    expect((await add()).status).toBe(303);
    const list = await program.get('/inspection');
    expect(list.text).toContain('Hard parts');
    expect(list.text).toContain('1125-4 billet');
    const filled = await program.get('/inspection/hard-parts');
    expect(filled.html).toContain('value="0.4"');
    expect(filled.html).toContain('value="nut on a spacer"');
  });

  it('asks a job of its cover type for every item, and no other', async () => {
    const { text } = await program.get('/jobs/1005');
    expect(text).toContain('Inspection list: 0 of 3 inspected');
    expect(text).toContain('Not inspected, 3 of 3: Hub free of grooves, End play and Stud torque test.');
    expect((await program.get('/jobs/1001')).text).not.toContain('Inspection list: 0 of');
  });

  it('asks about a slip, refuses what it can’t read, and keeps who found what and when', async () => {
    const slipped = await inspect({ ...FOUND, [at('end-play')]: '2.5' });
    expect(slipped.status).toBe(422);
    expect(slipped.text).toContain('Did you mean 0.25');
    expect((await inspect({ [`${at('end-play')}.note`]: 'tight' })).text).toContain(
      'has a note and no answer',
    );
    expect((await inspect(FOUND)).status).toBe(303);
    const job = (await getJob(program.shop.db, '1005'))!;
    expect(job.sections.inspected!.body.items).toMatchObject([
      { item: { name: 'Hub free of grooves' }, ok: true, value: null, who: 'BB' },
      { item: { name: 'End play' }, ok: null, value: 0.25, typed: '0.25 mm', who: 'BB' },
    ]);
    expect((await program.get('/jobs/1005')).text).toContain('Inspection list: 2 of 3 inspected');
    // Sent twice it is the same revision; another hand adds its own item.
    const before = await revision();
    await inspect(FOUND);
    expect(await revision()).toBe(before);
    await inspect({ ...FOUND, [at('stud-torque-test')]: '35', who: 'CC' });
    const found = (await getJob(program.shop.db, '1005'))!.sections.inspected!.body.items;
    expect(found.map(({ who }) => who)).toEqual(['BB', 'BB', 'CC']);
  });

  it('tells a second tablet that somebody was first', async () => {
    const stale = await inspect({ ...FOUND, [at('end-play')]: '0.3' }, 5);
    expect(stale.status).toBe(409);
    expect(stale.text).toContain('Both versions');
  });

  it('out of its limit is not OK: the signature needs a statement, and it is on the sheet and in the lists', async () => {
    const page = await program.get('/jobs/1005');
    expect(page.text).toContain('Found 35.0 N·m; at least 40.0 N·m is needed.');
    const sign = async (statement: string) =>
      program.post('/jobs/1005/signature', {
        from: String(await revision()),
        statement,
        who: 'CC',
        why: 'x',
      });
    const refused = await sign('');
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('Enter in the statement why job 1005 is signed anyway.');
    const sheet = await program.get('/jobs/1005/sheet');
    expect(sheet.text).toContain('Stud torque test: 35.0 N·m; needed at least 40.0 N·m; NOT OK. CC');
    expect(sheet.text).toContain('2 of 2');
    const csv = await program.get('/jobs/1005/inspection.csv');
    expect(csv.text).toContain(
      '1005,Hard parts,Stud torque test,at least 40.0 N·m,35.0 N·m,35 N·m,no,Not OK',
    );
    const history = await program.get('/jobs/1005/history');
    expect(history.text).toContain('at least 40.0 N·m is needed');
    const json = (await (await fetch(`${program.url}/api/jobs/1005`)).json()) as {
      job: { sections: { inspected: { body: { items: unknown[] } } } };
    };
    expect(json.job.sections.inspected.body.items).toHaveLength(3);
  });

  it('an item that gets another limit is to be inspected again; one worded anew is not', async () => {
    const from = { from: '1', why: 'the shop tightened it' };
    const change = {
      ...LIST,
      ...from,
      'id.0': 'hub-free-of-grooves',
      'name.0': 'Hub without grooves',
      'id.1': 'end-play',
      'most.1': '0.3',
    };
    const stale = await program.post('/inspection/hard-parts', { ...change, from: '9' });
    expect(stale.status).not.toBe(303);
    expect(
      (await program.post('/inspection/hard-parts', { ...change, 'id.2': 'stud-torque-test' })).status,
    ).toBe(303);
    const { text } = await program.get('/jobs/1005');
    expect(text).toContain('Inspection list: 2 of 3 inspected');
    expect(text).toContain('Not inspected, 1 of 3: End play.');
    expect((await program.get('/inspection/hard-parts')).text).toContain('the shop tightened it');
  });

  it('stops the signature only where the shop limits say so', async () => {
    const sign = async () =>
      program.post('/jobs/1005/signature', {
        from: String(await revision()),
        statement: 'stud to be welded again',
        who: 'CC',
      });
    const limits = await program.get('/criteria');
    const fields = Object.fromEntries(
      [...limits.html.matchAll(/<input[^>]*name="([^"]+)"[^>]*value="([^"]*)"/g)].map(([, name, value]) => [
        name!,
        value!,
      ]),
    );
    expect(limits.text).toContain('Sign only once the inspection list is done');
    expect(
      (await saveLimits(program, { ...fields, inspectionStops: '1', who: 'AA', why: 'house rule' })).status,
    ).toBe(303);
    const stopped = await sign();
    expect(stopped.status).toBe(422);
    expect(stopped.text).toContain(
      'The shop limits ask for the whole inspection list before job 1005 is signed.',
    );
  });
});
