import { afterAll, beforeAll, expect, it } from 'vitest';
import { listEntries } from '../../../src/records/catalogue.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

it('studs of a job are held against the stack as they reach from resurfaced pads', async () => {
  const { db } = program.shop;
  const job = async () => (await getJob(db, '1006'))!;
  const send = async (section: string, fields: Record<string, string>) =>
    program.post(`/jobs/1006/${section}`, { from: String((await job()).revision), who: 'AK', ...fields });
  const stack = (await listEntries(db, 'stack'))[0]!;
  const page = async () => program.get(`/jobs/1006?stack=${stack.id}`);
  expect((await page()).html).not.toContain('id="pads-resurfaced"');
  expect((await send('setup', { 'k.padsResurfacedMm': '0.5' })).status).toBe(303);
  const { html } = await page();
  expect(html).toContain('id="pads-resurfaced"');
  const of = (name: string) => new RegExp(`name="${name}" value="([^"]*)"`).exec(html)?.[1] ?? '';
  const studId = (await listEntries(db, 'stud'))[0]!.id;
  const hidden = ['criteria', 'stackRevision', `studRevision.${studId}`].map((name) => [name, of(name)]);
  const kept = await send('studs', {
    stack: stack.id,
    stud: studId,
    pull: '',
    note: 'as it is',
    ...Object.fromEntries(hidden),
  });
  expect(kept.status).toBe(303);
  const { stud, input } = (await job()).sections.studs!.body;
  expect(input!.stud.projectionMm - stud.stud.projectionMm).toBeCloseTo(0.5, 12);
  expect(input!.stud.threadEndMm - stud.stud.threadEndMm).toBeCloseTo(0.5, 12);
});
