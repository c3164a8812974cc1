import { afterAll, beforeAll, expect, it } from 'vitest';
import { listEntries } from '../../../src/records/catalogue.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { formsIn } from '../boxes.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true, unit: 'in' });
});
afterAll(() => program.close());

it('a cover type is begun from a cover measured in a job: diameters and mean wall filled in, the rest asked', async () => {
  const job = (await getJob(program.shop.db, '1006'))!;
  expect((await program.get('/jobs/1006')).html).toContain('href="/catalogue/family/new?job=1006"');
  const page = await program.get('/catalogue/family/new?job=1006');
  const form = formsIn(page.html).find(({ action }) => action === '/catalogue/family')!;
  const fields = Object.fromEntries(form.boxes.map(({ name, value }) => [name, value]));
  const walls = job.readings.filter(({ pass, kind }) => pass === 'before' && kind === 'wall');
  const mean = walls.reduce((sum, { valueMm }) => sum + valueMm!, 0) / walls.length / 25.4;
  expect(Number(fields.nominal)).toBeCloseTo(mean, 4);
  expect(fields).toMatchObject({ name: '', circle: '11.25', makerMinimum: '', shopMinimum: '' });
  expect(page.text).toContain(`the mean of ${walls.length} wall readings as the new wall`);
  const refused = await program.post('/catalogue/family', { ...fields, who: 'AK' });
  expect([refused.status, refused.text]).toEqual([422, expect.stringContaining('Name is empty.')]);
  const saved = await program.post('/catalogue/family', { ...fields, name: 'From job 1006', who: 'AK' });
  expect(saved.status).toBe(303);
  const added = (await listEntries(program.shop.db, 'family')).find(({ name }) => name === 'From job 1006')!;
  expect(added.body).toMatchObject({
    studCircleDiameterMm: job.sections.received!.body.family.studCircleDiameterMm,
    makerMinimumWallMm: null,
    shopMinimumWallMm: null,
  });
});

it('a job without a wall begins none, and a job that is not there is no page', async () => {
  const { text } = await program.get('/catalogue/family/new?job=1017');
  expect(text).not.toContain('as the new wall');
  expect((await program.get('/catalogue/family/new?job=none')).status).toBe(404);
});
