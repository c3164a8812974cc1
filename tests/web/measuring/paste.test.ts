import { afterAll, beforeAll, expect, it } from 'vitest';
import { listEntries } from '../../../src/records/catalogue.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { goMetric } from '../metric.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
  await goMetric(program.shop.db);
});
afterAll(() => program.close());

async function newJob(): Promise<string> {
  const family = (await listEntries(program.shop.db, 'family')).find((one) => one.id === '1125-4-plain')!;
  const received = {
    familyId: family.id,
    familyRevision: family.revision,
    family: family.body,
    customerReference: '',
    receivedOn: '2026-11-24',
    note: '',
  };
  const ctx = { who: 'AK', now: () => new Date('2026-11-24T12:00:00Z') };
  return (await createJob(program.shop.db, ctx, { received })).number;
}

const readings = async (number: string) => (await getJob(program.shop.db, number))!.readings;

/** The boxes of the form that saves what is shown, as a browser sends them. */
function formIn(html: string): Record<string, string> {
  const form = /<form[^>]*id="before-form"[\s\S]*?<\/form>/.exec(html)?.[0] ?? '';
  const fields = [...form.matchAll(/<input[^>]*>/g)].flatMap(([input]) => {
    const name = /name="([^"]*)"/.exec(input)?.[1];
    const unticked = input.includes('type="checkbox"') && !/ checked/.test(input);
    return name === undefined || unticked ? [] : [[name, /value="([^"]*)"/.exec(input)?.[1] ?? '']];
  });
  return Object.fromEntries(fields) as Record<string, string>;
}

const TABLE = 'Station\tWall\tHeat mark\n1\t4.82; 4.83\t0.12\n2\t0.481\t\n3\t4.x\t\n4\t4.80\t\n';

it('is shown station by station before anything is saved, then saved by one post, and once however often it is sent', async () => {
  const number = await newJob();
  const pasted = { pass: 'before', unit: 'mm', pasted: 'wall', text: TABLE };
  const shown = await program.post(`/jobs/${number}/measure/paste`, pasted);
  expect(shown.status).toBe(200);
  expect(shown.text).toContain('Not saved yet: check each station');
  expect(shown.text).toContain('Line 4, column 2: Wall at station 3: "4.x" is not a plain number.');
  expect(shown.text).toContain('0.481 mm? Did you mean 4.81 mm?');
  expect(await readings(number)).toEqual([]);

  const form: Record<string, string> = { ...formIn(shown.html), who: 'AK' };
  expect([form['w.0'], form['w.1'], form['w.3'], form['d.0']]).toEqual([
    '4.82; 4.83',
    '0.481',
    '4.80',
    '0.12',
  ]);
  const asked = await program.post(`/jobs/${number}/readings`, form);
  expect(asked.status).toBe(422);
  expect(await readings(number)).toEqual([]);

  const sure = { ...form, 'set.w.1': '4.81 mm' };
  expect((await program.post(`/jobs/${number}/readings`, sure)).status).toBe(303);
  expect((await program.post(`/jobs/${number}/readings`, sure)).status).toBeLessThan(500);
  expect((await readings(number)).map((one) => [one.kind, one.valueMm])).toEqual([
    ['wall', 4.82],
    ['wall', 4.83],
    ['mark', 0.12],
    ['wall', 4.81],
    ['wall', 4.8],
  ]);
});

it('over readings that are there shows them replaced, and leaves those that were not pasted', async () => {
  const number = await newJob();
  const paste = (text: string, kind = 'wall') =>
    program.post(`/jobs/${number}/measure/paste`, { pass: 'before', unit: 'mm', pasted: kind, text });
  const first = formIn((await paste('4.82\n4.81')).html);
  await program.post(`/jobs/${number}/readings`, { ...first, who: 'AK' });
  const again = formIn((await paste('2\t0.03', 'face')).html);
  expect([again['w.1'], again['f.1'], again['w.0']]).toEqual(['4.81', '0.03', undefined]);
  await program.post(`/jobs/${number}/readings`, { ...again, who: 'AK' });
  expect((await readings(number)).map((one) => [one.kind, one.valueMm])).toEqual([
    ['wall', 4.82],
    ['wall', 4.81],
    ['face', 0.03],
  ]);
});

it('without a reading in it is refused, with what was pasted', async () => {
  const number = await newJob();
  const answer = await program.post(`/jobs/${number}/measure/paste`, {
    pass: 'before',
    unit: 'mm',
    text: ' \n',
  });
  expect([answer.status, answer.text]).toEqual([422, expect.stringContaining('No reading was found.')]);
});
