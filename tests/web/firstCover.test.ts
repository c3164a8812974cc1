import { afterAll, beforeAll, expect, it } from 'vitest';
import { getJob } from '../../src/records/jobs/readJob.ts';
import { formsIn, sentAsShown } from './boxes.ts';
import { type Served, serve } from './program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: false });
});
afterAll(() => program.close());

/** What a stranger typed or chose otherwise than it stood there, but for what the gauge and the lathe say. */
const typed: string[] = [];

/** Fills a form of a page as it stands there but for `fields`, and goes where it leads. */
async function fill(
  path: string,
  form: string,
  fields: Record<string, string>,
  counts = true,
): Promise<string> {
  const { html } = await program.get(path);
  const found = formsIn(html).find(({ id, action }) => id === form || action === form);
  expect(found, `${form} on ${path}`).toBeDefined();
  const sent = { ...sentAsShown(found!), ...fields };
  const answer = await program.post(found!.action, sent);
  expect([answer.status, answer.status === 303 ? '' : answer.text.slice(0, 600)]).toEqual([303, '']);
  if (counts) typed.push(...Object.keys(fields).map((name) => `${form} ${name}`));
  return answer.location!;
}

/** A link of a page, which a person follows. */
async function follow(path: string, selector: RegExp): Promise<string> {
  const link = selector.exec((await program.get(path)).html)?.[1];
  expect(link, `${selector} on ${path}`).toBeDefined();
  return link!.replaceAll('&amp;', '&');
}

it('from an empty shop to the first signed cover, half of 55 fields are typed, and no page leads nowhere', async () => {
  // The front page leads to a job, a job to a cover type, and that back to the job.
  const receive = await follow('/', /href="([^"]*)" id="way-job"/);
  const toType = await follow(receive, /href="(\/catalogue\/family\/new[^"]*)"/);
  const back = await fill(toType, '/catalogue/family', {
    name: 'Van, four studs',
    studCount: '4',
    circle: '11 1/4 in',
    trackInner: '214',
    trackOuter: '264',
    nominal: '5',
    shopMinimum: '4.3',
    shopBy: 'TO',
    who: 'TO',
  });
  expect(back).toContain('/jobs/new?');
  const job = await fill(back, '/jobs', { who: 'TO' });

  await fill(job, 'looked-form', { crackTest: 'none-found', crackMethod: 'dye', who: 'TO' });
  const walls = Object.fromEntries(Array.from({ length: 12 }, (_, i) => [`w.${i}`, '4.90']));
  const faces = Object.fromEntries(Array.from({ length: 12 }, (_, i) => [`f.${i}`, '0']));
  await fill(job, 'before-form', { ...walls, ...faces, who: 'TO' }, false);
  expect((await program.get(job)).text).toContain('Face it');
  await fill(job, 'decision-form', { who: 'TO' });
  await fill(job, 'cuts-form', { depth: '0.05', who: 'TO' }, false);
  const left = Object.fromEntries(Array.from({ length: 12 }, (_, i) => [`w.${i}`, '4.85']));
  await fill(job, 'after-form', { ...left, who: 'TO' }, false);
  await fill(job, 'signature-form', { who: 'TO' });
  expect((await getJob(program.shop.db, job.split('/').at(-1)!))?.stage).toBe('signed');
  expect((await program.get(`${job}/sheet`)).text).toContain('TO, Nov 24, 2026');

  expect(typed.length, typed.join('; ')).toBeLessThanOrEqual(27);
});

it('what begins as common practice says so and asks to be confirmed, and no limit begins by itself', async () => {
  const { text, html } = await program.get('/criteria');
  expect(text).toContain('start as common practice, no source: confirm or change them');
  expect(text).toMatch(/Clean-up allowance/);
  const form = formsIn(html).find(({ action }) => action === '/criteria')!;
  expect(form.boxes.find(({ name }) => name === 'allowance')?.value).toBe('0.05');
  for (const limit of ['minimum', 'runout']) {
    expect(form.boxes.find(({ name }) => name === limit)?.value, limit).toBe('');
  }
});
