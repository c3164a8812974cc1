import { afterEach, beforeEach, expect, test } from 'vitest';
import { LOOK_ITEMS } from '../../../shared/words/job.ts';
import { getEntry, reviseEntry } from '../../../src/records/catalogue.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { currentCriteria, saveCriteria } from '../../../src/records/shopCriteria.ts';
import { as } from '../../records/samples.ts';
import type { Served } from '../program.ts';
import { measured, PLACES, readingsForm, shopWith, step } from '../steps.ts';

let program: Served;
beforeEach(async () => {
  program = await shopWith();
});
afterEach(() => program.close());

const JOB = '/jobs/1001';

/** Looked over whole: nothing left open. */
const LOOKED = {
  crackTest: 'none-found',
  crackMethod: 'dye',
  ...Object.fromEntries(LOOK_ITEMS.map((item) => [`result.${item}`, 'sound'])),
};

/** Job 1001 of the test shop, cut and measured again, and signed with a statement. */
async function signed(statement = 'Read twice, "0.18" each time.'): Promise<void> {
  await measured(program);
  await step(program, 'looked', LOOKED);
  await step(program, 'decision', { decision: 'face', reason: 'to try the sheet' });
  await step(program, 'cuts', { depth: '0.05' });
  const walls = PLACES.map(() => '4.85');
  await program.post(`${JOB}/readings`, readingsForm('after', walls));
  const sent = await step(program, 'signature', { statement });
  expect([sent.status, sent.text.slice(0, 300)]).toEqual([303, expect.any(String)]);
}

async function bytes(path: string): Promise<string> {
  const response = await fetch(program.url + path);
  return `${response.status}\n${await response.text()}`;
}

test('the sheet and the tag as signed are byte for byte the same after limits, unit and catalog changed', async () => {
  await signed();
  const { db } = program.shop;
  const papers = [`${JOB}/sheet/signed`, `${JOB}/tag/signed`];
  const then = await Promise.all(papers.map(bytes));
  expect(then[0]).toMatch(/^200\n<!doctype html>/);
  const now = await program.get(`${JOB}/sheet`);

  const criteria = await currentCriteria(db);
  const body = { ...criteria.body, lengthUnit: 'in', shopName: 'Another name', minimumWallMm: 4.1 } as const;
  await saveCriteria(db, as('BL', 'changed'), { fromRevision: criteria.revision, body });
  const family = (await getEntry(db, 'family', 'alder'))!;
  const changed = { ...family.body, name: 'Alder, renamed', nominalWallMm: 5.5 };
  await reviseEntry(db, as('BL', 'changed'), {
    kind: 'family',
    id: 'alder',
    fromRevision: family.revision,
    body: changed,
  });

  expect((await program.get(`${JOB}/sheet`)).text).not.toBe(now.text);
  expect(await Promise.all(papers.map(bytes))).toEqual(then);
});

test('the sheet has the statement, the customer, who, and the walls measured after the cut', async () => {
  await program.post('/jobs', {
    family: 'alder',
    receivedOn: '2026-11-24',
    who: 'MH',
    customer: 'Demo customer 12',
  });
  await step(program, 'looked', LOOKED);
  const before = PLACES.map((_, i) => `4.9${i % 10}`);
  await program.post(`${JOB}/readings`, readingsForm('before', before));
  await step(program, 'decision', { decision: 'face', reason: 'to try' });
  await step(program, 'cuts', { depth: '0.05' });
  const after = before.map((mm) => (Number(mm) - 0.05).toFixed(2));
  await program.post(`${JOB}/readings`, readingsForm('after', after));
  await step(program, 'signature', { statement: 'Station 2 read three times.' });
  for (const path of ['/sheet', '/sheet/signed']) {
    const { html, text } = await program.get(JOB + path);
    expect(text).toMatch(/Statement of the signer\. Signed: AK, [^“]*“Station 2 read three times\.”/);
    expect(text).toContain('Customer Demo customer 12');
    expect(text).toContain('Thinnest wall, measured after the cut 4.850 mm');
    const left = [...html.matchAll(/<td class="left">(?:<svg[\s\S]*?<\/svg>)?([^<]*)<\/td>/g)].map(
      ([, mm]) => mm,
    );
    expect(left).toEqual(after.map((mm) => `${mm}0`));
  }
});

test('what a sheet as signed is printed with is there by its content, and is the same as of a sheet printed now', async () => {
  await signed();
  const styleOf = async (path: string) =>
    /<link rel="stylesheet" href="(\/printed\/[0-9a-f]{64}\.css)"/.exec(
      (await program.get(path)).html,
    )?.[1] ?? '';
  const style = await styleOf(`${JOB}/sheet/signed`);
  expect(await styleOf(`${JOB}/sheet`)).toBe(style);
  expect(await styleOf(`${JOB}/tag/signed`)).toBe(style);
  const css = await fetch(program.url + style);
  expect([css.status, css.headers.get('content-type')]).toEqual([200, expect.stringContaining('text/css')]);
  const type = [...(await css.text()).matchAll(/url\('([0-9a-f]{64}\.woff2)'\)/g)].map(([, name]) => name);
  expect(type).toHaveLength(2);
  const kept = await program.shop.db.selectFrom('printed_part').selectAll().orderBy('kind').execute();
  expect(kept.map(({ hash, kind }) => `${hash}.${kind}`).sort()).toEqual([style.slice(9), ...type].sort());
  for (const name of type) {
    const font = await fetch(`${program.url}/printed/${name}`);
    expect([font.status, font.headers.get('content-type')]).toEqual([200, 'font/woff2']);
  }
  expect((await fetch(`${program.url}/printed/${'0'.repeat(64)}.css`)).status).toBe(404);
  expect((await fetch(`${program.url}/printed/${type[0]?.replace('woff2', 'css')}`)).status).toBe(404);
});

test('the job leads to its papers as signed in one press, and an amended job still does', async () => {
  await signed();
  const links = async () =>
    [...(await program.get(JOB)).html.matchAll(/href="(\/jobs\/1001\/(?:sheet|tag)\/signed)"/g)].map(
      ([, to]) => to,
    );
  expect(await links()).toEqual([`${JOB}/sheet/signed`, `${JOB}/tag/signed`]);
  await step(program, 'received', {
    family: 'alder',
    receivedOn: '2026-11-24',
    note: 'red',
    why: 'wrong note',
  });
  expect((await getJob(program.shop.db, '1001'))?.stage).toBe('to-sign');
  expect(await links()).toEqual([`${JOB}/sheet/signed`, `${JOB}/tag/signed`]);
});

test('a job signed before sheets were kept says so, and so does one that is not signed', async () => {
  await measured(program);
  expect((await program.get(`${JOB}/sheet/signed`)).status).toBe(404);
  expect((await program.get(`${JOB}/sheet/signed`)).text).toContain('Job 1001 is not signed');
  const { db } = program.shop;
  const job = (await getJob(db, '1001'))!;
  const revision = job.revision + 1;
  await db
    .insertInto('job_revision')
    .values({
      job_id: job.id,
      revision,
      at: '2026-03-02T12:00:00.000Z',
      who: 'AB',
      why: '',
      what: 'signature',
      body: JSON.stringify({ statement: '', signedRevision: job.revision }),
    })
    .execute();
  await db.updateTable('job').set({ revision }).where('id', '=', job.id).execute();
  const { status, text } = await program.get(`${JOB}/sheet/signed`);
  expect([status, text]).toEqual([
    404,
    expect.stringContaining('Job 1001 was signed before sheets and tags were saved at signing'),
  ]);
  expect((await program.get(JOB)).text).toContain('Signed before sheets were kept');
});

test('a cover to be replaced prints no depth of cut and no cut plan', async () => {
  await measured(program, '4.2');
  await step(program, 'decision', { decision: 'replace' });
  const { text } = await program.get(`${JOB}/sheet`);
  expect(text).toContain('Decision Replace it');
  expect(text).toContain('Cut None: the cover is not used again.');
  expect(text).not.toMatch(/from the highest point|Cut plan|Wall after|roughing/);
});

test('the history tells the story first, with the papers as they were signed, and opens to every change', async () => {
  await signed();
  await step(program, 'received', {
    family: 'alder',
    receivedOn: '2026-11-24',
    note: 'red',
    why: 'wrong note',
  });
  const { html, text } = await program.get(`${JOB}/history`);
  const story = /<ol class="history" id="story">([\s\S]*?)<\/ol>/.exec(html)?.[1] ?? '';
  expect([...story.matchAll(/<b>([^<]*)<\/b>/g)].map(([, title]) => title)).toEqual([
    'Received',
    'Inspected',
    'Measured',
    'Inspected',
    'Decided',
    'Cut',
    'Re-measured',
    'Signed',
    'Amended',
  ]);
  expect(story).toContain(`${JOB}/sheet/signed?revision=`);
  expect(text).toContain('wrong note');
  expect(html).toContain('<details id="every-change">');
});

test('the head of a job names the customer, the cover type, the decision with its cut, the wall and the limit', async () => {
  await signed();
  const { html } = await program.get(JOB);
  const about = /<dl id="job-about">(.*?)<\/dl>/.exec(html)?.[1] ?? '';
  expect([...about.matchAll(/<d[td]>([^<]*)/g)].map(([, text]) => text)).toEqual([
    'Cover type',
    'Alder 11 plain',
    'Decision',
    'Face it: 0.05 mm',
    'Thinnest wall, measured after the cut',
    '4.850 mm',
    'Minimum wall',
    '4.300 mm',
  ]);
});
